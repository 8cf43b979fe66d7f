import { describe, expect, test } from 'vitest';
import { conditionInWords, conditionsAt } from '../../src/journal/registers/condition.ts';
import { mismatchesAt } from '../../src/journal/registers/mismatches.ts';
import { neverCarriedOut } from '../../src/journal/registers/pending.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { unrecordedAt } from '../../src/journal/registers/unrecorded.ts';
import { decide, did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [
  part('engine', { name: 'Engine' }),
  part('magneto', { inside: 'engine' }),
  part('magneto-new', { for: 'magneto', origin: 'new', store: 'loft' }),
  part('plugs', { inside: 'engine', count: 4 }),
  part('panel', { name: 'Panel' }),
  part('lettering', { inside: 'panel' }),
];
const recordOf = (...evenings: Evening[]) => soundRecord({ parts, evenings });
const at = (date: string, ...entries: Parameters<typeof did>[]) => evening(date, { parts: entries.map((entry) => did(...entry)) }, date);
const engineOff = at('2030-10-01', ['engine', 'removed', { to: 'shelf B2', marks: 'E 1' }]);
const row = (id: string, ...evenings: Evening[]) => registerRowAt(recordOf(...evenings), id, null);
const outcome = (id: string, ...evenings: Evening[]) => row(id, ...evenings).outcome.words;

describe('the register of what stands in a part that is off the vehicle', () => {
  test('says what it is in, and keeps what became of it', () => {
    const panelOff = at('2030-10-01', ['panel', 'removed', { to: 'loft' }]);
    expect(outcome('lettering')).toBe('untouched');
    expect(outcome('lettering', panelOff)).toBe('untouched, off with Panel');
    expect(outcome('lettering', panelOff, at('2030-10-02', ['lettering', 'conserved']))).toBe('kept, conserved, off with Panel');
    expect(row('lettering', panelOff)).toMatchObject({
      fitted: [],
      empty: 1,
      seated: [{ part: 'lettering', count: 1, carrier: 'panel' }],
      undecided: 0,
    });
  });

  test('replaced in the engine on the stand: the decision is carried out, the place on the vehicle is empty', () => {
    const verdict = evening('2030-10-02', { decisions: [decide('magneto', 'replace', { with: 'magneto-new' })] }, 'verdict');
    const swap = at('2030-10-03', ['magneto', 'removed', { to: 'loft' }], ['magneto-new', 'fitted']);
    expect(neverCarriedOut(recordOf(engineOff, verdict), null).map(({ words }) => words)).toEqual(['not yet replaced']);
    expect(neverCarriedOut(recordOf(engineOff, verdict, swap), null)).toEqual([]);
    expect(outcome('magneto', engineOff, verdict, swap)).toBe('replaced (new), off with Engine');
    const keep = evening('2030-10-04', { decisions: [decide('magneto', 'keep')] }, 'keep');
    const [found] = mismatchesAt(recordOf(engineOff, swap, keep), null);
    expect(found?.words).toBe('Decided: keep. But magneto-new (new) is fitted.');
  });

  test('of a lot in it, some may be out of it', () => {
    expect(outcome('plugs', engineOff, at('2030-10-02', ['plugs', 'removed', { count: 1 }]))).toBe(
      'undecided, 3 of 4 in place, off with Engine',
    );
  });

  test('is as it was when the whole is back', () => {
    const back = at('2030-11-01', ['engine', 'fitted']);
    expect(outcome('magneto', engineOff, back)).toBe('undecided');
    expect(outcome('lettering', at('2030-10-01', ['panel', ['removed', 'fitted'], {}]))).toBe('untouched');
  });
});

describe('what went on unrecorded', () => {
  const lists = (...evenings: Evening[]) => {
    const { offNow, backOn } = unrecordedAt(recordOf(...evenings), null);
    return [offNow, backOn].map((list) => list.map(({ part: id }) => id));
  };

  test('what goes into the engine on the stand has gone on, whether the engine is back or not', () => {
    const off = at('2030-10-02', ['magneto', 'removed', { to: 'loft' }]);
    const inside = at('2030-10-03', ['magneto', 'fitted']);
    const back = at('2030-10-04', ['engine', 'fitted']);
    expect(lists(engineOff, off)).toEqual([['magneto'], []]);
    expect(lists(engineOff, off, inside)).toEqual([[], ['magneto']]);
    expect(lists(engineOff, off, inside, back)).toEqual([[], ['magneto']]);
    expect(lists(engineOff, at('2030-10-02', ['magneto-new', 'stored', { to: 'shelf A1' }]), back)).toEqual([[], []]);
  });

  test('a new part fitted on the stand counts', () => {
    expect(lists(engineOff, at('2030-10-02', ['magneto', 'removed', { marks: 'none' }], ['magneto-new', 'fitted']))).toEqual([
      [],
      ['magneto-new'],
    ]);
  });
});

test('the condition of some of a lot is told where they are, in the whole or out of it', () => {
  const of = recordOf(engineOff, at('2030-10-02', ['plugs', 'removed', { count: 1, to: 'loft', condition: 3 }]));
  const told = whereaboutsAt(of, 'plugs', of.day).map((here) => [
    here.where.at,
    conditionInWords(conditionsAt(of, 'plugs', here, of.day), here.count),
  ]);
  expect(told).toEqual([
    ['in', null],
    ['stores', '3'],
  ]);
});
