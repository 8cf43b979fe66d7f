/** Builds by a clock that is years off and jumps. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { differing, journalIn, OWN_FAULT, start, stateOf } from './stand.ts';
import type { Outcome, Part } from './torture.ts';

const JUMPS = new URL('./clock-jumps.mjs', import.meta.url);
const HOURS = [-24 * 365 * 40, -48, -1, 1, 48, 24 * 365 * 50];

export const clock: Part = {
  name: 'clock',
  shows: 'a clock that is wrong, or jumps while the site is made, changes nothing in it',
  usual: HOURS.length,
  run: async ({ folder, amount, isOver, progress }): Promise<Outcome> => {
    const failures: string[] = [];
    let tried = 0;
    mkdirSync(join(folder, 'one'));
    const cwd = join(folder, 'one');
    await journalIn(cwd);
    await start(['build', '--content', 'van'], cwd).ended;
    const wanted = stateOf(join(cwd, 'dist'));
    for (const hours of HOURS.slice(0, amount)) {
      if (isOver()) break;
      tried += 1;
      const { code, said } = await start(
        ['build', '--content', 'van', '--out', `by${hours}`],
        cwd,
        { ASFOUND_TORTURE_HOURS: String(hours) },
        ['--import', JUMPS.href],
      ).ended;
      const odd = code === 0 ? differing(wanted, stateOf(join(cwd, `by${hours}`))) : [];
      if (code !== 0 || OWN_FAULT.test(said)) failures.push(`${hours} hours off: it ended with ${code}: ${said.trim().split('\n').at(-1)}`);
      if (odd.length > 0) failures.push(`${hours} hours off: ${odd.slice(0, 3).join(', ')}`);
      progress(`${hours} hours off`);
    }
    return { counts: { clocks: tried }, failures };
  },
};
