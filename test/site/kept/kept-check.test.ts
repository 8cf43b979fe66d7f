/** A check that is told again is the check that it would be. */
import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadJournal } from '../../../src/load/load.ts';
import { checkSources } from '../../../src/site/check-journal.ts';
import { type CheckAsked, type CheckTold, keepCheck, keptCheck } from '../../../src/site/kept/kept-check.ts';
import { JOURNAL } from '../../cli/journal.ts';
import { run } from '../../cli/run.ts';
import { folderWith, put } from '../../load/folder.ts';

const NOTE = 'van/sessions/2031-03-02-drum.md';
const WRONG = { ...JOURNAL, [NOTE]: (JOURNAL[NOTE] ?? '').replace('{ part: drum, did', '{ part: drun, did') };
const TODAY = '2031-03-12';

async function checked(files: Readonly<Record<string, string>>) {
  const cwd = folderWith(files);
  const asked: CheckAsked = { today: TODAY, to: null, cache: join(cwd, 'cache') };
  const sources = () => loadJournal(join(cwd, 'van'));
  const { record: _, sources: __, closedLater: ___, ...told } = await checkSources(sources(), asked);
  keepCheck(sources(), asked, told);
  return { cwd, asked, told: told as CheckTold, again: (other: Partial<CheckAsked> = {}) => keptCheck(sources(), { ...asked, ...other }) };
}

test('what was told is told again, every word and place of it', async () => {
  const { told, again } = await checked(WRONG);
  expect(told.diagnostics.length).toBeGreaterThan(0);
  expect(again()).toEqual(told);
});

test('but not on another day, nor for another', async () => {
  const { again } = await checked(WRONG);
  expect([again({ today: '2031-03-13' }), again({ to: '2031-03-01' })]).toEqual([null, null]);
});

test.each<readonly [string, (cwd: string) => void]>([
  ['a note has another letter', (cwd) => put(cwd, NOTE, (WRONG[NOTE] ?? '').replace('drun', 'drum'))],
  ['a note is new', (cwd) => put(cwd, 'van/sessions/2031-03-05-more.md', '---\ndate: 2031-03-05\ntitle: More\n---\n')],
  ['a picture was laid in', (cwd) => put(cwd, 'van/sessions/drum.jpg', 'no picture')],
  ['a file lies where none is read', (cwd) => put(cwd, 'van/parts/notes.txt', 'Notes.')],
])('nor when %s', async (_, change) => {
  const { cwd, again } = await checked(WRONG);
  change(cwd);
  expect(again()).toBeNull();
});

test('nor when a picture may be another', async () => {
  const { cwd, again } = await checked({ ...WRONG, 'van/sessions/drum.jpg': 'no picture' });
  expect(again()).not.toBeNull();
  utimesSync(join(cwd, 'van/sessions/drum.jpg'), 1, 1);
  expect(again()).toBeNull();
});

test('nor when what is kept is not as it was written', async () => {
  const { cwd, again } = await checked(WRONG);
  const [name = ''] = readdirSync(join(cwd, 'cache/checks'));
  const file = join(cwd, 'cache/checks', name);
  writeFileSync(file, readFileSync(file, 'utf8').replace('drun', 'drum'));
  expect(again()).toBeNull();
});

test('a second check says and answers what the first did', async () => {
  for (const files of [JOURNAL, WRONG]) {
    const cwd = folderWith(files);
    for (const argv of [
      ['check', '--content', 'van'],
      ['check', '--content', 'van', '--format', 'json'],
    ]) {
      const first = await run(argv, { cwd });
      expect(await run(argv, { cwd })).toEqual(first);
    }
  }
});
