/** What the book and the sheets say of some of a lot, and of names that have commas of their own. */
import { expect, test } from 'vitest';
import { account, cautions, comesWith, methods } from '../../src/book/appendices.ts';
import { departures } from '../../src/book/register-chapters.ts';
import { type BookSetting, settingOf } from '../../src/book/setting.ts';
import { buyerSheet } from '../../src/book/sheets/buyer.ts';
import { inspectorSheet } from '../../src/book/sheets/inspector.ts';
import { insurerSheet } from '../../src/book/sheets/insurer.ts';
import { threads } from '../../src/book/threads.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import type { LeaveOut } from '../../src/journal/model.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { JOURNAL, journalWith } from '../ledger/small-journal.ts';

const PARTS = `- { id: wheels, name: Road wheels, origin: original, count: 4, hazard: lead-paint }
- { id: spare, name: Spare wheel, origin: earlier-replacement }
- { id: caps, name: Hub caps, origin: original, count: 2, hazard: lead-paint }
- { id: lid, name: "Lid, nearside", origin: original }
`;
const CONSUMABLES = 'cleaner: { name: "Cleaner, mild", unit: L, opening: { amount: 2 L, value: 9.00 } }\nwool: { name: Wool, unit: g }\n';

function setting(): BookSetting {
  const { record, problems } = journalWith(
    { journal: `${JOURNAL}threads: { lids: { title: Lids, parts: [lid, caps] } }\n`, parts: PARTS, consumables: CONSUMABLES },
    [
      '2031-03-01',
      `hours: [{ by: jm, on: brakes, time: 2h }, { by: jm, on: frame, time: 20m }]
bought: [{ what: Tape, for: brakes, cost: 9.40 }, { what: Cord, for: frame, cost: 1.00 }]
parts:
  - { part: wheels, did: removed, count: 1, to: shelf }
  - { part: spare, did: removed }
  - { part: spare, did: fitted, at: wheels }
  - { part: caps, did: removed, to: shelf }
  - { part: lid, did: [removed, sent-out], to: "A plater, by the weir", work: Plate }
methods: [{ on: [lid, caps], how: Wiped, with: [cleaner, wool], result: good }]`,
    ],
  );
  expect(problems).toEqual([]);
  return settingOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' });
}

/** Typst source as it reads. */
const read = (source: string): string =>
  source
    .replaceAll(/#"((?:[^"\\]|\\.)*)";?/g, '$1')
    .replaceAll(/#mention\([^)]*\)/g, '')
    .replaceAll(/#strong\[([^\]]*)\]/g, '$1')
    .replaceAll(/\s+/g, ' ');
const sheet = (of: (setting: BookSetting) => { readonly parts: readonly string[] }): string => read(of(setting()).parts.join(' '));

test('where some of a lot lies it is said how many of how many, one too', () => {
  for (const told of [read(comesWith(setting())), sheet(insurerSheet)]) {
    expect(told).toContain('Road wheels (1 of 4)');
    expect(told).toContain('Hub caps × 2');
  }
  expect(read(cautions(setting()))).toContain('Lead paint: Road wheels (1 of 4: in stores: shelf) and Hub caps (in stores: shelf).');
});

test('of a lot of which only some are original a buyer is told how many', () => {
  expect(sheet(buyerSheet)).toContain('Believed original because nothing speaks against it: Road wheels (3 of 4).');
});

test('what stands at another place is fitted there, and nothing stands at its own', () => {
  expect(read(departures(setting()))).toMatch(/\[Spare wheel\], \[nothing: fitted elsewhere\]/);
});

/** The same in a copy. */
function settingWithout(kind: LeaveOut): BookSetting {
  const { record } = setting();
  const copies = new Map([['copy', { leaveOut: [kind], maySay: [] }]]);
  const { journal } = record;
  const copy = copyOf({ ...record, journal: { ...journal, settings: { ...journal.settings, copies } } }, 'copy');
  return settingOf({ ...copy, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' });
}

test('the account says in what currency it is, and what all of it comes to', () => {
  // 2 h at 28.00 and 9.40 bought; 20 min at 28.00 and 1.00 bought.
  const told = read(account(setting()));
  expect(told).toContain('Amounts are in GBP.');
  expect(told).toContain('[Brakes], [2:00], [9.40], [65.40]');
  expect(told).toContain('[Frame], [0:20], [1.00], [10.33]');
  expect(told).toContain('[Together], [2:20], [10.40], [75.73]');
  expect(read(account(settingWithout('hours')))).toMatch(/Amounts are in GBP\. .*\[Together\], \[10\.40\]\)/);
  const hours = read(account(settingWithout('money')));
  expect(hours).toContain('[Together], [2:20])');
  expect(hours).not.toMatch(/GBP|Amounts/);
});

test('names with commas of their own are told apart', () => {
  expect(read(methods(setting()))).toContain('[Lid, nearside; Hub caps], [Cleaner, mild; Wool]');
  expect(read(threads(setting()))).toContain('About Lid, nearside; Hub caps.');
  expect(sheet(inspectorSheet)).toContain('Parts were out with A plater, by the weir.');
});
