import type { SubsystemId } from '../../../journal/model.ts';
import { type MeasurementSeries, measurementSeries } from '../../../journal/registers/measurements.ts';
import type { RecordSheet } from '../page/sheet.ts';

export interface MeasurementsPage {
  readonly series: readonly MeasurementSeries[];
  /** Outside their limits at the last reading. */
  readonly out: readonly MeasurementSeries[];
  readonly groups: ReadonlyMap<SubsystemId, readonly MeasurementSeries[]>;
}

/** Everything measured, in the order of the catalogue. */
export function measurementsPage({ record }: RecordSheet): MeasurementsPage {
  const series = measurementSeries(record);
  return {
    series,
    out: series.filter(({ within }) => within === false),
    groups: Map.groupBy(series, ({ part }) => record.journal.parts.get(part)?.subsystem ?? ''),
  };
}
