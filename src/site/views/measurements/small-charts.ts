import type { MeasurementSeries } from '../../../journal/registers/measurements.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';
import type { SmallDrawing } from '../register/originality-over-time.ts';
import { seriesChart } from './measurement-charts.ts';

/** Series with enough values to draw, each over time against its limits; `unnamed` leaves out the name of the part. */
export function smallCharts(sheet: Sheet, series: readonly MeasurementSeries[], unnamed: boolean): SmallDrawing[] {
  return series.flatMap((one) => {
    const part = sheet.partName(one.part);
    const svg = seriesChart(sheet.settings, part, one);
    if (svg === null) return [];
    const last = one.readings.at(-1);
    const verdict = one.within === null ? '' : one.within ? ', within limits' : ', outside limits';
    return [
      {
        name: unnamed ? capital(one.what) : `${part}, ${one.what}`,
        href: sheet.toSession(last?.session ?? ''),
        fact: `${last?.measurement.value.text ?? ''}${verdict}`,
        svg,
      },
    ];
  });
}
