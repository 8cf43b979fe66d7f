/** What the page of the client shows and keeps back, and in which copies there is one. */
import { expect, test } from 'vitest';
import { frozenStatement } from '../../../../src/exports/frozen-statement.ts';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { withheldTexts } from '../../../../src/journal/copy/withheld.ts';
import { hasClient } from '../../../../src/journal/ledger/client-account.ts';
import { asSent, statementOf } from '../../../../src/journal/ledger/statement.ts';
import type { LeaveOut } from '../../../../src/journal/model.ts';
import type { JournalRecord } from '../../../../src/journal/record.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { clientPage } from '../../../../src/site/views/client/client-page.ts';
import { chargedTable, owedSentence, owedTable, standingTable, statementsTable } from '../../../../src/site/views/client/client-tables.ts';
import { statementOnPage } from '../../../../src/site/views/client/statement-tables.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { hours, JOURNAL, journalWith, type NoteOf } from '../../../ledger/small-journal.ts';

const NOTES: readonly NoteOf[] = [
  ['2031-03-12', `${hours('jm', '1h')}\nbought: [{ what: Pin, as: part, for: drum, cost: 77.77, tax: 20% }]`],
  ['2031-03-20', `hours: [{ by: jm, on: brakes, time: 30m, unpaid: My own mistake }]`],
  [
    '2031-04-02',
    'received: [{ from: the owner, amount: 60.00, for: deposit }]\nsold: [{ what: Rims, on: frame, price: 5.00, to: Mr Smallpiece }]',
  ],
  ['2031-04-25', hours('jm', '2h')],
];
const CLIENT = 'client: { name: The Owner, terms: 30 days }\n';

/** The record with what is shown, its first statement closed at the end of March. */
function recordWith(shows: string, client = CLIENT, ...more: readonly NoteOf[]): JournalRecord {
  const settings = { journal: `${JOURNAL}${client}statement: { shows: [${shows}] }\n` };
  const open = journalWith(settings, ...NOTES).record;
  const first = frozenStatement(asSent(statementOf(open, '2030-09-14', '2031-03-31'), 1, open), open.journal.settings);
  return journalWith({ ...settings, statements: [first] }, ...NOTES, ...more).record;
}
const sheetWith = (record: JournalRecord) => sheetOf({ ...record, pictures: new Map() } as unknown as SiteRecord, PAGES.client);
const shown = (record: JournalRecord): string => {
  const sheet = sheetWith(record);
  const page = clientPage(sheet);
  const lines = [...page.sent, page.since].flatMap((statement) => statementOnPage(sheet, statement).sections);
  return [chargedTable(sheet, page), statementsTable(sheet, page), owedTable(sheet, page), ...lines.map(({ table }) => table)]
    .map(({ markup }) => markup)
    .join('\n');
};

test('of mark-up, what things cost and what is not charged it shows only what the journal says', () => {
  // The pin cost 77.77, 64.81 of it net: with a tenth of that on it, 84.25 is charged.
  expect(shown(recordWith(''))).not.toMatch(/77\.77|6\.48|Mark-up|mistake/);
  expect(shown(recordWith(''))).toContain('84.25');
  expect(shown(recordWith('costs'))).toContain('77.77');
  expect(shown(recordWith('mark-up'))).toContain('6.48');
  expect(clientPage(sheetWith(recordWith(''))).notCharged).toEqual([]);
  expect(clientPage(sheetWith(recordWith('not-charged'))).notCharged.map(({ notCharged }) => notCharged)).toEqual(['My own mistake']);
});

test('where everything that was charged is on statements, no line of the list is of none', () => {
  const table = (record: JournalRecord): string => statementsTable(sheetWith(record), clientPage(sheetWith(record))).markup;
  expect(table(recordWith(''))).toContain('Since, not sent yet');
  const settings = { journal: `${JOURNAL}${CLIENT}` };
  const open = journalWith(settings, NOTES[0] as NoteOf).record;
  expect(table(open)).toContain('Since, not sent yet');
  const first = frozenStatement(asSent(statementOf(open, '2030-09-14', '2031-03-31'), 1, open), open.journal.settings);
  expect(table(journalWith({ ...settings, statements: [first] }, NOTES[0] as NoteOf).record)).not.toContain('Since, not sent yet');
});

test('what is on statements and since is all that is charged, and what is owed by its age is what is owed', () => {
  const page = clientPage(sheetWith(recordWith('')));
  const { account, kinds, dues } = page;
  const sum = (of: readonly number[]): number => of.reduce((all, one) => all + one, 0);
  expect(sum(kinds.map(({ sent }) => sent))).toBe(account.stated);
  expect(sum(kinds.map(({ since }) => since))).toBe(account.open);
  for (const kind of kinds) expect(kind.sent + kind.since).toBe(kind.charged);
  expect(sum(dues.map(({ left }) => left))).toBe(account.owed);
  // 28.00 + 84.25 were sent and 60.00 came in; a sale of 5.00 is set against what was not sent yet, as it was not.
  expect(dues).toEqual([
    { date: '2031-03-31', statement: 1, amount: 11_225, left: 5225 },
    { date: '2031-04-25', statement: null, amount: 6000, left: 5500 },
  ]);
  const sheet = sheetWith(recordWith(''));
  expect(owedSentence(sheet, page)).toBe(
    '£52.25 is owed, the oldest of it since 31 March 2031, 25 days. £55.00 was charged that is not yet on a statement.',
  );
  const standing = standingTable(sheet, page, (section) => `#${section}`)
    .markup.replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
  expect(standing).toContain('Owed, the oldest since 31 March 2031: 25 days 52.25 Not yet on a statement 55.00');
});

test('of what is on no statement nothing is owed yet, and money covers what was sent before it', () => {
  const paid: NoteOf = ['2031-04-26', 'received: [{ from: the owner, amount: 60.00 }]'];
  const sheet = sheetWith(recordWith('', CLIENT, paid));
  const page = clientPage(sheet);
  expect(owedSentence(sheet, page)).toBe('Nothing is owed yet. £47.25 was charged beyond what came in that is not yet on a statement.');
  expect(page.dues.map(({ statement, left }) => [statement, left])).toEqual([[null, 4725]]);
  expect(owedTable(sheet, page).markup).not.toMatch(/since 25 Apr/);
  // What is not sent is not summed as owed.
  const words = owedTable(sheet, page)
    .markup.replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
  expect(words).toMatch(/Not sent yet, of April 2031 47\.25 Owed 0\.00 Not sent yet, and not owed 47\.25/);
});

test('where what is on no statement comes to a credit, the page says that it lowers what is owed', () => {
  const owed = (...more: readonly NoteOf[]): string => {
    const sheet = sheetWith(recordWith('', CLIENT, ...more));
    return owedTable(sheet, clientPage(sheet)).markup.replace(/<[^>]*>/g, ' ');
  };
  expect(owed()).toContain('What was received covers the oldest statement first.');
  // 60.00 of work, less sales of 5.00 and 70.00: of the 52.25 that are left of the statement, 37.25.
  const credited = owed(['2031-04-26', 'sold: [{ what: Hood, on: frame, price: 70.00 }]']);
  expect(credited).toContain('37.25');
  expect(credited).toContain('What was received, and what was credited since, covers the oldest statement first.');
});

test('there is one only where the journal tells of a client, and in no copy without money or hours', () => {
  const record = recordWith('costs');
  expect(hasClient(record)).toBe(true);
  expect(hasClient(journalWith({}, ['2031-03-12', hours('jm', '1h')]).record)).toBe(false);
  const copyWithout = (...leaveOut: LeaveOut[]): JournalRecord => {
    const settings = { ...record.journal.settings, copies: new Map([['short', { leaveOut, maySay: [] }]]) };
    return copyOf({ ...record, journal: { ...record.journal, settings } }, 'short');
  };
  expect([copyWithout('money'), copyWithout('hours'), copyWithout('private')].map(hasClient)).toEqual([false, false, true]);
  // A statement repeats what entries are called, and these the copy may name; whom it was sent to, and why something was not charged, it may not.
  const withheld = withheldTexts(record, copyWithout('money')).map(({ text }) => text);
  expect(withheld).toContain('The Owner');
  expect(withheld.filter((text) => /^Work|#/.test(text))).toEqual(['Work; not charged: My own mistake']);
  // The day to pay by is a day like any other of the record, and its terms are a length of time.
  expect(record.journal.statements[0]?.sentWith?.head).toContainEqual({ name: 'To pay by', words: '30 Apr 2031' });
  expect(withheld).not.toContain('30 Apr 2031');
  expect(withheldTexts(record, copyWithout('money')).find(({ text }) => text === '30 days')?.as).toBe('number');
  const nameless = copyWithout('people');
  expect(hasClient(nameless)).toBe(true);
  expect(shown(nameless)).not.toMatch(/Jory|Smallpiece|The Owner|the owner/);
  expect(shown(nameless)).toContain('84.25');
});

test('of a copy without money the program’s own reason for what a stock-take misses is not looked for: nobody could mend it', () => {
  const settings = { journal: `${JOURNAL}${CLIENT}copies: { short: { leave-out: [money] } }\n` };
  const note: NoteOf = ['2031-03-12', 'counted: [{ consumable: cleaner, amount: 1 L, because: stock-take }]'];
  const open = journalWith(settings, note).record;
  const sent = frozenStatement(asSent(statementOf(open, '2030-09-14', '2031-03-31'), 1, open), open.journal.settings);
  const { record, problems } = journalWith({ ...settings, statements: [sent] }, note);
  expect(problems).toEqual([]);
  expect(record.journal.statements[0]?.lines.map(({ notCharged }) => notCharged)).toEqual([expect.stringContaining('found by counting')]);
  expect(withheldTexts(record, copyOf(record, 'short')).filter(({ text }) => text.includes('found by counting'))).toEqual([]);
});
