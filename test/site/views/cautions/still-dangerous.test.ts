import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { cautionsPage } from '../../../../src/site/views/cautions/cautions-page.ts';
import { stillDangerous } from '../../../../src/site/views/cautions/still-dangerous.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { did, type Evening, evening, part, soundRecord } from '../../../builders/journal.ts';

const parts = [
  part('shoes', { hazards: ['asbestos'], count: 4, numbered: '1 to 4' }),
  part('linings', { hazards: ['asbestos'], count: 4 }),
  part('panel', { hazards: ['lead-paint'] }),
];
const off = evening('2030-10-01', {
  parts: [did('shoes', 'removed', { to: 'loft' }), did('linings', 'removed', { count: 3, to: 'bag 4' })],
});
const sheetAfter = (...evenings: Evening[]) => {
  const of = soundRecord({ parts, evenings: [off, ...evenings] });
  return sheetOf({ ...of, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, PAGES.cautions);
};
const some = evening('2030-10-02', {
  parts: [
    did('shoes', 'repaired', { which: [1, 3], count: 2, how: 'made-safe' }),
    did('linings', 'cleaned', { count: 2, from: 'bag 4', how: 'made-safe' }),
  ],
});

test('of what some was made safe it is said how many may not be, and where', () => {
  const sheet = sheetAfter(some);
  expect(stillDangerous(sheet, 'shoes')).toBe('2 of 4, numbers 2 and 4: in stores: loft');
  expect(stillDangerous(sheet, 'linings')).toBe('1 of 4: on the vehicle: linings; 1 of 4: bag 4');
  expect([...cautionsPage(sheet).still.keys()]).toEqual(['shoes', 'linings']);
});

test('nothing more is said where all of it may be dangerous, or none', () => {
  const rest = evening('2030-10-03', { parts: [did('shoes', 'repaired', { which: [2, 4], count: 2, how: 'made-safe' })] });
  expect(['shoes', 'linings', 'panel'].map((id) => stillDangerous(sheetAfter(), id))).toEqual([null, null, null]);
  expect(stillDangerous(sheetAfter(some, rest), 'shoes')).toBeNull();
  expect(
    cautionsPage(sheetAfter(some, rest))
      .parts.get('asbestos')
      ?.map(({ id }) => id),
  ).toEqual(['linings']);
});
