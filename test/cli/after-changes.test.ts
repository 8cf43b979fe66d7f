import { expect, test } from 'vitest';
import { afterChanges } from '../../src/cli/after-changes.ts';

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

test('a burst of changes is worked through once, and whoever waits gets what came of the last', async () => {
  let changed = 0;
  const seen: number[] = [];
  const follow = afterChanges(async () => {
    await pause(20);
    seen.push(changed);
  }, 15);
  for (changed = 1; changed < 4; changed += 1) follow.touch();
  await follow.settled();
  expect(seen).toEqual([4]);
});

test('a change while the work is under way is worked through after it, never beside it', async () => {
  let atOnce = 0;
  let most = 0;
  let done = 0;
  const follow = afterChanges(async () => {
    atOnce += 1;
    most = Math.max(most, atOnce);
    await pause(40);
    atOnce -= 1;
    done += 1;
  }, 5);
  follow.touch();
  await pause(20);
  follow.touch();
  await follow.settled();
  expect([done, most]).toEqual([2, 1]);
});

test('nobody waits when nothing has changed', async () => {
  await afterChanges(() => Promise.reject(new Error('never')), 5).settled();
});
