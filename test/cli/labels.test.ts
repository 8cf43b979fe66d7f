import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const BAGS = {
  ...JOURNAL,
  'van/sessions/2031-03-03-bags.md': `---
date: 2031-03-03
title: Bags
bags:
  - { bag: 12, holds: [2 bolts], off: pipe, goes-back: heads up }
  - { bag: 14, holds: [3 nuts], off: pipe, goes-back: "cone inwards, the long ones at the top, the short one where the bracket was cut, washers under the heads" }
emptied: [12]
---
`,
};
const labels = (cwd: string, ...more: string[]) => run(['labels', '--content', 'van', ...more], { cwd });

describe('labels', () => {
  test('of the bags asked for go into a PDF; a number that nobody filled is named', async () => {
    const cwd = folderWith(BAGS);
    const { exit, out, err } = await labels(cwd, '--bags', '12-15,1', '--out', 'out/labels.pdf');
    expect([exit, out]).toEqual([0, 'out/labels.pdf: 3 labels\n']);
    expect(err).toContain('No note fills bag 13, 15.');
    expect(readFileSync(join(cwd, 'out/labels.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('are of every bag that is filled, when none is named', async () => {
    expect((await labels(folderWith(BAGS), '--out', 'labels.pdf')).out).toBe('labels.pdf: 2 labels\n');
  });

  test('are not of a bag from which all has gone since, which is named; asked for by its number it has one', async () => {
    const cwd = folderWith({
      ...BAGS,
      'van/sessions/2031-03-04-up.md': '---\ndate: 2031-03-04\ntitle: Up\nparts: [{ part: drum, did: fitted }]\n---\n',
    });
    const { out, err } = await labels(cwd, '--out', 'labels.pdf');
    expect(out).toBe('labels.pdf: 1 label\n');
    expect(err).toContain('No label for bag 1: all of it has gone elsewhere, and no note says `emptied: [1]`.');
    expect((await labels(cwd, '--bags', '1', '--out', 'one.pdf')).out).toBe('one.pdf: 1 label\n');
  });

  test('never take the place of a file', async () => {
    const cwd = folderWith({ ...BAGS, 'mine.pdf': 'mine' });
    expect((await labels(cwd, '--out', 'mine.pdf')).exit).toBe(3);
    expect(readFileSync(join(cwd, 'mine.pdf'), 'utf8')).toBe('mine');
  });

  test('too small for their words are printed as far as they go, and named', async () => {
    const { exit, err } = await labels(folderWith(BAGS), '--out', 'labels.pdf', '--columns', '6', '--rows', '16');
    expect(exit).toBe(0);
    expect(err).toMatch(/words of bag 14 are cut/);
  });

  test.each([
    [[], 'needs --out FILE'],
    [['--out', 'a.pdf', '--bags', 'twelve'], '--bags takes numbers'],
    [['--out', 'a.pdf', '--bags', '20-12'], '--bags takes numbers'],
    [['--out', 'a.pdf', '--bags', '99'], 'no bag of those numbers is filled'],
    [['--out', 'a.pdf', '--paper', 'a3'], '--paper is a4 or us-letter'],
    [['--out', 'a.pdf', '--columns', '0'], '--columns takes a whole number'],
    [['--out', 'a.pdf', '--rows', '2.5'], '--rows takes a whole number'],
    [['--out', 'a.pdf', '--columns', '4', '--width', '60'], 'the paper is 210 mm wide'],
    [['--out', 'a.pdf', '--skip', '12'], 'more labels are skipped than a sheet has'],
  ])('%j is not understood, and nothing is written', async (more, says) => {
    const cwd = folderWith(BAGS);
    const { exit, err } = await labels(cwd, ...more);
    expect([exit, existsSync(join(cwd, 'a.pdf'))]).toEqual([2, false]);
    expect(err).toContain(says);
    expect(err).not.toMatch(/^\s+at /m);
  });

  test('of a journal with errors are not printed', async () => {
    const cwd = folderWith({ ...BAGS, 'van/sessions/2031-03-04.md': '---\ndate: 2031-03-04\ntitle: X\nemptied: [99]\n---\n' });
    const { exit, err } = await labels(cwd, '--out', 'a.pdf');
    expect([exit, existsSync(join(cwd, 'a.pdf'))]).toEqual([1, false]);
    expect(err).toMatch(/error A60[26]/);
  });
});
