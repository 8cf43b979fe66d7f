/** What an insurer is told of parts that are off the vehicle. */
import { expect, test } from 'vitest';
import { settingOf } from '../../src/book/setting.ts';
import { insurerSheet } from '../../src/book/sheets/insurer.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { journalWith } from '../ledger/small-journal.ts';

const PARTS = `- { id: caps, name: Brass caps, origin: original, count: 4 }
- { id: hose, name: Hose, origin: original }
`;

/** Typst source as it reads. */
const read = (source: string): string => source.replaceAll(/#"((?:[^"\\]|\\.)*)";?/g, '$1').replaceAll(/\s+/g, ' ');

function sheet(...notes: string[]): string {
  const { record, problems } = journalWith(
    { parts: PARTS },
    ...notes.map((parts, n) => [`2031-03-0${n + 1}`, `parts: [${parts}]`] as [string, string]),
  );
  expect(problems).toEqual([]);
  return read(insurerSheet(settingOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' })).parts.join(' '));
}

test('what lies in a bag is told, with its number', () => {
  expect(sheet('{ part: caps, did: removed, to: bag 14 }')).toContain('[Bag 14], [Brass caps × 4]');
});

test('what was stolen is told, how many, of which day and what the note says, and that it was found again no longer', () => {
  const taken = '{ part: caps, did: [removed, gone], how: stolen, count: 1, note: the lock was cut }';
  expect(sheet(taken)).toContain('Stolen: Brass caps (1 of 4), 1 March 2031: the lock was cut.');
  expect(sheet(taken, '{ part: caps, did: acquired, count: 1, from: the police, to: shelf }')).not.toContain('Stolen');
});

test('a place is named once, with all that lies there', () => {
  const told = sheet('{ part: caps, did: removed, to: shelf }, { part: hose, did: removed, to: shelf }');
  expect(told).toContain('[Shelf], [Brass caps × 4 #linebreak() Hose]');
});
