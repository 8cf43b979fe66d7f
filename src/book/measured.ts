/** What was measured: each series with its limits, every reading with its day. */
import { type MeasurementSeries, measurementSeries } from '../journal/registers/measurements.ts';
import { limitWords } from '../site/views/page/limits.ts';
import { type BookSetting, mention } from './setting.ts';
import { words } from './typst-text.ts';

const within = (one: boolean | null): string => (one === null ? '' : one ? ', within limits' : ', outside limits');

/** '' where nothing was measured. */
export function measurements(setting: BookSetting): string {
  const rows = measurementSeries(setting.record).map((series) => rowOf(setting, series));
  if (rows.length === 0) return '';
  const opening = 'Every reading with its day, and the limits it was held against. What was taken as found and as left says so.';
  return `= Measurements\n\n${words(opening)}\n\n#record-table(columns: (1.2fr, 1fr, 1fr, 1.8fr), head: ([Part], [What], [Limits], [Readings]), ${rows.join(', ')})`;
}

function rowOf(setting: BookSetting, { part, what, readings }: MeasurementSeries): string {
  const { sheet } = setting;
  const limits = readings.findLast(({ measurement }) => measurement.limitsText !== null)?.measurement.limitsText ?? null;
  const lines = readings.map(({ measurement: { value, as, within: held, note }, date }) => {
    const taken = as === null ? '' : `, as ${as}`;
    return words(`${value.text}${taken}${within(held)}, ${sheet.figures.shortDate(date)}${note === null ? '' : `: ${note}`}`);
  });
  const cells = [
    `${mention(setting, part)}${words(sheet.partName(part))}`,
    words(what),
    words(limitWords(limits)),
    lines.join(' #linebreak() '),
  ];
  return cells.map((cell) => `[${cell}]`).join(', ');
}
