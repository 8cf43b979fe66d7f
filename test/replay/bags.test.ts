import { describe, expect, test } from 'vitest';
import { replay } from '../../src/journal/replay/replay.ts';
import { codes, did, type Evening, evening, journal, part } from '../builders/journal.ts';

const parts = [part('cylinder'), part('bolts', { count: 4 })];
const faults = (...evenings: Evening[]): string[] => codes({ parts, evenings });
const filled = evening('2030-10-01', { bags: [14], parts: [did('bolts', 'removed', { count: 3, to: 'bag 14' })] });

describe('a bag', () => {
  test('is filled with part of a lot and emptied once all of it is fitted again', () => {
    const back = evening('2030-10-08', { emptied: [14], parts: [did('bolts', 'fitted', { from: 'bag 14' })] });
    expect(faults(filled, back)).toEqual([]);
    const { bags } = replay(journal({ parts, evenings: [filled, back] })).history;
    expect(bags.get(14)).toMatchObject({ filled: { date: '2030-10-01' }, emptied: { date: '2030-10-08' } });
  });

  test('that was emptied cannot be emptied again', () => {
    expect(faults(evening('2030-10-01', { bags: [2], emptied: [2] }), evening('2030-10-02', { emptied: [2] }))).toEqual(['A603']);
  });

  test('has a number that is used once, even after it was emptied', () => {
    expect(faults(evening('2030-10-01', { bags: [2], emptied: [2] }), evening('2030-10-02', { bags: [2] }))).toEqual(['A601']);
  });

  test('is not emptied before it is filled', () => {
    expect(faults(evening('2030-09-20', { emptied: [14] }), filled)).toEqual(['A602']);
  });

  test('takes parts in the note that fills it and in no other', () => {
    expect(faults(filled, evening('2030-10-02', { parts: [did('cylinder', 'removed', { to: 'bag 14' })] }))).toEqual(['A604']);
    expect(faults(evening('2030-09-20', { parts: [did('cylinder', 'removed', { to: 'bag 14' })] }), filled)).toEqual(['A604']);
  });

  test('that is emptied with parts unaccounted for leaves them in stores, unplaced, and says so', () => {
    const tipped = evening('2030-10-08', { emptied: [14], parts: [did('bolts', 'fitted', { from: 'bag 14', count: 1 })] });
    const { history, diagnostics } = replay(journal({ parts, evenings: [filled, tipped] }));
    expect(diagnostics.map(({ code, severity, related }) => [code, severity, related[0]?.place.file])).toEqual([
      ['A605', 'warning', 'sessions/2030-10-01-work.md'],
    ]);
    const now = history.stays
      .get('bolts')
      ?.filter(({ to }) => to === null)
      .map(({ count, where }) => [count, where]);
    expect(now).toContainEqual([2, { at: 'stores', store: null }]);
  });

  test('filled and emptied on one evening gives back what went in', () => {
    const once = evening('2030-10-01', {
      bags: [3],
      emptied: [3],
      parts: [did('bolts', 'removed', { to: 'bag 3' }), did('bolts', 'fitted')],
    });
    expect(faults(once)).toEqual([]);
  });
});
