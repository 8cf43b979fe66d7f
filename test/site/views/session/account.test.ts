import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { receivedWords, sessionAccount } from '../../../../src/site/views/books/entry-table.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { journal } from '../../../ledger/small-journal.ts';

const { record, problems } = journal([
  '2031-03-01',
  `bought: [{ what: Tyre shrunk, as: outside-work, for: drum, cost: 42.00, from: Quill Forge }, { what: Pins, for: drum, cost: 3.00 }]
received: [{ from: the owner, amount: 500.00, for: deposit }, { from: the club, amount: 20.00 }]`,
]);
const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'sessions/2031-03-01.html');
const [session] = record.journal.sessions;

test('the account of a session names who was paid, under what was bought of them and nothing else', () => {
  expect(problems).toEqual([]);
  const { markup } = sessionAccount(sheet, record.ledger.entries, session?.bills ?? [], 'Account');
  const rows = markup.split('<tr').map((row) => row.replace(/^[^>]*>|<[^>]*>/g, ' '));
  expect(rows.find((row) => row.includes('Tyre shrunk'))).toMatch(/Tyre shrunk\s+from Quill Forge/);
  expect(rows.find((row) => row.includes('Pins'))).not.toContain('from');
});

test('what came in that evening is said with whom it is from and what it is for, where the note has it', () => {
  expect(session?.received.map((one) => receivedWords(sheet, one))).toEqual(['£500.00 from the owner, deposit.', '£20.00 from the club.']);
});
