/** The record as one document holds what the pages were made from. */
import { expect, test } from 'vitest';
import { frozenStatement } from '../../src/exports/frozen-statement.ts';
import { recordJson, schemaOf } from '../../src/exports/record-json.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { asSent, statementOf } from '../../src/journal/ledger/statement.ts';
import type { LeaveOut } from '../../src/journal/model.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { hours, JOURNAL, journalWith, type NoteOf } from '../ledger/small-journal.ts';

test('what was sent to the client is in it, each line with the entry that it charged', () => {
  const note: NoteOf = ['2031-03-12', hours('jm', '1h')];
  const { record: open } = journalWith({}, note);
  const sent = frozenStatement(asSent(statementOf(open, '2030-09-14', '2031-03-31'), 1, open), open.journal.settings);
  const { statements, entries, deeds } = recordJson(journalWith({ statements: [sent] }, note).record);
  expect(statements).toMatchObject([
    { number: 1, to: '2031-03-31', charged: 2800, lines: [{ entry: '2031-03-12-0#hours-1', cost: 2800 }] },
  ]);
  expect(entries).toMatchObject([{ id: '2031-03-12-0#hours-1' }]);
  expect(deeds).toEqual([]);
});

/** Every name of a field in a document. */
function namesIn(value: unknown, names = new Set<string>()): ReadonlySet<string> {
  if (Array.isArray(value)) for (const held of value) namesIn(held, names);
  else if (typeof value === 'object' && value !== null)
    for (const [name, held] of Object.entries(value)) {
      names.add(name);
      namesIn(held, names);
    }
  return names;
}

const NOTES: readonly NoteOf[] = [
  [
    '2031-03-01',
    'hours: [{ by: jm, on: brakes, time: 2h }]\nmeasured: [{ part: drum, what: bore, value: 9 in }]\nbills: [{ from: Quill Forge, lines: [{ what: A hose, for: drum, cost: 84.00 }] }]\nparts: [{ part: drum, did: removed, to: shelf, marks: C 4417 }]\nopens: [{ id: hose, kind: waiting, what: The other hose, on: brakes, from: Quill Forge, price: 4.00 }]',
  ],
];

test.each<[LeaveOut[], string[]]>([
  [
    ['money', 'papers'],
    ['gross', 'net', 'rates', 'perHour', 'price', 'currency', 'paper', 'papers'],
  ],
  [
    ['hours', 'people'],
    ['hours', 'minutes', 'by', 'people', 'person', 'budgetMinutes'],
  ],
  [['people'], ['people', 'by', 'person', 'rates', 'perHour']],
  [
    ['marks', 'stores', 'film'],
    ['marks', 'store', 'stores', 'film'],
  ],
])('a copy without %j has no field that would be nought or empty for what it leaves out', (kinds, fields) => {
  const { record, problems } = journalWith(
    { journal: `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] }, other: { leave-out: [marks], may-say: [A secret] } }\n` },
    ...NOTES,
  );
  expect(problems).toEqual([]);
  const whole = namesIn(recordJson(record));
  for (const field of fields) expect(whole, field).toContain(field);
  const document = recordJson(copyOf(record, 'copy'));
  const names = namesIn(document);
  for (const field of fields) expect(names, field).not.toContain(field);
  expect(document.sessions).toMatchObject([{ measured: [{ value: expect.anything() }], parts: [{ part: 'drum' }] }]);
  expect(JSON.stringify(document)).not.toContain('A secret');
  expect(namesIn(schemaOf(document, 'x'))).not.toContain(fields[0]);
});

test('its schema says nothing of what it does not hold', () => {
  const saidOf = (of: JournalRecord): string => JSON.stringify(schemaOf(recordJson(of), 'x'));
  const { record } = journalWith({ journal: `${JOURNAL}copies: { copy: { leave-out: [money] } }\n` }, ...NOTES);
  for (const words of [/whole minor units/, /ISO 4217/, /Minor units an hour/]) {
    expect(saidOf(record)).toMatch(words);
    expect(saidOf(copyOf(record, 'copy'))).not.toMatch(words);
  }
  expect(saidOf(copyOf(record, 'copy'))).not.toMatch(/money|currency|cost/i);
});
