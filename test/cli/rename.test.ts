/** What changes in a journal's life: other names, other shelves, one part that proves to be two. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const NOTE = 'van/sessions/2031-03-02-drum.md';
const PARTS = 'van/parts/brakes.yaml';
const STORED = `---
date: 2031-03-04
title: Put away # for now
parts:
  - { part: pipe, did: removed, to: shelf A1 } # up there
---

The [pipe](part:pipe) lies on shelf A1.
`;
const TWO: Readonly<Record<string, string>> = { ...JOURNAL, 'van/sessions/2031-03-04-pipe/index.md': STORED.replaceAll('\n', '\r\n') };
const PIPE = 'van/sessions/2031-03-04-pipe/index.md';

const textIn = (cwd: string, path: string): string => readFileSync(join(cwd, path), 'utf8');
const all = (cwd: string): Record<string, string> => Object.fromEntries(Object.keys(TWO).map((path) => [path, textIn(cwd, path)]));

describe('rename', () => {
  test('gives a part another name in catalogue, notes and prose, and keeps comments, line ends and every other letter', async () => {
    const cwd = folderWith(TWO);
    const { exit, out, err } = await run(['rename', 'part', 'pipe', 'rear-pipe', '--content', 'van'], { cwd });
    expect([exit, err]).toEqual([0, '3 mentions in 2 files changed.\n']);
    expect(textIn(cwd, PARTS)).toBe(TWO[PARTS]?.replace('id: pipe', 'id: rear-pipe'));
    expect(textIn(cwd, PIPE)).toBe(TWO[PIPE]?.replace('part: pipe', 'part: rear-pipe').replace('part:pipe', 'part:rear-pipe'));
    expect(textIn(cwd, NOTE)).toBe(TWO[NOTE]);
    expect(out).toContain(
      `${PIPE}:5\n  before    - { part: pipe, did: removed, to: shelf A1 } # up there\n  after     - { part: rear-pipe,`,
    );
    expect(readdirSync(join(cwd, 'van')).sort()).toEqual(['journal.yaml', 'parts', 'sessions']);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
  });

  test.each([
    ['store', 'shelf A1', 'shelf B1', 'to: shelf B1'],
    ['bag', '1', '7', 'to: bag 7'],
    ['bag', 'bag 1', '007', 'bag: 7'],
    ['item', 'polish', 'polish-it', 'id: polish-it'],
    ['milestone', 'road-test', 'on-the-road', 'before: on-the-road'],
  ])('a %s, %s to %s', async (sort, from, to, says) => {
    const cwd = folderWith(TWO);
    expect((await run(['rename', sort, from, to, '--content', 'van'], { cwd })).exit).toBe(0);
    expect(Object.values(all(cwd)).join('')).toContain(says);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
  });

  test('shows all of it in a dry run, and writes nothing', async () => {
    const cwd = folderWith(TWO);
    const { out, err } = await run(['rename', 'subsystem', 'brakes', 'stopping', '--content', 'van', '--dry-run'], { cwd });
    expect(out).toContain('van/parts/brakes.yaml -> van/parts/stopping.yaml\n');
    expect(err).toMatch(/would be changed\.\n$/);
    expect(all(cwd)).toEqual(TWO);
    await run(['rename', 'subsystem', 'brakes', 'stopping', '--content', 'van'], { cwd });
    expect([existsSync(join(cwd, PARTS)), textIn(cwd, 'van/parts/stopping.yaml')]).toEqual([false, TWO[PARTS]]);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
  });

  test.each([
    [['part', 'pip', 'x'], 'There is no part `pip`. Did you mean `pipe`?'],
    [['part', 'pipe', 'drum'], 'There is a part `drum` already.'],
    [['part', 'pipe', 'Rear Pipe'], 'rear-pipe'],
    [['shelf', 'shelf A1', 'x'], '`shelf` is none of part, store, bag'],
    [['part', 'pipe'], 'needs SORT OLD NEW'],
  ])('%j is refused, and nothing is written', async (argv, says) => {
    const cwd = folderWith(TWO);
    const { exit, err } = await run(['rename', ...argv, '--content', 'van'], { cwd });
    expect([exit, err.includes(says)], err).toEqual([2, true]);
    expect(all(cwd)).toEqual(TWO);
  });

  test('that would be a fault is refused', async () => {
    const two = `${STORED.replace('to: shelf A1', 'to: bag 2')}`.replace('---\n\nThe', 'bags: [{ bag: 2, holds: pipe }]\n---\n\nThe');
    const cwd = folderWith({ ...TWO, [PIPE]: two, 'van/sessions/2031-03-05-x.md': '---\ndate: 2031-03-05\ntitle: X\nprivate: see\n---\n' });
    const { exit } = await run(['rename', 'bag', '2', '1', '--content', 'van'], { cwd });
    expect([exit, textIn(cwd, PIPE)]).toEqual([2, two]);
  });

  test('of a catalogue whose bytes are no text is refused, and keeps every byte', async () => {
    const bytes = Buffer.concat([Buffer.from(`${TWO[PARTS]}# J`), Buffer.from([0xe9]), Buffer.from('r\n')]);
    const cwd = folderWith({ 'van/journal.yaml': TWO['van/journal.yaml'] ?? '', [PARTS]: bytes });
    const { exit, err } = await run(['rename', 'subsystem', 'brakes', 'stopping', '--content', 'van'], { cwd });
    expect([exit, err.includes('not UTF-8'), readFileSync(join(cwd, PARTS)).equals(bytes)], err).toEqual([1, true, true]);
  });

  test('that was killed half way is finished by the next command', async () => {
    const cwd = folderWith(TWO);
    const plan = [{ path: 'parts/brakes.yaml', to: 'parts/brakes.yaml', before: sumOf(TWO[PARTS] ?? ''), after: sumOf('- []\n') }];
    put(cwd, 'van/.asfound-change/0', '- { id: drum, name: Front drum, origin: original }\n');
    put(cwd, 'van/.asfound-change/owner', '4194304');
    put(cwd, 'van/.asfound-change/plan', JSON.stringify(plan));
    const { err } = await run(['check', '--content', 'van'], { cwd });
    expect(err).toContain('had been interrupted was finished first');
    expect(textIn(cwd, PARTS)).toBe('- { id: drum, name: Front drum, origin: original }\n');
    expect(existsSync(join(cwd, 'van/.asfound-change'))).toBe(false);
  });
});

describe('where a note may mean either of two things', () => {
  const NAMED_ALIKE = 'van/sessions/2031-03-05-alike.md';
  const alike = {
    ...TWO,
    [PARTS]: `${TWO[PARTS]}- { id: brakes, name: Brake gear, origin: original }\n`,
    [NAMED_ALIKE]: `---
date: 2031-03-05
title: Alike
hours: [{ by: me, on: brakes, time: 1h }]
parts: [{ part: brakes, did: cleaned }]
---
The [gear](part:brakes).
`,
  };
  const kept = (cwd: string) => Object.keys(alike).every((path) => textIn(cwd, path) === (alike as Record<string, string>)[path]);

  test.each(['part', 'subsystem'])('nothing is renamed, and each such line is told, of the %s', async (sort) => {
    const cwd = folderWith(alike);
    const { exit, out, err } = await run(['rename', sort, 'brakes', 'gear', '--content', 'van'], { cwd });
    expect([exit, out, kept(cwd)], err).toEqual([2, '', true]);
    expect(err).toContain('`brakes` is a ');
    expect(err).toContain('in 4 places either may be meant.');
    expect(err).toContain(`  ${NAMED_ALIKE}:4  hours: [{ by: me, on: brakes, time: 1h }]\n`);
    expect(err).toContain(`--either ${sort === 'part' ? 'subsystem' : 'part'}`);
    expect(err).not.toContain(`${NAMED_ALIKE}:5`);
  });

  test.each([
    ['part', 'gear'],
    ['subsystem', 'brakes'],
  ])('it is what --either %s says', async (either, on) => {
    const cwd = folderWith(alike);
    const { exit, err } = await run(['rename', 'part', 'brakes', 'gear', '--either', either, '--content', 'van'], { cwd });
    expect(exit, err).toBe(0);
    expect(textIn(cwd, NAMED_ALIKE)).toContain(`on: ${on}, time`);
    expect(textIn(cwd, NAMED_ALIKE)).toContain('part: gear, did: cleaned');
    expect(textIn(cwd, NAMED_ALIKE)).toContain('(part:gear)');
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
  });

  test('--either names one of the two', async () => {
    const cwd = folderWith(alike);
    const { exit } = await run(['rename', 'part', 'brakes', 'gear', '--either', 'store', '--content', 'van'], { cwd });
    expect([exit, kept(cwd)]).toEqual([2, true]);
  });

  test('two entries with one id are told with their places', async () => {
    const cwd = folderWith({ ...TWO, [PARTS]: `${TWO[PARTS]}- { id: pipe, name: Front pipe, origin: original }\n` });
    const { exit, err } = await run(['rename', 'part', 'pipe', 'rear-pipe', '--content', 'van'], { cwd });
    expect([exit, textIn(cwd, PIPE)], err).toEqual([2, TWO[PIPE]]);
    expect(err).toContain('`pipe` is the id of 2 entries.');
    expect(err).toContain(`  ${PARTS}:3  - { id: pipe, name: Front pipe, origin: original }\n`);
  });
});

describe('move', () => {
  const shelves = { ...TWO, 'van/journal.yaml': TWO['van/journal.yaml']?.replace('[shelf A1]', '[shelf A1, "loft, left"]') ?? '' };

  test('writes a note with an entry for everything on a shelf', async () => {
    const cwd = folderWith(shelves);
    const { exit, out, err } = await run(['move', 'shelf A1', 'to', 'loft, left', '--content', 'van'], { cwd });
    expect([exit, out, err]).toEqual([
      0,
      'van/sessions/2031-03-12-everything-from-shelf-a1-to-loft-left/index.md\n',
      '1 entry for everything on shelf A1.\n',
    ]);
    expect(textIn(cwd, out.trim())).toContain('\n  - { part: pipe, did: stored, from: shelf A1, to: "loft, left" }\n');
    expect((await run(['check', '--content', 'van'], { cwd })).err).toMatch(/^no errors/m);
    expect((await run(['move', 'shelf A1', 'to', 'loft, left', '--content', 'van'], { cwd })).err).toContain(
      'nothing lies on shelf A1 at the end of 2031-03-12.',
    );
  });

  test('of a lot takes what lies there', async () => {
    const parts = `${TWO[PARTS]}- { id: studs, name: Wheel studs, origin: original, count: 5 }\n`;
    const note = STORED.replace('  - {', '  - { part: studs, did: removed, count: 3, to: shelf A1 }\n  - {');
    const cwd = folderWith({ ...shelves, [PARTS]: parts, [PIPE]: note });
    const { out } = await run(['move', 'shelf A1', 'to', 'loft, left', '--content', 'van', '--dry-run'], { cwd });
    expect(out).toContain('  - { part: studs, did: stored, count: 3, from: shelf A1, to: "loft, left" }\n');
    expect(readdirSync(join(cwd, 'van/sessions'))).toHaveLength(2);
  });

  test.each([
    [['shelf A1', 'to', 'loft'], 'there is no store `loft`.'],
    [['shelf A2', 'to', 'loft, left'], 'Did you mean `shelf A1`?'],
    [['shelf A1', 'into', 'loft, left'], 'asfound move "shelf A1" to "shelf B2"'],
    [['shelf A1', 'to', 'loft, left', '--date', '2031-03-03'], 'nothing lies on shelf A1 at the end of 2031-03-03'],
  ])('%j is refused', async (argv, says) => {
    const cwd = folderWith(shelves);
    const { exit, err } = await run(['move', ...argv, '--content', 'van'], { cwd });
    expect([exit, err.includes(says)], err).toEqual([2, true]);
    expect(readdirSync(join(cwd, 'van/sessions'))).toHaveLength(2);
  });
});

describe('split', () => {
  test('says the entry for the catalogue, every line that names the part, and the note; each is accepted as typed', async () => {
    const cwd = folderWith(TWO);
    const { exit, out } = await run(['split', 'pipe', 'pipe-end', '--content', 'van'], { cwd });
    expect(exit).toBe(0);
    expect(out).toContain(`${PIPE}:5  - { part: pipe, did: removed, to: shelf A1 } # up there\n`);
    expect(out).toContain(`${PIPE}:8  The [pipe](part:pipe) lies on shelf A1.\n`);
    const [, entry = ''] = /^ {3}(- \{ id: pipe-end.*\})$/m.exec(out) ?? [];
    put(cwd, PARTS, `${TWO[PARTS]}${entry}\n`);
    const fields = [...out.matchAll(/^ {3}((?:parts|attributed): .*)$/gm)].map(([, line = '']) =>
      line.replace('because: …', 'because: Two screws.'),
    );
    put(cwd, 'van/sessions/2031-03-06-two.md', `---\ndate: 2031-03-06\ntitle: Two\n${fields.join('\n')}\n---\n`);
    expect(fields).toHaveLength(2);
    expect((await run(['check', '--content', 'van'], { cwd })).err).toMatch(/^no errors/m);
  });

  test('of a part that is not there, or into a name that is taken, says so', async () => {
    const cwd = folderWith(TWO);
    expect((await run(['split', 'pip', 'x', '--content', 'van'], { cwd })).err).toContain('Did you mean `pipe`?');
    expect((await run(['split', 'pipe', 'drum', '--content', 'van'], { cwd })).err).toContain('There is a part `drum` already.');
  });
});

function sumOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
