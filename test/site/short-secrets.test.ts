/** The proof of a copy, for what is short: names and marks of a few letters, and sums without their currency. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { withheldTexts } from '../../src/journal/copy/withheld.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { leaksOfFile } from '../../src/site/proof/prove.ts';
import { run } from '../cli/run.ts';
import { compileFiles } from '../journal/base.ts';
import { put } from '../load/folder.ts';

const JOURNAL = `title: The tram
arrived: 2031-01-01
currency: GBP
time-zone: Europe/London
locale: en-GB
vehicle: { make: A make, marks: { frame: Q7, plate: 4417 } }
people: { bo: { name: Bo, rate: 31.37 }, will: { name: Will, rate: 0 } }
subsystems: { brakes: { name: Brakes } }
`;
const PARTS = '- { id: drum, name: Drum, origin: original }\n';
const noteOf = (prose: string) => `---
date: 2031-01-05
title: An evening
hours: [{ by: bo, on: brakes, time: 1h }, { by: will, on: brakes, time: 1h }]
bought: [{ what: Pin, for: drum, cost: 12.34 }, { what: Nut, for: drum, cost: 1234.50 }]
---
${prose}
`;

const room = mkdtempSync(join(tmpdir(), 'asfound-short-'));
afterAll(() => rmSync(room, { recursive: true, force: true }));
beforeEach(() => {
  put(room, 'tram/journal.yaml', JOURNAL);
  put(room, 'tram/parts/brakes.yaml', PARTS);
});

function build(prose: string) {
  put(room, 'tram/sessions/2031-01-05-evening.md', noteOf(prose));
  return run(['build', '--content', 'tram', '--copy', 'public', '--out', 'site'], { cwd: room });
}

test.each([
  ['a name of two letters', 'Ask Bo about it.', 'Bo'],
  ['a mark of two characters', 'It says Q7 there.', 'Q7'],
  ['a sum without its currency', 'That was 12.34 for the pin.', '12.34'],
])('%s in the prose publishes nothing', async (_, prose, told) => {
  const { exit, err } = await build(prose);
  expect([exit, err]).toEqual([1, expect.stringContaining(`evening.html: “${told}” is withheld`)]);
});

test('a sum that came in is another one than what went out, and lines of a drawing hold no lengths of time', async () => {
  const withheld = [{ text: '£104.00', what: 'labour' }, { text: '4h', what: 'hours', as: 'number' } as const];
  const leaks = async (text: string) =>
    (await leaksOfFile('any-day/record.js', new TextEncoder().encode(text), withheld)).map((leak) => leak.withheld.text);
  expect(await leaks('["−£104.00","M-129.4 138.8q6 -4 8 -12h-1.6a4 4 0 0 1 -4 4h-38"]')).toEqual([]);
  expect(await leaks('["£104.00","My 4h there"]')).toEqual(['£104.00', '4h']);
});

test('a name that is a word of these pages as well, and a number, are told and published', async () => {
  const { exit, err } = await build('Will was here; it will do. 4417 on the plate.');
  expect(exit).toBe(0);
  expect(err).toMatch(/“Will” is withheld \(people \/ will \/ name\), and may be what stands here/);
  expect(err).toMatch(/“4417” is withheld .* and may be what stands here/);
});

test('parts of longer words and numbers, other capitals and measurements are none', async () => {
  const { exit, err } = await build('Bob and Bó, BO and boxes; Q70, 112.34, 12.345, 12.34 mm and 12.34..12.40 mm.');
  expect([exit, err]).toEqual([0, expect.not.stringContaining('withheld')]);
});

describe('what is looked for', () => {
  const { record } = compileFiles({
    journal: JOURNAL,
    consumables: '{}',
    parts: PARTS,
    more: { 'sessions/2031-01-05-evening.md': noteOf('Paid 1,234.50, or 12.34 in all.') },
  });
  const withheld = withheldTexts(record as JournalRecord, copyOf(record as JournalRecord, 'public'));
  const leaks = async (file: string, text: string) =>
    (await leaksOfFile(file, new TextEncoder().encode(text), withheld)).map((leak) => [leak.withheld.text, leak.perhaps]);

  test('a sum with its thousands apart, and one that could be in inches', async () => {
    expect(await leaks('a.html', '<td>1,234.50</td><td>12.34 in all</td>')).toEqual([
      ['1,234.50', false],
      ['12.34', true],
    ]);
  });

  test('a short word is not looked for in bytes, lines of a drawing or a style sheet', async () => {
    expect(await leaks('a.webp', 'x Q7 Bo y')).toEqual([]);
    expect(await leaks('a.css', '.Q7 { }')).toEqual([]);
    expect(await leaks('a.svg', '<path d="M0 0 Q7 3"/>')).toEqual([]);
    expect(await leaks('a.svg', '<text>Q7</text>')).toEqual([['Q7', false]]);
  });

  test('a text that goes on does not hide a shorter one within it', async () => {
    const both = [
      { text: 'Jo Wray', what: 'people' },
      { text: 'Jo', what: 'people', as: 'word' as const },
    ];
    const found = await leaksOfFile('a.txt', new TextEncoder().encode('Jo Wrayburn'), both);
    expect(found.map((leak) => leak.withheld.text)).toEqual(['Jo']);
  });
});
