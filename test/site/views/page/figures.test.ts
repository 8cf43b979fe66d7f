import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figuresOf } from '../../../../src/site/views/page/figures.ts';
import { journal } from '../../../ledger/small-journal.ts';

const figures = figuresOf(journal().record.journal.settings);

test('hours in a column add up as they are shown', () => {
  expect([6, 45, 60, 750, -90, 0, 123_456].map(figures.hours)).toEqual(['0:06', '0:45', '1:00', '12:30', '−1:30', '0:00', '2,057:36']);
  const minutesIn = (shown: string): number => {
    const [hours = '', minutes = ''] = shown.replaceAll(',', '').split(':');
    return Number(hours) * 60 + Number(minutes);
  };
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 5000 })), (all) => {
      const sum = all.reduce((so, one) => so + one, 0);
      expect(all.reduce((so, one) => so + minutesIn(figures.hours(one)), 0)).toBe(minutesIn(figures.hours(sum)));
    }),
  );
});
