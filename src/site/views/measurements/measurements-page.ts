import type { SubsystemId } from '../../../journal/model.ts';
import { type MeasurementSeries, measurementSeries } from '../../../journal/registers/measurements.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';

export interface MeasurementsPage {
  readonly series: readonly MeasurementSeries[];
  /** Outside their limits at the last reading. */
  readonly out: readonly MeasurementSeries[];
  readonly groups: ReadonlyMap<SubsystemId, readonly MeasurementSeries[]>;
}

const MEASUREMENTS = shown('measurements', ({ record }): MeasurementsPage => {
  const series = measurementSeries(record);
  return {
    series,
    out: series.filter(({ within }) => within === false),
    groups: Map.groupBy(series, ({ part }) => record.journal.parts.get(part)?.subsystem ?? ''),
  };
});

export const MEASUREMENT_QUESTIONS: readonly AnyQuestion[] = [MEASUREMENTS];

/** Everything measured, in the order of the catalogue. */
export const measurementsPage = (sheet: Sheet): MeasurementsPage => sheet.ask(MEASUREMENTS);
