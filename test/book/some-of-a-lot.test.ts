/** What the book and the sheets say of some of a lot, and of names that have commas of their own. */
import { expect, test } from 'vitest';
import { cautions, comesWith, methods } from '../../src/book/appendices.ts';
import { departures } from '../../src/book/register-chapters.ts';
import { type BookSetting, settingOf } from '../../src/book/setting.ts';
import { inspectorSheet } from '../../src/book/sheets/inspector.ts';
import { insurerSheet } from '../../src/book/sheets/insurer.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { journalWith } from '../ledger/small-journal.ts';

const PARTS = `- { id: wheels, name: Road wheels, origin: original, count: 4, hazard: lead-paint }
- { id: spare, name: Spare wheel, origin: earlier-replacement }
- { id: caps, name: Hub caps, origin: original, count: 2, hazard: lead-paint }
- { id: lid, name: "Lid, nearside", origin: original }
`;
const CONSUMABLES = 'cleaner: { name: "Cleaner, mild", unit: L, opening: { amount: 2 L, value: 9.00 } }\nwool: { name: Wool, unit: g }\n';

function setting(): BookSetting {
  const { record, problems } = journalWith({ parts: PARTS, consumables: CONSUMABLES }, [
    '2031-03-01',
    `parts:
  - { part: wheels, did: removed, count: 1, to: shelf }
  - { part: spare, did: removed }
  - { part: spare, did: fitted, at: wheels }
  - { part: caps, did: removed, to: shelf }
  - { part: lid, did: [removed, sent-out], to: "A plater, by the weir", work: Plate }
methods: [{ on: [lid, caps], how: Wiped, with: [cleaner, wool], result: good }]`,
  ]);
  expect(problems).toEqual([]);
  return settingOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' });
}

/** Typst source as it reads. */
const read = (source: string): string =>
  source
    .replaceAll(/#"((?:[^"\\]|\\.)*)";?/g, '$1')
    .replaceAll(/#mention\([^)]*\)/g, '')
    .replaceAll(/\s+/g, ' ');
const sheet = (of: (setting: BookSetting) => { readonly parts: readonly string[] }): string => read(of(setting()).parts.join(' '));

test('where some of a lot lies it is said how many of how many, one too', () => {
  for (const told of [read(comesWith(setting())), sheet(insurerSheet)]) {
    expect(told).toContain('Road wheels (1 of 4)');
    expect(told).toContain('Hub caps × 2');
  }
  expect(read(cautions(setting()))).toContain('Lead paint: Road wheels (1 of 4: in stores: shelf) and Hub caps (in stores: shelf).');
});

test('what stands at another place is fitted there, and nothing stands at its own', () => {
  expect(read(departures(setting()))).toMatch(/\[Spare wheel\], \[nothing: fitted elsewhere\]/);
});

test('names with commas of their own are told apart', () => {
  expect(read(methods(setting()))).toContain('[Lid, nearside; Hub caps], [Cleaner, mild; Wool]');
  expect(sheet(inspectorSheet)).toContain('Parts were out with A plater, by the weir.');
});
