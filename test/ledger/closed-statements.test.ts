/** Statements that were sent: nothing is charged twice, and what comes late is on the next. */
import { describe, expect, test } from 'vitest';
import { frozenStatement } from '../../src/exports/frozen-statement.ts';
import { clientAccount } from '../../src/journal/ledger/client-account.ts';
import { asSent, closedStatement, linesOf, statementOf } from '../../src/journal/ledger/statement.ts';
import { hours, journalWith, type NoteOf } from './small-journal.ts';

const MARCH: readonly NoteOf[] = [
  ['2031-03-12', `${hours('jm', '1h')}\nbought: [{ what: "Pin: 3/8, \\"long\\"", as: part, for: drum, cost: 12.00, tax: 20% }]`],
  ['2031-03-20', hours('jm', '2h30m')],
];
const received: NoteOf = ['2031-03-25', 'received: [{ from: the owner, amount: 60.00, for: deposit }]'];

/** The file of the statement that closes the notes up to a day. */
function closedAt(to: string, notes: readonly NoteOf[], before: readonly string[] = []): string {
  const { record } = journalWith({ statements: before }, ...notes);
  return frozenStatement(asSent(statementOf(record, '2030-09-14', to), before.length + 1, record), record.journal.settings);
}

describe('a closed statement', () => {
  const first = closedAt('2031-03-31', MARCH);

  test('is read back as it was sent', () => {
    const { record, problems, warnings } = journalWith({ statements: [first] }, ...MARCH);
    expect([problems, warnings]).toEqual([[], []]);
    const [frozen] = record.journal.statements;
    if (!frozen) throw new Error('no statement was read');
    const fresh = statementOf(journalWith({}, ...MARCH).record, '2030-09-14', '2031-03-31');
    const sent = closedStatement(frozen, record);
    expect([sent.number, sent.sum, sent.hours]).toEqual([1, fresh.sum, fresh.hours]);
    expect(sent.groups.flatMap(({ lines }) => lines)).toEqual(fresh.groups.flatMap(({ lines }) => lines));
  });

  test('leaves nothing to charge again', () => {
    const { record } = journalWith({ statements: [first] }, ...MARCH);
    expect(statementOf(record, '2030-09-14', '2031-03-31').groups).toEqual([]);
  });

  test('has what was told late of its time on the next one, and that once', () => {
    const late: NoteOf = ['2031-03-14', hours('jm', '30m')];
    const april: NoteOf = ['2031-04-10', hours('jm', '1h')];
    const notes = [...MARCH, late, april];
    const next = statementOf(journalWith({ statements: [first] }, ...notes).record, '2031-04-01', '2031-04-30');
    expect(next.groups.flatMap(({ lines }) => lines).map((line) => [line.date, line.charged, line.late])).toEqual([
      ['2031-03-14', 1400, true],
      ['2031-04-10', 3000, false],
    ]);
    const second = closedAt('2031-04-30', notes, [first]);
    const { record, problems } = journalWith({ statements: [first, second] }, ...notes);
    expect(problems).toEqual([]);
    expect(statementOf(record, '2030-09-14', '2031-04-30').groups).toEqual([]);
  });

  test('has money that came in of its time and was told late on the next one, once, and what came back of a purchase', () => {
    const early: NoteOf = ['2031-03-10', 'received: [{ from: the owner, amount: 60.00, for: deposit }]'];
    const late: NoteOf = [
      '2031-03-25',
      'received: [{ from: the owner, amount: 60.00 }]\nbought: [{ what: "Pin: 3/8, \\"long\\"", as: part, for: drum, cost: -6.00, tax: 20%, refund: wrong }]',
    ];
    const sent = closedAt('2031-03-31', [early, ...MARCH]);
    const notes = [early, ...MARCH, late];
    const next = statementOf(journalWith({ statements: [sent] }, ...notes).record, '2031-04-01', '2031-04-30');
    expect(next.received.map((one) => [one.date, one.for, one.amount, one.late])).toEqual([['2031-03-25', null, 6000, true]]);
    expect(linesOf(next).map(({ date, cost, late: told }) => [date, cost, told])).toEqual([['2031-03-25', -600, true]]);
    const second = closedAt('2031-04-30', notes, [sent]);
    const { record } = journalWith({ statements: [sent, second] }, ...notes);
    expect(statementOf(record, '2030-09-14', '2031-05-31').received).toEqual([]);
  });

  test('is sent though it was closed for longer than notes tell', () => {
    const { record } = journalWith({ statements: [first] }, ...MARCH);
    expect(record.day).toBe('2031-03-20');
    expect(clientAccount(record, record.day)).toMatchObject({ stated: 11_100, open: 0, owed: 11_100 });
  });

  test('knows its work again when another line is written before it', () => {
    const [one, two] = MARCH as [NoteOf, NoteOf];
    const more: NoteOf = [two[0], two[1].replace('[{', '[{ by: rh, on: frame, time: 10m }, {')];
    const { record, warnings } = journalWith({ statements: [first] }, one, more);
    expect(warnings).toEqual([]);
    expect(
      statementOf(record, '2030-09-14', '2031-03-31')
        .groups.flatMap(({ lines }) => lines)
        .map(({ person }) => person),
    ).toEqual(['rh']);
  });

  test('that the notes now contradict stands, and is told', () => {
    const [one, two] = MARCH as [NoteOf, NoteOf];
    const { warnings, record } = journalWith({ statements: [first] }, one, [two[0], two[1].replace('2h30m', '3h')]);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(/^A818 Statement 1 charged .*2 h 30 min, £70\.00.*3 h, £84\.00/);
    expect(statementOf(record, '2030-09-14', '2031-03-31').groups).toEqual([]);
    expect(journalWith({ statements: [first] }, one).warnings[0]).toMatch(/no longer tell of it/);
  });

  test('is not held against notes of which something was not understood: the fault alone is told', () => {
    const [one, two] = MARCH as [NoteOf, NoteOf];
    const { warnings, problems } = journalWith({ statements: [first] }, one, [two[0], two[1].replace('2h30m', 'all evening')]);
    expect(problems).toEqual([expect.stringMatching(/^A306/)]);
    expect(warnings).toEqual([]);
    // A part that is not where it should be leaves no line out.
    const lost = journalWith({ statements: [first] }, one, [
      two[0],
      `${two[1].replace('2h30m', '3h')}\nparts: [{ part: drum, did: fitted }]`,
    ]);
    expect(lost.problems).toEqual([expect.stringMatching(/^A503/)]);
    expect(lost.warnings).toEqual([expect.stringMatching(/^A818/)]);
  });

  describe('what it showed as not charged', () => {
    const unpaid: NoteOf = ['2031-03-21', hours('jm', '1h', 'brakes', ', unpaid: learning')];
    const sent = closedAt('2031-03-31', [...MARCH, unpaid]);
    const next = (...notes: readonly NoteOf[]) => {
      const { record, warnings } = journalWith({ statements: [sent] }, ...MARCH, ...notes);
      const { groups, notCharged } = statementOf(record, '2031-04-01', '2031-04-30');
      const lines = groups.flatMap(({ lines }) => lines).map(({ late, charged }) => [late, charged]);
      return { lines, notCharged: notCharged.map(({ minutes }) => minutes), warnings };
    };

    test('is not listed again, though another line is written before it', () => {
      const nothing = { lines: [], notCharged: [], warnings: [] };
      expect(next(unpaid)).toEqual(nothing);
      const more = unpaid[1].replace('[{', '[{ by: rh, on: frame, time: 10m, unpaid: tea }, {');
      expect(next([unpaid[0], more])).toEqual({ ...nothing, notCharged: [10] });
    });

    test('and is charged by a later word is late on the next, and told', () => {
      const { lines, warnings } = next([unpaid[0], hours('jm', '1h')]);
      expect(lines).toEqual([[true, 2800]]);
      expect(warnings).toHaveLength(1);
      expect(warnings[0]).toMatch(/^A818 Statement 1 did not charge ‘Work; not charged: learning’ .*, and the notes no longer say so/);
    });
  });

  test('is none yet on a day before its last', () => {
    const { record, warnings } = journalWith({ statements: [first], to: '2031-03-15' }, ...MARCH);
    expect([record.journal.statements, warnings]).toEqual([[], []]);
  });
});

describe('the account with the client', () => {
  const at = (day: string, statements: readonly string[] = [], ...more: readonly NoteOf[]) =>
    clientAccount(journalWith({ statements }, ...MARCH, ...more).record, day);

  test('tells what is owed and since when its statement is; of what is on none it tells no day', () => {
    // 28.00 and 13.00 (12.00, and 10 % of 10.00 net) on the 12th, 70.00 on the 20th.
    expect(at('2031-03-12')).toEqual({ stated: 0, open: 4100, received: 0, owed: 4100, since: null });
    expect(at('2031-03-31', [], received)).toEqual({ stated: 0, open: 11_100, received: 6000, owed: 5100, since: null });
    expect(at('2031-03-31', [closedAt('2031-03-31', MARCH)], received)).toEqual({
      stated: 11_100,
      open: 0,
      received: 6000,
      owed: 5100,
      since: '2031-03-31',
    });
  });

  test('on a day before a statement was closed, has what that charges as not yet sent', () => {
    expect(at('2031-03-12', [closedAt('2031-03-31', MARCH)], ['2031-04-02', hours('jm', '1h')])).toEqual(at('2031-03-12'));
  });

  test('is in hand where more came in than was charged', () => {
    expect(at('2031-03-31', [], ['2031-03-30', 'received: [{ from: the owner, amount: 200.00 }]'])).toMatchObject({
      owed: -8900,
      since: null,
    });
  });

  test('lowers no cost of the job', () => {
    const cost = (...more: readonly NoteOf[]) => journalWith({}, ...MARCH, ...more).record.ledger.entries.map(({ gross }) => gross);
    expect(cost(received)).toEqual(cost());
  });
});
