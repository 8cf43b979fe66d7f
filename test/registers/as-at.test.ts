import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openItemsCsv } from '../../src/exports/open-items.ts';
import { registerCsv } from '../../src/exports/register.ts';
import { whereaboutsCsv } from '../../src/exports/whereabouts.ts';
import { UK_EIGHT_POINTS } from '../../src/journal/model/identity-tables/uk-eight-points.ts';
import type { IsoDate, Journal } from '../../src/journal/model.ts';
import { compileJournal, nothingMade } from '../../src/journal/pipeline.ts';
import type { Sources } from '../../src/journal/read/source/sources.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { bagsAt } from '../../src/journal/registers/bags.ts';
import { changesBetween } from '../../src/journal/registers/changes.ts';
import { identityAt } from '../../src/journal/registers/identity.ts';
import { gatesAt, itemsAt } from '../../src/journal/registers/open-items.ts';
import { originalityAt, originalitySeries } from '../../src/journal/registers/originality.ts';
import { neverCarriedOut, undecidedAt } from '../../src/journal/registers/pending.ts';
import { registerAt } from '../../src/journal/registers/register.ts';
import { goneAt, missingAt, offVehicleAt, outAt, storesAt } from '../../src/journal/registers/stores.ts';
import { unrecordedAt } from '../../src/journal/registers/unrecorded.ts';
import { viewDates } from '../../src/journal/registers/view-dates.ts';
import { loadJournal } from '../../src/load/load.ts';
import { workshopFiles, workshops } from '../arbitraries/workshop.ts';
import { did, evening, journalUpTo, part, record, soundRecord } from '../builders/journal.ts';
import { asText } from '../builders/observed.ts';
import { days, journals } from '../builders/streams.ts';

const DEMO = loadJournal(fileURLToPath(new URL('../../content', import.meta.url)));
/** Each note is read once; what is compared follows from what was read. */
const READ = nothingMade();

/** The demo, from all of its catalogue and the notes up to a day. */
function demo(to: IsoDate | null = null): JournalRecord {
  const { record: made } = compileJournal(DEMO, { today: '2026-11-26', to, before: READ });
  if (made === null) throw new Error('the demo does not compile');
  return made;
}

function sourcesOf(files: Readonly<Record<string, string>>): Sources {
  const encoder = new TextEncoder();
  return { files: Object.entries(files).map(([path, text]) => ({ path, bytes: encoder.encode(text) })), assets: [], problems: [] };
}

/** Every register there is, as it stood at the end of a day. */
function everything(of: JournalRecord, at: IsoDate | null): Record<string, unknown> {
  return {
    register: registerAt(of, at),
    stores: storesAt(of, at),
    off: offVehicleAt(of, at),
    out: outAt(of, at),
    gone: goneAt(of, at),
    missing: missingAt(of, at),
    bags: bagsAt(of, at),
    items: itemsAt(of, at),
    gates: gatesAt(of, at),
    originality: originalityAt(of, at),
    pending: neverCarriedOut(of, at),
    undecided: undecidedAt(of, at),
    unrecorded: unrecordedAt(of, at),
    identity: identityAt(of, UK_EIGHT_POINTS, at),
    files: [registerCsv(of, at), whereaboutsCsv(of, at), openItemsCsv(of, at)],
  };
}

describe('as at a past day', () => {
  test('every register equals the one made from only the notes up to that day, byte for byte', () => {
    fc.assert(
      fc.property(journals, days, (of: Journal, date) => {
        const past = everything(record(of), date);
        const then = everything(record(journalUpTo(of, date), { day: date }), null);
        for (const name of Object.keys(past)) expect(asText(past[name]), name).toBe(asText(then[name]));
      }),
      { numRuns: 300 },
    );
  });

  test('on every date of the demo too', () => {
    const whole = demo();
    const dates = [...new Set(whole.journal.sessions.map(({ date }) => date))];
    expect(dates.length).toBeGreaterThan(50);
    for (const date of dates) {
      const past = everything(whole, date);
      const then = everything(demo(date), null);
      for (const name of Object.keys(past)) expect(asText(past[name]), `${name} on ${date}`).toBe(asText(then[name]));
    }
  });

  test('on every date of generated journals with parts in parts, bags filled again and parts that were only considered', () => {
    for (const of of fc.sample(workshops(16), { numRuns: 12, seed: 5 })) {
      const sources = sourcesOf(workshopFiles(of));
      const at = (to: IsoDate | null) => compileJournal(sources, { today: '2035-12-31', to, before: READ }).record as JournalRecord;
      const whole = at(null);
      for (const { date } of of.notes) {
        const past = everything(whole, date);
        const then = everything(at(date), null);
        for (const name of Object.keys(past)) expect(asText(past[name]), `${name} on ${date}`).toBe(asText(then[name]));
      }
    }
  });

  test('a lot that was parted later was whole before', () => {
    const off = evening('2030-10-10', { parts: [did('studs', 'removed', { count: 2 })] });
    const of = soundRecord({ parts: [part('studs', { count: 5 })], evenings: [off] });
    expect(registerAt(of, '2030-10-09')[0]?.fitted.map(({ count }) => count)).toEqual([5]);
  });

  test('the day itself counts: its sessions have happened by its end', () => {
    const of = soundRecord({
      parts: [part('drum')],
      evenings: [evening('2030-10-10', { parts: [did('drum', 'removed', { to: 'loft' })] })],
    });
    const on = (date: string) => [registerAt(of, date)[0]?.outcome.words, storesAt(of, date).flatMap(({ things }) => things).length];
    expect([on('2030-10-09'), on('2030-10-10'), on('2030-10-09')]).toEqual([
      ['untouched', 0],
      ['off for now', 1],
      ['untouched', 0],
    ]);
  });

  test('asking for several days in any order gives the same rows', () => {
    fc.assert(
      fc.property(journals, fc.array(days, { minLength: 1, maxLength: 6 }), (of, dates) => {
        const one = record(of);
        const mixed = dates.map((date) => asText(registerAt(one, date)));
        expect(mixed).toEqual(dates.map((date) => asText(registerAt(record(of), date))));
      }),
      { numRuns: 100 },
    );
  });

  test('a row that did not change between two days is the same row', () => {
    const of = soundRecord({
      parts: [part('drum'), part('plate')],
      evenings: [evening('2030-10-10', { parts: [did('drum', 'removed')] })],
    });
    const [before, after] = [registerAt(of, '2030-10-01'), registerAt(of, '2030-11-01')];
    expect([before[0] === after[0], before[1] === after[1]]).toEqual([false, true]);
  });

  test('the series of shares gives at each day what that day gives alone', () => {
    fc.assert(
      fc.property(journals, fc.array(days, { minLength: 1, maxLength: 8 }), (of, dates) => {
        const one = record(of);
        const sorted = [...dates].sort();
        expect(asText(originalitySeries(one, dates))).toBe(asText(sorted.map((date) => originalityAt(one, date))));
      }),
      { numRuns: 100 },
    );
  });
});

describe('the days that have a view', () => {
  const parts = [part('drum')];
  const reach = (date: string, ...milestones: string[]) => evening(date, { reached: milestones.map((milestone) => ({ milestone })) });

  test('are the ends of months that are over, and the days of milestones, each once', () => {
    const of = soundRecord({ parts, evenings: [reach('2030-10-31', 'stripped'), reach('2030-11-12', 'first-start')] }, '2030-12-15');
    expect(viewDates(of).map(({ date, monthEnd, milestones }) => [date, monthEnd, milestones.map(({ id }) => id)])).toEqual([
      ['2030-09-30', true, []],
      ['2030-10-31', true, ['stripped']],
      ['2030-11-12', false, ['first-start']],
      ['2030-11-30', true, []],
    ]);
  });

  test('a leap February ends on the 29th', () => {
    const of = soundRecord({ parts, evenings: [evening('2032-02-10')] }, '2032-03-05');
    expect(viewDates(of).map(({ date }) => date)).toContain('2032-02-29');
  });

  test('a month in which nothing happened has none: it ended as the one before', () => {
    const late = [part('drum'), part('drum-new', { for: 'drum', acquired: '2031-02-03' })];
    const of = soundRecord({ parts: late, evenings: [evening('2030-12-24'), evening('2031-04-01')] }, '2031-05-05');
    expect(viewDates(of).map(({ date }) => date)).toEqual(['2030-09-30', '2030-12-31', '2031-02-28', '2031-04-30']);
  });
});

describe('what changed between two days', () => {
  const parts = [part('drum'), part('drum-spare', { for: 'drum', store: 'loft' }), part('plate')];
  const of = soundRecord({
    parts,
    evenings: [
      evening('2030-10-10', { bags: [1], opens: [{ id: 'bleed' }], parts: [did('plate', 'removed', { to: 'bag 1' })] }),
      evening('2030-11-10', {
        emptied: [1],
        closes: ['bleed'],
        parts: [did('plate', 'fitted'), did('drum', 'removed', { to: 'shelf A1' }), did('drum-spare', 'fitted')],
      }),
    ],
  });

  test('names positions, moves, items and bags of that time and no other', () => {
    const changes = changesBetween(of, '2030-10-31', '2030-11-30');
    expect(changes.positions.map(({ before, after }) => [before.position, before.outcome.words, after.outcome.words])).toEqual([
      ['drum', 'undecided', 'replaced (donor)'],
      ['plate', 'off for now', 'undecided'],
    ]);
    expect(changes.moved.map(({ part: id }) => id)).toEqual(['drum', 'drum-spare', 'plate']);
    expect([changes.opened, changes.closed, changes.bagsFilled, changes.bagsEmptied].map((list) => list.length)).toEqual([0, 1, 0, 1]);
  });

  test('a part that went and came back in between has not moved', () => {
    expect(changesBetween(of, '2030-09-30', '2030-11-30').moved.map(({ part: id }) => id)).toEqual(['drum', 'drum-spare']);
  });
});
