import { describe, expect, test } from 'vitest';
import { seriesOf } from '../../../../src/journal/registers/measurements.ts';
import { readLimits } from '../../../../src/journal/values/limits.ts';
import { seriesChart } from '../../../../src/site/views/measurements/measurement-charts.ts';
import { evening, part, soundRecord } from '../../../builders/journal.ts';
import { measured } from '../../../builders/observed.ts';
import { keepsToThePages, readDrawing } from '../charts/drawing.ts';

type Reading = readonly [date: string, value: string, as?: 'found' | 'left'];

/** A reading as the compiler leaves it: its limits in their exact unit. */
function reading([, value, as = 'left']: Reading, limitsText: string | null) {
  const bare = measured('drum', 'inside diameter', value, { as });
  const limits = limitsText === null ? null : readLimits(limitsText, bare.value);
  return limits?.ok ? { ...bare, ...limits.value, limitsText, within: true } : bare;
}

function seriesFrom(limits: string | null, ...readings: Reading[]) {
  const evenings = readings.map((one, n) => evening(one[0], { measured: [reading(one, limits)] }, `note-${n}`));
  const of = soundRecord({ parts: [part('drum', { name: 'Brake drum' })], evenings });
  const [series] = seriesOf(of, 'drum');
  if (!series) throw new Error('nothing was measured');
  return [of, series] as const;
}

function chart(limits: string | null, ...readings: Reading[]): string | null {
  const [of, series] = seriesFrom(limits, ...readings);
  return seriesChart(of.journal.settings, 'Brake drum', series);
}

const THREE: Reading[] = [
  ['2030-10-01', '9.000 in', 'found'],
  ['2030-10-11', '9.040 in'],
  ['2030-10-21', '9.020 in'],
];
const BAND = chart('9.010..9.050 in', ...THREE);
/** Where a value stands, in px from the top: between the marks of 9.000 and 9.040 of the same drawing. */
const dots = (svg: string | null) =>
  [...readDrawing(svg).querySelectorAll('circle')].map(
    (each) => [Number(each.getAttribute('cx')), Number(each.getAttribute('cy'))] as const,
  );

describe('a series of one measurement, drawn', () => keepsToThePages(BAND));

test('values stand at their place in time and at their height', () => {
  // The one as found is drawn first, then those as left, by day.
  const [[x0, y0] = [0, 0], [x1, y1] = [0, 0], [x2, y2] = [0, 0]] = dots(BAND);
  expect([(x1 - x0) / (x2 - x0), (y0 - y2) / (y0 - y1)].map((share) => share.toFixed(4))).toEqual(['0.5000', '0.5000']);
});

test('the band reaches from the lower limit to the upper one, and a line stands at each', () => {
  const [[, y0] = [0, 0], [, y1] = [0, 0]] = dots(BAND);
  const perThou = (y0 - y1) / 40;
  const band = readDrawing(BAND).querySelector('.limit rect');
  const [top, height] = [Number(band?.getAttribute('y')), Number(band?.getAttribute('height'))];
  expect([(y0 - top) / perThou, height / perThou].map((thou) => thou.toFixed(2))).toEqual(['50.00', '40.00']);
  expect(readDrawing(BAND).querySelectorAll('.limit-line line')).toHaveLength(2);
});

test('a limit on one side only leaves the other open: the band goes to the edge of the drawing', () => {
  const [above, below] = [readDrawing(chart('9.010.. in', ...THREE)), readDrawing(chart('..9.010 in', ...THREE))];
  const edge = (of: Document, name: string) => Number(of.querySelector('.limit rect')?.getAttribute(name));
  expect(above.querySelectorAll('.limit-line line')).toHaveLength(1);
  expect(edge(above, 'y')).toBe(12);
  expect(edge(below, 'y') + edge(below, 'height')).toBe(130 - 28);
  expect(readDrawing(chart(null, ...THREE)).querySelector('.limit')).toBeNull();
});

test('as found is a dot, as left a ring', () => {
  const count = (name: string) => readDrawing(BAND).querySelectorAll(`.${name} circle`).length;
  expect([count('mark'), count('mark-left')]).toEqual([1, 2]);
});

// Source of the factor: UCUM, one inch is 25.4 mm.
test('values in other units of the same dimension are drawn to one scale', () => {
  const mixed = chart('228.854..229.87 mm', ['2030-10-01', '228.6 mm', 'found'], ['2030-10-11', '9.040 in'], ['2030-10-21', '9.020 in']);
  const rounded = (svg: string | null) => dots(svg).map((pair) => pair.map((n) => n.toFixed(6)));
  expect(rounded(mixed)).toEqual(rounded(BAND));
});

test('its words give every value with its day, and the limits', () => {
  expect(readDrawing(BAND).querySelector('svg')?.getAttribute('aria-label')).toBe(
    'Brake drum, inside diameter: 9.000 in as found on 1 October 2030, 9.040 in as left on 11 October 2030, ' +
      '9.020 in as left on 21 October 2030. Limits: 9.010 to 9.050 in; the last is within them.',
  );
});

test('a value that cannot be drawn to the scale of the others is left out, and fewer than three draw nothing', () => {
  const [of, series] = seriesFrom(null, ...THREE);
  const volts = { measurement: measured('drum', 'inside diameter', '6 V'), session: 's', date: '2030-10-05' };
  const draw = (from: number) =>
    seriesChart(of.journal.settings, 'Brake drum', { ...series, readings: [volts, ...series.readings.slice(from)] });
  expect(dots(draw(0))).toEqual(dots(chart(null, ...THREE)));
  expect([draw(1), chart(null, ...THREE.slice(1))]).toEqual([null, null]);
});

test('three values of one day are no series over time', () => {
  expect(chart(null, ['2030-10-01', '1 in'], ['2030-10-01', '2 in'], ['2030-10-01', '3 in'])).toBeNull();
});

test('the same value each time is a line in the middle', () => {
  const ys = dots(chart(null, ['2030-10-01', '0 in'], ['2030-10-02', '0 in'], ['2030-10-03', '0 in'])).map(([, y]) => y);
  expect(new Set(ys).size).toBe(1);
});
