import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { originalityAsFound, originalityAt, originalitySeries } from '../../src/journal/registers/originality.ts';
import { did, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [
  part('panel', { weight: new Fraction(3) }),
  part('studs', { count: 5, weight: new Fraction('0.2') }),
  part('studs-new', { for: 'studs', origin: 'new', count: 5 }),
  part('tickets', { found: 'loose', weight: new Fraction(0) }),
  part('door', { origin: 'earlier-replacement', subsystem: 'frame' }),
  part('door-old', { for: 'door', origin: 'original', subsystem: 'frame', store: 'loft' }),
];
const work = evening('2030-10-10', {
  parts: [
    did('studs', 'removed', { count: 2 }),
    did('studs-new', 'fitted', { count: 2 }),
    did('door', 'removed'),
    did('door-old', 'fitted'),
  ],
});
const of = soundRecord({ parts, evenings: [work] });
const numbers = (at: string) => {
  const { overall } = originalityAt(of, at);
  return [overall.originals.toFraction(), overall.of.toFraction(), overall.share?.toFraction(), overall.fitted, overall.places];
};

describe('the originality share is weight × originals at home, of weight × places', () => {
  test('worked by hand: before, 3 + 5 × 0.2 = 4 of 3 + 1 + 1 = 5; after, 3 + 3 × 0.2 + 1 = 4.6 of 5', () => {
    expect(numbers('2030-10-09')).toEqual(['4', '5', '4/5', 6, 7]);
    expect(numbers('2030-10-10')).toEqual(['23/5', '5', '23/25', 5, 7]);
  });

  test('of a lot those that were missing as found are places without an original: 3 + 2 of 3 + 5', () => {
    const lots = [part('panel', { weight: new Fraction(3) }), part('trays', { count: 5, missing: 3 })];
    const { overall } = originalityAsFound(soundRecord({ parts: lots }));
    expect([overall.originals.toFraction(), overall.of.toFraction(), overall.fitted, overall.places]).toEqual(['5', '8', 3, 6]);
  });

  test('each subsystem has its own, and they add up', () => {
    const { bySubsystem } = originalityAt(of, null);
    expect([...bySubsystem].map(([id, { originals, of: all }]) => [id, originals.toFraction(), all.toFraction()])).toEqual([
      ['brakes', '18/5', '4'],
      ['frame', '1', '1'],
    ]);
  });

  test('an original at another position than its own does not count', () => {
    const swapped = evening('2030-10-10', { parts: [did('near', 'removed'), did('off', 'removed'), did('near', 'fitted', { at: 'off' })] });
    const pair = soundRecord({ parts: [part('near'), part('off')], evenings: [swapped] });
    expect(originalityAt(pair, null).overall.share?.toFraction()).toBe('0');
  });

  test('nothing to divide by is no share', () => {
    expect(originalityAt(soundRecord({ parts: [part('tickets', { weight: new Fraction(0) })] }), null).overall.share).toBeNull();
  });

  test('over time it begins with the state as found', () => {
    expect(originalityAsFound(of).overall.share?.toFraction()).toBe('4/5');
    expect(originalitySeries(of, ['2030-10-31', '2030-09-30']).map(({ date, overall }) => [date, overall.share?.toFraction()])).toEqual([
      ['2030-09-30', '4/5'],
      ['2030-10-31', '23/25'],
    ]);
  });
});
