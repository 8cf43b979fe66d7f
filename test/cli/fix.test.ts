import { chmodSync, existsSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { repaired } from '../../src/journal/diagnostics/repair.ts';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const PATH = 'van/sessions/2031-03-03-slips.md';
const SLIPS = `\uFEFF----
Date: 2031-03-03
title: Drum: near side   # as it was
hours:
\t- { by: me, on: brakes, time: 1h }
parts:
  - { part:drum,, did: cleaned, note: Scored, but sound }   # no doubt

  – { part: drum, did: inspected; note: @home }
private : x
---
Prose  with [it](part: drum), kept.  
`.replaceAll('\n', '\r\n');
const MENDED = `\uFEFF---
Date: 2031-03-03
title: Drum: near side   # as it was
hours:
  - { by: me, on: brakes, time: 1h }
parts:
  - { part: drum, did: cleaned, note: Scored, but sound }   # no doubt

  - { part: drum, did: inspected, note: "@home" }
private : x
---
Prose  with [it](part:drum), kept.  
`.replaceAll('\n', '\r\n');

const folderOf = (note: string): string => folderWith({ ...JOURNAL, [PATH]: note });
const fix = (cwd: string) => run(['check', '--fix', '--content', 'van'], { cwd });

describe('check --fix', () => {
  test('writes what can be meant in one way only, and keeps every other letter', async () => {
    const cwd = folderOf(SLIPS);
    const { exit, out, err } = await fix(cwd);
    expect(readFileSync(join(cwd, PATH), 'utf8')).toBe(MENDED);
    expect(out).toContain(`${PATH}:12\n  before  Prose  with [it](part: drum), kept.\n  after   Prose  with [it](part:drum), kept.\n`);
    expect(err).toContain('1 file was mended; what stood there before is in van/before-fix.');
    expect(readFileSync(join(cwd, 'van/before-fix/sessions/2031-03-03-slips.md'), 'utf8')).toBe(SLIPS);
    expect(out).toContain('  before  →- { by: me');
    expect(exit).toBe(0);
    expect((await run(['check', '--content', 'van'], { cwd })).err).toMatch(/no errors|0 errors/);
  });

  test('has nothing left to do the second time', async () => {
    const cwd = folderOf(SLIPS);
    await fix(cwd);
    const again = await fix(cwd);
    expect([again.out, again.err.split('\n')[0]]).toEqual(['', 'Nothing stands here that can be mended without asking.']);
    expect(readdirSync(join(cwd, 'van')).filter((name) => name.startsWith('before-fix'))).toEqual(['before-fix']);
  });

  test('never writes over a copy it made before', async () => {
    const cwd = folderOf(SLIPS);
    await fix(cwd);
    writeFileSync(join(cwd, PATH), SLIPS.replace('Prose', 'More'));
    await fix(cwd);
    expect(readFileSync(join(cwd, 'van/before-fix/sessions/2031-03-03-slips.md'), 'utf8')).toBe(SLIPS);
    expect(readFileSync(join(cwd, 'van/before-fix-2/sessions/2031-03-03-slips.md'), 'utf8')).toContain('More');
  });

  test('leaves alone what could be meant otherwise, and tells it', async () => {
    const note = '---\ndate: 2031-03-03\ntitle: Drum\nparts:\n  - { part: drum, did: [cleaned, note: x }\n---\n';
    const cwd = folderOf(note);
    const { exit, out, err } = await fix(cwd);
    expect([exit, out]).toEqual([1, '']);
    expect(err).toContain('A201');
    expect(readFileSync(join(cwd, PATH), 'utf8')).toBe(note);
    expect(existsSync(join(cwd, 'van/before-fix'))).toBe(false);
  });

  test('writes no link to a part that is not there', async () => {
    const note = '---\ndate: 2031-03-03\ntitle: Drum\n---\n[It](part:roof lining), [it](part: dru m).\n';
    const cwd = folderOf(note);
    await fix(cwd);
    expect(readFileSync(join(cwd, PATH), 'utf8')).toBe(note.replace('part: dru m', 'part:drum'));
  });

  test('writes the file that a link leads to, not over the link', async () => {
    const cwd = folderWith({ ...JOURNAL, 'van/sessions/kept.txt': SLIPS });
    symlinkSync('kept.txt', join(cwd, PATH));
    await fix(cwd);
    expect(readFileSync(join(cwd, 'van/sessions/kept.txt'), 'utf8')).toBe(MENDED);
  });

  test('leaves nothing unfinished beside the note, and who may read it is as before', async () => {
    const cwd = folderOf(SLIPS);
    chmodSync(join(cwd, PATH), 0o640);
    await fix(cwd);
    expect(statSync(join(cwd, PATH)).mode & 0o777).toBe(0o640);
    expect(readdirSync(join(cwd, 'van/sessions')).filter((name) => !name.startsWith('2031'))).toEqual([]);
    expect(statSync(join(cwd, PATH)).isFile()).toBe(true);
  });

  test('is offered where it would help', async () => {
    const cwd = folderOf(SLIPS);
    expect((await run(['check', '--content', 'van'], { cwd })).err).toContain('`asfound check --fix`');
    await fix(cwd);
    expect((await run(['check', '--content', 'van'], { cwd })).err).not.toContain('--fix');
  });

  test('leaves a sound note as it was written while it mends another, and is not offered for it', async () => {
    const sound = '---\nDate: 2031-03-02\ntitle: Drum\nparts:\n  - { part: drum, did: cleaned, note: Scored, but sound }\n---\n';
    const path = 'van/sessions/2031-03-02-sound.md';
    const cwd = folderWith({ ...JOURNAL, [PATH]: SLIPS, [path]: sound });
    const { out, err } = await fix(cwd);
    expect(readFileSync(join(cwd, PATH), 'utf8')).toBe(MENDED);
    expect(readFileSync(join(cwd, path), 'utf8')).toBe(sound);
    expect(out).not.toContain('2031-03-02');
    expect(err).toContain('1 file was mended');
    writeFileSync(join(cwd, PATH), MENDED.replace('part: drum', 'part: no-such-part'));
    const told = (await run(['check', '--content', 'van'], { cwd })).err;
    expect(told).toContain('no-such-part');
    expect(told).not.toContain('--fix');
  });

  /** A value in each field of prose, inside braces and with a comma, as it is read: nothing of it is told. */
  test('changes the lines that check lists and no other, whatever else stands in the note', async () => {
    const prose = [
      'decisions: [{ part: drum, verdict: keep, because: Sound, and light }]',
      'methods: [{ on: drum, how: Soaked, then brushed }]',
      'parts: [{ part: drum, did: cleaned, note: Bright, and dry }]',
      'closes: [{ id: polish, how: Done, finally }]',
      'private : He said: no, not now',
      'Sold: [{ what: Scrap, and swarf, to: a dealer, in the yard next door, price: 3.00 }]',
    ];
    const note = `---\ndate: 2031-03-03\ntitle: Drum: near side, again\n${prose.join('\n')}\n---\n[It](part: drum).\n`;
    const cwd = folderOf(note);
    const listed = (await run(['check', '--content', 'van'], { cwd })).err;
    expect(listed.match(/^van\S+/gm)).toEqual([`${PATH}:11:6`]);
    expect(listed).toContain(`here ${PATH}:11.\n`);
    const { exit, out } = await fix(cwd);
    expect([exit, out]).toEqual([0, `${PATH}:11\n  before  [It](part: drum).\n  after   [It](part:drum).\n`]);
    expect(readFileSync(join(cwd, PATH), 'utf8')).toBe(note.replace('(part: drum)', '(part:drum)'));
  });

  test('shows text only', async () => {
    const { exit, err } = await run(['check', '--fix', '--format', 'json', '--content', 'van'], { cwd: folderOf(SLIPS) });
    expect(exit).toBe(2);
    expect(err).toContain('--format json');
  });
});

test('of two repairs that overlap the first is written', () => {
  const at = (column: number, endColumn: number) => ({ file: 'a', line: 2, column, endLine: 2, endColumn });
  const repairs = [
    { place: at(3, 5), text: 'X' },
    { place: at(1, 4), text: 'Y' },
    { place: at(6, 6), text: '!' },
  ];
  expect(repaired('one\rabcdef\n', repairs)).toBe('one\rYde!f\n');
});
