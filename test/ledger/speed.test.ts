import { expect, test } from 'vitest';
import { budgets } from '../../src/journal/ledger/budgets.ts';
import { subsystemByMonth } from '../../src/journal/ledger/by-month.ts';
import { ledgerOf } from '../../src/journal/ledger/ledger.ts';
import { costOfPosition } from '../../src/journal/ledger/of-position.ts';
import { hoursByWeek } from '../../src/journal/ledger/over-time.ts';
import { reconcile } from '../../src/journal/ledger/reconcile.ts';
import type { Journal, Session } from '../../src/journal/model.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { dateOf, filesOf, type RawJournal } from '../arbitraries/raw-journal.ts';

const EVENING: RawJournal = {
  method: 'average',
  opening: { ml: 3000, pence: 999 },
  sessions: [
    {
      day: 0,
      hours: [{ by: 'jm', on: 'drum', minutes: 7, unpaid: false }],
      lines: [{ as: 'part', for: 'brakes', pence: 1234, tax: 20, onTop: true, refund: false }],
      sold: [],
      stock: { bought: [{ ml: 100, pence: 377 }], used: [{ on: 'studs', perMille: 31 }], countedPerMille: null },
    },
  ],
};

/** The evening over again, so many times, each on its own day. */
function longJournal(evenings: number): Journal {
  const { journal } = recordOf(filesOf(EVENING));
  const [first] = journal.sessions as [Session];
  const sessions = Array.from({ length: evenings }, (_, i): Session => ({ ...first, id: `${dateOf(i)}-x`, date: dateOf(i) }));
  return { ...journal, sessions };
}

/** The least processor time of five runs, in milliseconds: other work on the machine does not count. */
function milliseconds(work: () => unknown): number {
  const times = [0, 1, 2, 3, 4].map(() => {
    const start = process.cpuUsage();
    work();
    return process.cpuUsage(start).user / 1000;
  });
  return Math.min(...times);
}

test.each(['fifo', 'average'] as const)('5,000 evenings of 20,000 entries are booked by %s in linear time', (stock) => {
  const journal = longJournal(5000);
  const whole: Journal = { ...journal, settings: { ...journal.settings, stock } };
  const fifth: Journal = { ...whole, sessions: whole.sessions.slice(0, 1000) };
  expect(ledgerOf(whole).ledger.entries).toHaveLength(20_000);
  const [long, short] = [milliseconds(() => ledgerOf(whole)), milliseconds(() => ledgerOf(fifth))];
  // Five times the evenings take about five times as long; a square would take twenty-five times.
  expect(long).toBeLessThan(15 * short + 50);
  expect(long).toBeLessThan(600);
});

test('the views of 20,000 entries are there at once', () => {
  const journal = longJournal(5000);
  const books = { journal, ledger: ledgerOf(journal).ledger };
  const at = dateOf(4000);
  const time = milliseconds(() => [subsystemByMonth(books, 'cost', at), reconcile(books, at), budgets(books, at), hoursByWeek(books, at), costOfPosition(books, 'drum', at)]);
  expect(time).toBeLessThan(500);
});
