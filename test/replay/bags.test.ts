import { describe, expect, test } from 'vitest';
import { bagsAt } from '../../src/journal/registers/bags.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { codes, did, type Evening, evening, journal, part, soundRecord } from '../builders/journal.ts';

const parts = [part('cylinder'), part('bolts', { count: 4 })];
const faults = (...evenings: Evening[]): string[] => codes({ parts, evenings });
const filled = evening('2030-10-01', { bags: [14], parts: [did('bolts', 'removed', { count: 3, to: 'bag 14' })] });

describe('a bag', () => {
  test('is filled with part of a lot and emptied once all of it is fitted again', () => {
    const back = evening('2030-10-08', { emptied: [14], parts: [did('bolts', 'fitted', { from: 'bag 14' })] });
    expect(faults(filled, back)).toEqual([]);
    const { bags } = replay(journal({ parts, evenings: [filled, back] })).history;
    expect(bags.get(14)?.fillings).toMatchObject([{ filled: { date: '2030-10-01' }, emptied: { date: '2030-10-08' } }]);
  });

  test('that was emptied cannot be emptied again', () => {
    expect(faults(evening('2030-10-01', { bags: [2], emptied: [2] }), evening('2030-10-02', { emptied: [2] }))).toEqual(['A603']);
  });

  test('that was emptied may be filled again, and one that is full may not', () => {
    expect(faults(evening('2030-10-01', { bags: [2], emptied: [2] }), evening('2030-10-02', { bags: [2] }))).toEqual([]);
    expect(faults(evening('2030-10-01', { bags: [2] }), evening('2030-10-02', { bags: [2] }))).toEqual(['A601']);
    expect(faults(evening('2030-10-01', { bags: [2, 2] }))).toEqual(['A601']);
  });

  test('that one note empties and fills again holds only what that note put into it', () => {
    const again = evening('2030-10-08', {
      emptied: [14],
      bags: [14],
      parts: [did('bolts', 'fitted', { from: 'bag 14' }), did('cylinder', 'removed', { to: 'bag 14' })],
    });
    expect(faults(filled, again)).toEqual([]);
    const { bags } = replay(journal({ parts, evenings: [filled, again] })).history;
    expect(bags.get(14)?.fillings.map(({ filled: { date }, emptied }) => [date, emptied?.date])).toEqual([
      ['2030-10-01', '2030-10-08'],
      ['2030-10-08', undefined],
    ]);
    const of = soundRecord({ parts, evenings: [filled, again] });
    const at = (date: string) => bagsAt(of, date).map((row) => [row.parts.map(({ part: id }) => id), row.earlier.length]);
    expect([at('2030-10-07'), at('2030-10-08')]).toEqual([[[['bolts'], 0]], [[['cylinder'], 1]]]);
  });

  test('that was full when the record began holds what the catalogue says, until it is emptied', () => {
    const kept = [...parts, part('springs', { found: 'loose', bag: 3, count: 2 })];
    const back = evening('2030-10-08', { emptied: [3], parts: [did('springs', 'fitted', { from: 'bag 3' })] });
    const of = soundRecord({ parts: kept, evenings: [back] });
    const before = bagsAt(of, '2030-10-07').map(({ bag, filling, filled: { session }, parts: inside }) => [
      bag,
      filling.holds,
      session,
      inside.length,
    ]);
    expect(before).toEqual([[3, ['springs'], null, 1]]);
    expect(bagsAt(of, null)[0]?.emptied?.date).toBe('2030-10-08');
  });

  test('says by `off` where what came off went, where its entry says no other place', () => {
    const inBag = evening('2030-10-01', { bags: [{ bag: 5, off: 'cylinder' }], parts: [did('cylinder', 'removed')] });
    expect(bagsAt(soundRecord({ parts, evenings: [inBag] }), null)[0]?.parts.map(({ part: id }) => id)).toEqual(['cylinder']);
    const elsewhere = evening('2030-10-01', { bags: [{ bag: 5, off: 'cylinder' }], parts: [did('cylinder', 'removed', { to: 'loft' })] });
    expect(bagsAt(soundRecord({ parts, evenings: [elsewhere] }), null)[0]?.parts).toEqual([]);
    expect(faults(evening('2030-10-01', { bags: [{ bag: 5, off: 'cylinder' }] }))).toEqual(['A618']);
  });

  test('is not emptied before it is filled', () => {
    expect(faults(evening('2030-09-20', { emptied: [14] }), filled)).toEqual(['A602']);
  });

  test('takes parts in the note that fills it and in no other', () => {
    expect(faults(filled, evening('2030-10-02', { parts: [did('cylinder', 'removed', { to: 'bag 14' })] }))).toEqual(['A604']);
    expect(faults(evening('2030-09-20', { parts: [did('cylinder', 'removed', { to: 'bag 14' })] }), filled)).toEqual(['A601']);
  });

  describe('that no note describes', () => {
    const opened = evening('2030-10-01', {
      parts: [did('bolts', 'removed', { count: 3, to: 'bag 14', goesBack: 'heads inboard' }), did('cylinder', 'removed', { to: 'bag 14' })],
    });

    test('is opened by what goes into it, and holds that', () => {
      const [row] = bagsAt(soundRecord({ parts, evenings: [opened] }), null);
      expect(row?.filling).toMatchObject({ bag: 14, holds: ['cylinder', '3 bolts'].sort(), off: null, goesBack: 'heads inboard' });
      const one = evening('2030-10-01', { parts: [did('bolts', 'removed', { count: 1, to: 'bag 14' })] });
      expect(bagsAt(soundRecord({ parts, evenings: [one] }), null)[0]?.filling.holds).toEqual(['1 bolts']);
      expect(row?.parts.map(({ part: id, count }) => [id, count]).sort()).toEqual([
        ['bolts', 3],
        ['cylinder', 1],
      ]);
    });

    test('is emptied, taken from and opened again like any other', () => {
      const fitted = [did('bolts', 'fitted', { from: 'bag 14' }), did('cylinder', 'fitted', { from: 'bag 14' })];
      const back = evening('2030-10-08', { emptied: [14], parts: fitted });
      const again = evening('2030-10-09', { parts: [did('cylinder', 'removed', { to: 'bag 14' })] });
      expect(faults(opened, back, again)).toEqual([]);
      expect(bagsAt(soundRecord({ parts, evenings: [opened, back, again] }), null)[0]?.filling.holds).toEqual(['cylinder']);
      const both = evening('2030-10-08', { emptied: [14], parts: [...fitted, did('cylinder', 'removed', { to: 'bag 14' })] });
      expect(faults(opened, both)).toEqual([]);
    });

    test('is full on the next evening: another bag may have been meant', () => {
      const more = evening('2030-10-02', { parts: [did('bolts', 'removed', { to: 'bag 14' })] });
      expect(faults(opened, more)).toEqual(['A604']);
      expect(faults(opened, evening('2030-10-02', { bags: [14] }))).toEqual(['A601']);
    });

    test('is not what a slip of the number makes of one that was emptied before it was filled', () => {
      expect(faults(evening('2030-09-20', { emptied: [14] }), opened)).toEqual(['A602']);
      expect(faults(opened, evening('2030-10-02', { parts: [did('bolts', 'fitted', { from: 'bag 41' })] }))).toEqual(['A606']);
    });
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
