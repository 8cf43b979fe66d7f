import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { Attribution } from '../../../../src/journal/model.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { letterOf, sharesOverTime, subsystemShareLine, vehicleShareLine } from '../../../../src/site/views/register/originality-charts.ts';
import { originalityOverTime } from '../../../../src/site/views/register/originality-over-time.ts';
import { did, evening, part, placeAt, soundRecord } from '../../../builders/journal.ts';
import { keepsToThePages, pointsOfLine, readDrawing } from '../charts/drawing.ts';

// Ten places of weight 1 in all: five studs, a panel of 3, two drums that are no originals.
// The record is asked for as of the end of November: what is drawn ends there.
const OF = soundRecord(
  {
    parts: [
      part('studs', { count: 5 }),
      part('panel', { subsystem: 'frame', weight: new Fraction(3) }),
      part('drums', { count: 2, origin: 'earlier-replacement' }),
    ],
    evenings: [
      evening('2030-09-14', { parts: [did('studs', 'removed', { count: 1 })] }),
      evening('2030-10-10', { parts: [did('panel', 'removed')], reached: [{ milestone: 'stripped' }] }),
      evening('2030-11-20', { parts: [did('panel', 'fitted'), did('studs', 'fitted', { count: 1 })] }),
    ],
  },
  '2030-11-30',
);
const DAYS = sharesOverTime(OF);
const CHARTS = {
  page: vehicleShareLine(OF, DAYS, 760),
  phone: vehicleShareLine(OF, DAYS, 350),
  frame: subsystemShareLine(OF, DAYS, 'frame'),
};

describe.each(Object.entries(CHARTS))('the share over time, drawn for the %s', (_, svg) => keepsToThePages(svg));

test('worked by hand: 8 of 10 as found, 7 after the first evening, 4 with the panel off, 8 again with all back', () => {
  expect(
    DAYS.map(({ originality: { date, overall }, asFound, milestones }) => [date, overall.share?.toFraction(), asFound, milestones]),
  ).toEqual([
    ['2030-09-14', '4/5', true, []],
    ['2030-09-30', '7/10', false, []],
    ['2030-10-10', '2/5', false, ['stripped']],
    ['2030-10-31', '2/5', false, []],
    ['2030-11-30', '4/5', false, []],
  ]);
});

test('the line stands at its share of the height between 0 and 100 %, each day at its place in time', () => {
  const ticks = [...readDrawing(CHARTS.page).querySelectorAll('.grid line')].map((line) => Number(line.getAttribute('y1')));
  const [foot, top] = [Math.max(...ticks), Math.min(...ticks)];
  const points = pointsOfLine(CHARTS.page);
  expect(points.map(({ y }) => ((foot - y) / (foot - top)).toFixed(3))).toEqual(['0.800', '0.700', '0.400', '0.400', '0.800']);
  // 77 days from arrival to the end of November, across 760 less the margins, 52 and 24.
  expect(points.map(({ x }) => Math.round(((x - 52) / (760 - 52 - 24)) * 77))).toEqual([0, 16, 26, 47, 77]);
});

test('a subsystem has a line of its own', () => {
  const ys = pointsOfLine(CHARTS.frame).map(({ y }) => y);
  expect([ys[0] === ys[1], ys[2] === ys[3], ys[4] === ys[0], (ys[2] ?? 0) > (ys[0] ?? 0)]).toEqual([true, true, true, true]);
});

test('its words say where it began, where it was lowest and where it stands', () => {
  expect(readDrawing(CHARTS.page).querySelector('svg')?.getAttribute('aria-label')).toBe(
    'Originality share of the vehicle: 80% as found on 14 September 2030, lowest 40% on 10 October 2030, 80% on 30 November 2030.',
  );
});

test('a milestone is marked with its letter', () => {
  const words = [...readDrawing(CHARTS.page).querySelectorAll('text')].map((each) => each.textContent);
  expect(words.filter((each) => each === 'a')).toHaveLength(1);
  expect([0, 25, 26, 51, 52].map(letterOf)).toEqual(['a', 'z', 'aa', 'az', 'ba']);
});

test('nothing is drawn of what has no places, nor before any time has passed', () => {
  const bare = soundRecord({ parts: [part('tickets', { weight: new Fraction(0) })] });
  expect(vehicleShareLine(bare, sharesOverTime(bare), 760)).toBeNull();
  const fresh = soundRecord({ parts: [part('drum')] }, '2030-09-14');
  expect(vehicleShareLine(fresh, sharesOverTime(fresh), 760)).toBeNull();
});

test('what a part proved to be later leaves the share as found as it was believed then, and the drawing says so', () => {
  const parts = [part('axle'), part('wheel')];
  const proved: Attribution = {
    part: 'axle',
    origin: 'earlier-replacement',
    by: null,
    because: 'stamped later',
    paper: null,
    session: '2030-10-10-work',
    date: '2030-10-10',
    place: placeAt('sessions/2030-10-10-work.md'),
  };
  const told = (attributed: readonly Attribution[]) => {
    const record = soundRecord({ parts, evenings: [evening('2030-10-10', { attributed: [...attributed] })] }, '2030-11-30');
    const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'register.html');
    const shares = sharesOverTime(record).map(({ originality: { overall } }) => overall.share?.toFraction());
    return [shares.at(0), shares.at(-1), originalityOverTime(sheet)?.believedAnew];
  };
  expect([told([]), told([proved])]).toEqual([
    ['1', '1', false],
    ['1', '1/2', true],
  ]);
});
