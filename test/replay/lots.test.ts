import { describe, expect, test } from 'vitest';
import { decisionsInForce } from '../../src/journal/registers/decisions-in-force.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { whereInWords } from '../../src/journal/replay/words.ts';
import { codes, decide, did, type Evening, evening, journal, part } from '../builders/journal.ts';

const parts = [part('wheels', { count: 4, numbered: 'I to IIII, front to back' }), part('studs', { count: 5 })];
const at = (date: string, ...entries: Parameters<typeof did>[]) => evening(date, { parts: entries.map((entry) => did(...entry)) });
const now = (...evenings: Evening[]) =>
  (replay(journal({ parts, evenings })).history.stays.get('wheels') ?? [])
    .filter(({ to }) => to === null)
    .map(({ which, where }) => `${which?.join()} ${whereInWords(where)}`);
const faults = (...evenings: Evening[]) => codes({ parts, evenings });
const off = at('2030-10-01', ['wheels', 'removed', { which: [2, 4], count: 2, to: 'loft' }]);

describe('a lot whose parts can be told apart', () => {
  test('moves one by one, and every piece is somewhere', () => {
    expect(now(off)).toEqual(['1,3 fitted at wheels', '2,4 in stores, loft']);
    const one = at('2030-10-02', ['wheels', 'gone', { which: [4], count: 1, how: 'scrapped' }]);
    expect(now(off, one)).toEqual(['1,3 fitted at wheels', '2 in stores, loft', '4 gone (scrapped)']);
  });

  test('is understood by a bare count where that leaves no choice', () => {
    expect(faults(off, at('2030-10-02', ['wheels', 'fitted', { count: 2 }]))).toEqual([]);
    expect(faults(off, at('2030-10-02', ['wheels', 'fitted']))).toEqual([]);
    expect(faults(at('2030-10-01', ['wheels', 'removed', { count: 2 }]))).toEqual(['A517']);
  });

  test('has each piece once: one that is off cannot come off', () => {
    const again = at('2030-10-02', ['wheels', 'removed', { which: [2, 3], count: 2, to: 'loft' }]);
    expect(faults(off, again)).toEqual(['A504']);
    expect(now(off, again)).toEqual(['1 fitted at wheels', '2,4 in stores, loft', '3 in stores, loft']);
  });

  test('keeps its pieces through the words of one entry', () => {
    expect(now(at('2030-10-01', ['wheels', ['removed', 'cleaned', 'fitted'], { which: [3], count: 1 }]))).toEqual([
      '1,2,4 fitted at wheels',
      '3 fitted at wheels',
    ]);
  });

  test('is worked on piece by piece', () => {
    const { deeds } = replay(journal({ parts, evenings: [at('2030-10-01', ['wheels', 'repaired', { which: [3], count: 1 }])] })).history;
    expect(deeds.map(({ did: word, which, count }) => [word, which, count])).toEqual([['repaired', [3], 1]]);
  });
});

describe('decisions on a numbered lot', () => {
  const on = (date: string, ...decisions: ReturnType<typeof decide>[]) => evening(date, { decisions });
  const inForce = (...evenings: Evening[]) =>
    decisionsInForce(replay(journal({ parts, evenings })).history.decisions.get('wheels') ?? [], 4, '2031-12-31').map(
      ({ decision, which, count }) => [decision.verdict, which?.join() ?? count],
    );

  test('are about those that they name: a later one takes only its own from an earlier one', () => {
    const first = on('2030-10-01', decide('wheels', 'keep'));
    const second = on('2030-10-02', decide('wheels', 'repair', { which: [2, 4], count: 2 }));
    const third = on('2030-10-03', decide('wheels', 'repair', { which: [3], count: 1 }));
    const fourth = on('2030-10-04', decide('wheels', 'replace', { which: [4], count: 1 }));
    expect(inForce(first, second, third, fourth)).toEqual([
      ['replace', '4'],
      ['repair', '3'],
      ['repair', '2'],
      ['keep', '1'],
    ]);
  });

  test('say which where a count leaves a choice', () => {
    expect(faults(on('2030-10-01', decide('wheels', 'repair', { count: 2 })))).toEqual(['A517']);
  });
});

test('a lot that is not numbered is only counted', () => {
  const { stays } = replay(journal({ parts, evenings: [at('2030-10-01', ['studs', 'removed', { count: 2 }])] })).history;
  expect(stays.get('studs')?.map(({ which }) => which)).toEqual([null, null, null]);
});
