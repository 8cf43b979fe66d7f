/** A series of one measurement over time, drawn small: its values against its limits. */
import { dot, lineY, rect, ruleY } from '@observablehq/plot';
import type { IsoDate, Measurement, Quantity, Settings } from '../../../journal/model.ts';
import type { MeasurementSeries } from '../../../journal/registers/measurements.ts';
import { convertTo } from '../../../journal/values/quantity.ts';
import { axes, dayOf, drawn, frame, SMALL_WIDTH } from '../charts/plotted.ts';
import { type Figures, figuresOf } from '../page/figures.ts';
import { limitWords } from '../page/limits.ts';

/** Fewer values than this are read in the table as fast. */
const LEAST_VALUES = 3;

interface Point {
  readonly date: IsoDate;
  readonly day: Date;
  readonly value: number;
  readonly measurement: Measurement;
}

/** What of a series can be drawn: values and limits in the unit of the last reading. */
interface Plottable {
  readonly points: readonly Point[];
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * A series as a line over its days, a dot for a value as found and a ring for one as left, a band for what the
 * limits last written down allow.
 *
 * @param name of the part, for the words of the drawing
 * @returns null for fewer than three values that can be drawn, or when all are of one day
 */
export function seriesChart(settings: Settings, name: string, series: MeasurementSeries): string | null {
  const figures = figuresOf(settings);
  const { points, low, high } = plottable(series);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < LEAST_VALUES || first.date === last.date) return null;
  const [bottom, top] = padded([...points.map(({ value }) => value), ...(low === null ? [] : [low]), ...(high === null ? [] : [high])]);
  const asLeft = ({ measurement }: Point): boolean => measurement.as === 'left';
  return drawn(wordsOf(figures, name, series, points), {
    ...frame(SMALL_WIDTH),
    x: { type: 'utc', domain: [first.day, last.day] },
    y: { domain: [bottom, top] },
    marks: [
      ...(low === null && high === null ? [] : [rect([0], { y1: low ?? bottom, y2: high ?? top, className: 'limit' })]),
      ...axes(figures, first.date, last.date, SMALL_WIDTH, { foot: bottom, ticks: 4, written: figures.plain }),
      ruleY(
        [low, high].filter((limit) => limit !== null),
        { className: 'limit-line' },
      ),
      lineY(points, { x: 'day', y: 'value', className: 'thread' }),
      dot(
        points.filter((point) => !asLeft(point)),
        { x: 'day', y: 'value', r: 3.5, className: 'mark' },
      ),
      dot(points.filter(asLeft), { x: 'day', y: 'value', r: 3.5, className: 'mark-left' }),
    ],
  });
}

/** Values that do not convert into the last one's unit, or are too large for a number, are left out. */
function plottable({ readings }: MeasurementSeries): Plottable {
  const unit = readings.at(-1)?.measurement.value.unit ?? '';
  const number = (quantity: Quantity | null | undefined): number | null => {
    const converted = quantity ? convertTo(quantity, unit) : null;
    const value = converted?.ok ? converted.value.valueOf() : Number.NaN;
    return Number.isFinite(value) ? value : null;
  };
  const points = readings.flatMap(({ measurement, date }) => {
    const value = number(measurement.value);
    return value === null ? [] : [{ date, day: dayOf(date), value, measurement }];
  });
  const limited = readings.findLast(({ measurement }) => measurement.limitsText !== null)?.measurement;
  return { points, low: number(limited?.low), high: number(limited?.high) };
}

/** The least and the most, with a little room; some room even where all are the same. */
function padded(values: readonly number[]): readonly [number, number] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = (most - least) * 0.08 || Math.abs(most) * 0.05 || 1;
  return [least - room, most + room];
}

function wordsOf(figures: Figures, name: string, { what, within, readings }: MeasurementSeries, points: readonly Point[]): string {
  const values = points.map(
    ({ date, measurement: { value, as } }) => `${value.text}${as === null ? '' : ` as ${as}`} on ${figures.date(date)}`,
  );
  const limits = readings.findLast(({ measurement }) => measurement.limitsText !== null)?.measurement.limitsText;
  const verdict = within === null ? '' : within ? '; the last is within them' : '; the last is outside them';
  return `${name}, ${what}: ${values.join(', ')}${limits ? `. Limits: ${limitWords(limits)}${verdict}` : ''}.`;
}
