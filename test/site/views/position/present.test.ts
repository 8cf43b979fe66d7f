/** The present state of a position whose lot was taken off in part. */
import { expect, test } from 'vitest';
import { registerRowAt } from '../../../../src/journal/registers/register.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { presentOf } from '../../../../src/site/views/position/present.ts';
import { journalWith, type NoteOf } from '../../../ledger/small-journal.ts';

function fitted(spokes: string, ...notes: readonly NoteOf[]): string[] {
  const { record, problems } = journalWith({ parts: `- { id: spokes, name: Spokes, origin: original, count: 6${spokes} }\n` }, ...notes);
  expect(problems).toEqual([]);
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' }, 'parts/spokes.html');
  const position = record.journal.positions.get('spokes');
  if (position === undefined) throw new Error('there is no such place');
  return presentOf(sheet, { position, now: registerRowAt(record, 'spokes', null) }).fitted.map(
    ({ many, condition }) => `${many}${condition}`,
  );
}

const off = (which: string): NoteOf => ['2031-03-01', `parts: [{ part: spokes, did: removed, ${which}, to: shelf, condition: 2 }]`];
const back = (which: string): NoteOf => ['2031-03-04', `parts: [{ part: spokes, did: fitted, ${which} }]`];

test('of a numbered lot each spell on the vehicle says which those are, and the condition of those alone', () => {
  expect(fitted(', numbered: 1 to 6', off('which: [3, 4]'), back('which: [4]'))).toEqual([
    '4 of 6, numbers 1, 2, 5 and 6: ',
    '1 of 6, number 4: ; condition 2, moderately strong symptoms, as of 1 March 2031',
  ]);
});

test('where they cannot be told apart, the condition is of so many of all that stand there', () => {
  const seen: NoteOf = ['2031-03-04', 'parts: [{ part: spokes, did: fitted, count: 1, condition: 1 }]'];
  const rows = fitted('', off('count: 2'), seen);
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(row).toMatch(/condition 1 \(1 of 5\)/);
});
