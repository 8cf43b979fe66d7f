import { describe, expect, test } from 'vitest';
import { conditionInWords, conditionsAt } from '../../src/journal/registers/condition.ts';
import { deedCount } from '../../src/journal/registers/deed-count.ts';
import { deedsOf, whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { storesAt } from '../../src/journal/registers/stores.ts';
import { did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [part('wheels', { count: 4, condition: 1 }), part('drum'), part('shoes', { count: 4 })];
const recordOf = (...evenings: Evening[]) => soundRecord({ parts, evenings });

/** `fitted 3: 1`, a line a place. */
function conditions(id: string, ...evenings: Evening[]): string[] {
  const of = recordOf(...evenings);
  return whereaboutsAt(of, id, of.day).map((at) => {
    const words = conditionInWords(conditionsAt(of, id, at, of.day), at.count);
    return `${at.where.at} ${at.count}: ${words}`;
  });
}

describe('the condition of some of a lot is said of so many, and never of the others', () => {
  const cracked = evening(
    '2030-10-01',
    { parts: [did('wheels', ['removed', 'inspected'], { count: 1, to: 'loft', condition: 3 })] },
    'cracked',
  );

  test('one wheel cracked in the loft, three fitted as they were found', () => {
    expect(conditions('wheels', cracked)).toEqual(['fitted 3: 1', 'stores 1: 3']);
    expect(storesAt(recordOf(cracked), null).flatMap(({ things }) => things.map(({ condition }) => condition))).toEqual(['3']);
  });

  test('back on, nobody wrote which it is, and there are as many as were seen', () => {
    const back = evening('2030-10-09', { parts: [did('wheels', 'fitted', { count: 1 })] }, 'back');
    expect(conditions('wheels', cracked, back)).toEqual(['fitted 4: 3 (1 of 4), 1 (3 of 4)']);
  });

  test('mixed up with others, either may lie there', () => {
    const mixed = evening(
      '2030-10-09',
      { parts: [did('wheels', 'fitted', { count: 1 }), did('wheels', 'removed', { count: 2, to: 'shelf A1' })] },
      'mix',
    );
    expect(conditions('wheels', cracked, mixed)).toEqual(['fitted 2: 3 or 1', 'stores 2: 3 or 1']);
  });

  test('some seen in place, of the others nothing is known', () => {
    const seen = evening('2030-10-01', { parts: [did('shoes', 'inspected', { count: 1, condition: 2 })] });
    expect(conditions('shoes', seen)).toEqual(['fitted 4: 2 (1 of 4)']);
    const apart = evening('2030-10-02', { parts: [did('shoes', 'removed', { count: 2 })] }, 'apart');
    expect(conditions('shoes', seen, apart)).toEqual(['fitted 2: perhaps 2', 'stores 2: perhaps 2']);
  });

  test('a later look at all of them stands for all', () => {
    const all = evening('2030-10-09', { parts: [did('wheels', 'inspected', { condition: 2 })] }, 'all');
    expect(conditions('wheels', cracked, all)).toEqual(['fitted 3: 2', 'stores 1: 2']);
  });

  test('of a numbered lot each is as it was last seen, wherever it went since', () => {
    const lot = [part('wheels', { count: 4, condition: 1, numbered: 'front near first' })];
    const of = soundRecord({
      parts: lot,
      evenings: [
        evening('2030-10-01', { parts: [did('wheels', 'removed', { which: [2], to: 'loft', condition: 3 })] }, 'a'),
        evening('2030-10-02', { parts: [did('wheels', 'removed', { which: [3, 4], to: 'shelf A1' })] }, 'b'),
        evening('2030-10-03', { parts: [did('wheels', 'stored', { which: [2], to: 'shelf A1' })] }, 'c'),
      ],
    });
    const told = whereaboutsAt(of, 'wheels', of.day).map((at) => [
      at.where.at,
      at.which,
      conditionInWords(conditionsAt(of, 'wheels', at, of.day), at.count),
    ]);
    expect(told).toEqual([
      ['fitted', [1], '1'],
      ['stores', [2, 3, 4], '3 (1 of 3), 1 (2 of 3)'],
    ]);
  });

  test('a single part is as it was last seen', () => {
    const twice = [
      evening('2030-10-01', { parts: [did('drum', 'removed', { condition: 2, to: 'loft' })] }),
      evening('2030-10-05', { parts: [did('drum', 'repaired', { condition: 0 })] }),
    ];
    expect(conditions('drum')).toEqual(['fitted 1: null']);
    expect(conditions('drum', ...twice)).toEqual(['stores 1: 0']);
  });
});

test('what came off in two evenings and goes out together is told as all of it', () => {
  const of = recordOf(
    evening('2030-10-01', { parts: [did('shoes', 'removed', { count: 2, to: 'loft' })] }),
    evening('2030-10-05', { parts: [did('shoes', 'removed', { count: 2, to: 'loft' })] }),
    evening('2030-11-01', { parts: [did('shoes', ['sent-out'], { to: 'the brake works' })] }),
  );
  const out = deedsOf(of, 'shoes').filter((deed) => deed.did === 'sent-out');
  expect([out.length, deedCount(out)]).toEqual([2, 4]);
});
