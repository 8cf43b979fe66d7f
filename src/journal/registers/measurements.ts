import type { Dimension, IsoDate, Measurement, PartId, SessionId } from '../model.ts';
import { UNITS } from '../values/units.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** A measurement with the session it was taken in. */
export interface DatedMeasurement {
  readonly measurement: Measurement;
  readonly session: SessionId;
  readonly date: IsoDate;
}

/** The same thing measured on the same part, oldest first, in units that convert into each other. */
export interface MeasurementSeries {
  readonly part: PartId;
  /** As first written. */
  readonly what: string;
  readonly dimension: Dimension;
  readonly readings: readonly DatedMeasurement[];
  /** The first taken as found and the last taken as left, to stand side by side. */
  readonly asFound: DatedMeasurement | null;
  readonly asLeft: DatedMeasurement | null;
  /** The last reading with limits: in (true) or out (false); null without limits. */
  readonly within: boolean | null;
}

const allReadings = perRecord((record) =>
  orderedSessions(record).flatMap(({ id, date, measured }) => measured.map((measurement) => ({ measurement, session: id, date }))),
);

const readingsByPart = perRecord((record) => groupedBy(allReadings(record), ({ measurement }) => measurement.part));

/** Whatever was measured on a part, oldest first. */
export function readingsOf(record: RegisterSource, part: PartId): readonly DatedMeasurement[] {
  return readingsByPart(record).get(part) ?? [];
}

/** Every series up to the end of a day, by part in catalogue order. */
export function measurementSeries(record: RegisterSource, at: At = null): readonly MeasurementSeries[] {
  return [...record.journal.parts.keys()].flatMap((part) => seriesOf(record, part, at));
}

/** The series of one part up to the end of a day, in the order they were begun. */
export function seriesOf(record: RegisterSource, part: PartId, at: At = null): readonly MeasurementSeries[] {
  const date = dateOf(record, at);
  const readings = readingsOf(record, part).filter((reading) => reading.date <= date);
  return [...groupedBy(readings, keyOf).values()].flatMap((group) => series(part, group) ?? []);
}

function series(part: PartId, readings: readonly DatedMeasurement[]): MeasurementSeries | null {
  const [first] = readings;
  if (!first) return null;
  return {
    part,
    what: first.measurement.what,
    dimension: first.measurement.value.dimension,
    readings,
    asFound: readings.find(({ measurement }) => measurement.as === 'found') ?? null,
    asLeft: readings.findLast(({ measurement }) => measurement.as === 'left') ?? null,
    within: readings.findLast(({ measurement }) => measurement.within !== null)?.measurement.within ?? null,
  };
}

/** Volts and amperes are both electric and do not compare: what is reckoned in another base is another series. */
function keyOf({ measurement: { what, value } }: DatedMeasurement): string {
  return `${UNITS.get(value.unit)?.base ?? value.unit} ${what.trim().replace(/\s+/g, ' ').toLowerCase()}`;
}
