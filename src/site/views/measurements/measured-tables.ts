/** What was measured: one evening's readings one a line, and series with every reading. */
import type { Measurement } from '../../../journal/model.ts';
import type { DatedMeasurement, MeasurementSeries } from '../../../journal/registers/measurements.ts';
import { partFacts } from '../page/facts.ts';
import { html, type Markup } from '../page/html.ts';
import { limitWords } from '../page/limits.ts';
import { linked, partLink, sessionDay, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';

/** Whether a reading is within its limits; '' where it has none. */
const withinWords = (within: boolean | null): string => (within === null ? '' : within ? 'within limits' : 'outside limits');

/** Readings of one evening: value, limits, and whether it is within them, in words. */
export function measuredTable(sheet: Sheet, readings: readonly Measurement[], label: string): SetTable {
  return setTable<Measurement>({
    label,
    set: 'work',
    columns: [
      { head: 'Part', names: true, cell: ({ part }) => partLink(sheet, part) },
      { head: 'What', bare: true, cell: ({ what, note }) => html`${what}${sub(note)}` },
      { head: 'As', bare: true, cell: ({ as }) => as !== null && `as ${as}` },
      { head: 'Value', set: 'num', bare: true, cell: ({ value }) => value.text },
      { head: 'Limits', cell: ({ limitsText }) => limitWords(limitsText) },
      { head: 'Verdict', bare: true, look: ({ within }) => within === false && 'attention', cell: ({ within }) => withinWords(within) },
    ],
    groups: rows(readings),
  });
}

/** Series one a line: as found beside as left, each within its limits or outside, and every reading with its day. */
export function seriesTable(sheet: Sheet, series: readonly MeasurementSeries[], label: string): SetTable {
  const positionOf = (part: string): string => partFacts(sheet, part)?.position ?? part;
  const side = (head: string, of: (one: MeasurementSeries) => DatedMeasurement | null): Column<MeasurementSeries> => ({
    head,
    set: 'num side',
    cell: (one) => sideOf(of(one)),
  });
  return setTable<MeasurementSeries>({
    label,
    set: 'schedule series',
    columns: [
      {
        head: 'Part',
        names: true,
        set: 'part',
        cell: ({ part }) => linked(sheet.partName(part), `${sheet.toPosition(positionOf(part))}#measured`),
      },
      { head: 'What', set: 'what', bare: true, cell: ({ what }) => what },
      side('As found', ({ asFound }) => asFound),
      side('As left', ({ asLeft }) => asLeft),
      { head: 'Limits', set: 'limits', cell: lastLimits },
      { head: 'Readings', cell: ({ readings }) => readings.map((reading) => readingLine(sheet, reading)) },
    ],
    groups: rows(series),
  });
}

function sideOf(reading: DatedMeasurement | null): Markup | null {
  if (reading === null) return null;
  const { value, within } = reading.measurement;
  return html`${value.text}${sub(withinWords(within), within === false ? 'sub attention' : 'sub')}`;
}

function lastLimits({ readings }: MeasurementSeries): string {
  return limitWords(readings.findLast(({ measurement }) => measurement.limitsText !== null)?.measurement.limitsText ?? null);
}

function readingLine(sheet: Sheet, { measurement: { value, as, within, note }, session, date }: DatedMeasurement): Markup {
  const verdict = as === null && within !== null && `, ${withinWords(within)}`;
  return html`<div><span class="nowrap">${value.text}</span>${verdict} ${sessionDay(sheet, session, date)}${sub(note)}</div>`;
}
