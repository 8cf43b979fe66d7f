/** What a copy keeps stands in it as it stands in the whole: nothing that is left out changes a figure that is not. */
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { withheldTexts } from '../../src/journal/copy/withheld.ts';
import { ledgerOf } from '../../src/journal/ledger/ledger.ts';
import { openStatement } from '../../src/journal/ledger/statement.ts';
import { LEAVE_OUT, type LeaveOut } from '../../src/journal/model.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { Entry, JournalRecord } from '../../src/journal/record.ts';
import { registerAt } from '../../src/journal/registers/register.ts';
import { type Whereat, whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { toFinish } from '../../src/journal/registers/to-finish.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { loadJournal } from '../../src/load/load.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { filesOf, rawJournal } from '../arbitraries/raw-journal.ts';
import { journal as smallJournal } from './small-journal.ts';

/** The record without so much. */
function without(whole: JournalRecord, ...leaveOut: LeaveOut[]): JournalRecord {
  const copies = new Map([['copy', { leaveOut, maySay: [] }]]);
  const { journal } = whole;
  return copyOf({ ...whole, journal: { ...journal, settings: { ...journal.settings, copies } } }, 'copy');
}

const money = ({ net, tax, gross, standing, perHour }: Entry) => ({ net, tax, gross, standing, perHour });
const worked = ({ minutes }: Entry) => ({ minutes });

/** Entries by what a copy keeps of them. */
function entriesOf({ ledger }: JournalRecord, of: readonly ((entry: Entry) => object)[], some: (entry: Entry) => boolean = () => true) {
  return ledger.entries.filter(some).map((entry) => {
    const { id, date, session, subsystem, part, kind, paid, cost } = entry;
    return Object.assign({ id, date, session, subsystem, part, kind, paid, cost }, ...of.map((one) => one(entry)));
  });
}

/** What is told of every place, whatever is left out of how it came to be so. */
const outcomesOf = (record: JournalRecord) => registerAt(record, null).map(({ position, outcome }) => [position, outcome]);

/** Where so many of each part are, at the end of each day with a note: which position, bag or other thing, and not which store or firm. */
const placesOf = (record: JournalRecord) => {
  const days = [...new Set(record.journal.sessions.map(({ date }) => date))];
  return [...record.journal.parts.keys()].map((part) => [part, days.map((day) => placesOn(whereaboutsAt(record, part, day)))]);
};

function placesOn(places: readonly Whereat[]): readonly string[] {
  const together = Map.groupBy(places, placeOf);
  return [...together].map(([place, some]) => `${some.reduce((sum, { count }) => sum + count, 0)} ${place}`).sort();
}

function placeOf({ where }: Whereat): string {
  if (where.at === 'fitted') return `at ${where.position}`;
  if (where.at === 'in') return `in ${where.part}`;
  return where.at === 'bag' ? `in bag ${where.bag}` : where.at;
}

function holds(whole: JournalRecord): void {
  const places = placesOf(whole);
  for (const kind of LEAVE_OUT) {
    const copy = without(whole, kind);
    expect(outcomesOf(copy), kind).toEqual(outcomesOf(whole));
    expect(placesOf(copy), kind).toEqual(places);
    if (kind === 'hours') expect(entriesOf(copy, [money])).toEqual(entriesOf(whole, [money], (entry) => entry.kind !== 'labour'));
    else if (kind === 'money') {
      const isLabour = (entry: Entry): boolean => entry.kind === 'labour';
      expect(entriesOf(copy, [worked], isLabour)).toEqual(entriesOf(whole, [worked], isLabour));
      for (const { net, tax, gross, perHour } of copy.ledger.entries) expect([net, tax, gross, perHour ?? 0]).toEqual([0, 0, 0, 0]);
    } else {
      expect(entriesOf(copy, [money, worked]), kind).toEqual(entriesOf(whole, [money, worked]));
      const [own, all] = [copy, whole].map((record) => openStatement(record, record.day));
      expect([own?.sum, own?.taxes], kind).toEqual([all?.sum, all?.taxes]);
    }
  }
}

const { record: DEMO } = compileJournal(loadJournal(fileURLToPath(new URL('../../content', import.meta.url))), { today: '2026-11-26' });
if (DEMO === null) throw new Error('the demo does not compile');

test('what the program calls labour is no secret of a copy without hours, though a statement that was sent says it', () => {
  expect(DEMO.journal.statements.length).toBeGreaterThan(0);
  const withheld = withheldTexts(DEMO, without(DEMO, 'hours')).map(({ text }) => text);
  expect(withheld).toContain('Work, 14:40–16:10');
  expect(withheld).not.toContain('Work');
});

test('a copy without money says of a refund that it is one: without its sum it would read as bought once more', () => {
  const { record, problems } = smallJournal(
    ['2031-03-02', 'bought: [{ what: Cylinder, for: drum, cost: 48.60 }]'],
    ['2031-03-05', 'bought: [{ what: Cylinder, for: drum, cost: -48.60, refund: wrong bore }]'],
  );
  expect(problems).toEqual([]);
  expect(without(record, 'money').ledger.entries.map(({ what }) => what)).toEqual(['Cylinder', 'Cylinder, refund']);
  expect(record.ledger.entries.map(({ what }) => what)).toEqual(['Cylinder', 'Cylinder']);
});

test('what the head of a statement calls its lines is no secret, nor is a time in a clip sure to be one', () => {
  const withheld = (...kinds: LeaveOut[]) => withheldTexts(DEMO, without(DEMO, ...kinds));
  for (const kinds of [['money'], ['people']] as const) {
    const texts = withheld(...kinds).map(({ text }) => text);
    for (const word of ['Terms', 'Reference', 'Tax number', 'To pay by']) expect(texts).not.toContain(word);
  }
  expect(withheld('film').filter(({ text }) => /^\d+:\d+$/.test(text))).not.toContainEqual(expect.not.objectContaining({ as: 'number' }));
  expect(withheld('film').map(({ text }) => text)).toContain('12:40');
});

test('a copy without names takes no bill of one firm for the work that another quoted, and no quote for a later word of another', () => {
  const bill = (cost: string, from: string) =>
    `bought: [{ what: Skimmed, as: outside-work, for: drum-spare, cost: ${cost}, from: ${from} }]`;
  const { record, problems } = smallJournal(
    ['2031-03-01', 'parts: [{ part: drum-spare, did: sent-out, to: A Plater, work: Skim, quoted: 100.00 }]'],
    ['2031-03-02', 'opens: [{ id: ring, kind: waiting, what: Ring, from: A Turner, on: drum-spare, price: 40.00 }]'],
    ['2031-03-03', bill('30.00', 'A Welder')],
    ['2031-03-04', bill('15.00', 'a turner')],
    ['2031-03-05', 'opens: [{ id: polish, kind: waiting, what: Polished too, on: drum-spare, price: 20.00 }]'],
  );
  expect(problems).toEqual([]);
  const ahead = (of: JournalRecord) => toFinish(of, null).map(({ quoted, willHaveCost }) => [quoted.sum, willHaveCost]);
  expect(ahead(record)).toEqual([[4500, 9000]]);
  expect(ahead(without(record, 'people'))).toEqual(ahead(record));
});

test('a statement without names still says for which vehicle it was, and what was agreed', () => {
  const heads = without(DEMO, 'people').journal.statements.map(({ sentWith }) => sentWith?.head?.map(({ name }) => name));
  expect(heads).toContainEqual(['For', 'Terms']);
});

describe('a copy has the figures of the whole, but for those that it leaves out', () => {
  test('of generated journals', () => {
    fc.assert(
      fc.property(rawJournal(8), (raw) => holds(recordOf(filesOf(raw)))),
      { numRuns: 30 },
    );
  });

  test('of the demo', () => holds(DEMO));

  test('without people and money nothing of what an hour cost is left in it', () => {
    const files = filesOf({
      method: 'fifo',
      opening: { ml: 1, pence: 0 },
      sessions: [
        {
          day: 1,
          hours: [{ by: 'jm', on: 'drum', minutes: 60, unpaid: false }],
          lines: [],
          sold: [],
          stock: { bought: [], used: [], countedPerMille: null },
        },
      ],
    });
    expect(JSON.stringify(without(recordOf(files), 'people').journal.sessions)).toContain('2800');
    for (const both of [without(recordOf(files), 'people', 'money'), without(recordOf(files), 'money')])
      expect(JSON.stringify([both.journal.sessions, [...both.journal.people.values()]])).not.toMatch(/2800|3055/);
  });
});

/** What is said under `private`, wherever it hangs. */
function privateIn(thing: unknown, seen = new Set<unknown>()): unknown[] {
  if (typeof thing !== 'object' || thing === null || seen.has(thing)) return [];
  seen.add(thing);
  const held = thing instanceof Map || thing instanceof Set ? [...thing.values()] : Object.values(thing);
  const own = 'private' in thing && thing.private !== null ? [thing.private] : [];
  return [...own, ...held.flatMap((one) => privateIn(one, seen))];
}

test('nothing follows from what is private: a copy without it knows what the whole knows, and none of it', () => {
  const demo = compileJournal(loadJournal(fileURLToPath(new URL('../../content', import.meta.url))), { today: '2035-12-31' }).record;
  for (const whole of [demo, ...fc.sample(rawJournal(8), { numRuns: 20, seed: 8 }).map((raw) => recordOf(filesOf(raw)))]) {
    if (whole === null) continue;
    const copy = without(whole, 'private');
    const { journal, history, ledger } = copy;
    expect(privateIn(copy)).toEqual([]);
    expect(history).toEqual(replay(journal).history);
    expect(ledger).toEqual(ledgerOf(journal, new Set(journal.consumables.keys())).ledger);
  }
});
