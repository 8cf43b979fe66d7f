import { CHART_WIDTHS } from '../charts/plotted.ts';
import type { RecordSheet } from '../page/sheet.ts';
import type { SetTable } from '../tables/table.ts';
import { letterOf, sharesOverTime, subsystemShareLine, vehicleShareLine } from './originality-charts.ts';
import { sharesByDay } from './originality-tables.ts';

/** A small drawing, the name over it, what that opens, and the figure it comes to. */
export interface SmallDrawing {
  readonly name: string;
  readonly href: string;
  readonly fact: string;
  readonly svg: string;
}

export interface OriginalityOverTime {
  /** At a width in px. */
  readonly draw: (width: number) => string | null;
  /** `A\u00a0Body stripped, 14 Dec 2024`, oldest first. */
  readonly milestones: readonly string[];
  /** Of the origin of a part somebody came to believe otherwise: the days before go by what was believed then. */
  readonly believedAnew: boolean;
  readonly table: SetTable;
  readonly subsystems: readonly SmallDrawing[];
}

/** The share over time, of the vehicle and of each subsystem; null where there is nothing to draw. */
export function originalityOverTime(sheet: RecordSheet): OriginalityOverTime | null {
  const { record, figures } = sheet;
  const days = sharesOverTime(record);
  if (vehicleShareLine(record, days, CHART_WIDTHS.page) === null) return null;
  const reached = days.filter(({ milestones }) => milestones.length > 0);
  const now = days.at(-1)?.originality;
  return {
    draw: (width) => vehicleShareLine(record, days, width),
    milestones: reached.map(
      ({ milestones, originality }, n) => `${letterOf(n)}\u00a0${milestones.join(', ')}, ${figures.shortDate(originality.date)}`,
    ),
    believedAnew: record.journal.sessions.some(({ attributed }) => attributed.length > 0),
    table: sharesByDay(sheet, days),
    subsystems: [...(now?.bySubsystem ?? [])].flatMap(([id, { share }]) => {
      const svg = subsystemShareLine(record, days, id);
      if (share === null || svg === null) return [];
      return [{ name: sheet.subsystemName(id), href: `#${id}`, fact: figures.share(share.valueOf(), 1), svg }];
    }),
  };
}
