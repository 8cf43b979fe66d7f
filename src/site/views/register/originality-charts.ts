/** The originality share over time, as figures and drawn: of the vehicle, and of each subsystem. */
import { dot, lineY, ruleX, text } from '@observablehq/plot';
import type { IsoDate, SubsystemId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { type Originality, originalityAsFound, originalitySeries, type Share } from '../../../journal/registers/originality.ts';
import { viewDates } from '../../../journal/registers/view-dates.ts';
import { axes, dayOf, drawn, frame, SMALL_WIDTH } from '../charts/plotted.ts';
import { figuresOf } from '../page/figures.ts';

/** The share as it stood on one day. */
export interface ShareOnDay {
  readonly originality: Originality;
  /** The state the vehicle arrived in, before anything was done. */
  readonly asFound: boolean;
  /** Names of the milestones reached on that day. */
  readonly milestones: readonly string[];
}

/**
 * The share as found, at every month's end and milestone, and on the record's day, which ends the time that is drawn;
 * oldest first.
 */
export function sharesOverTime(record: JournalRecord): readonly ShareOnDay[] {
  const views = new Map(viewDates(record).map(({ date, milestones }) => [date, milestones.map(({ name }) => name)]));
  const days = [...new Set([...views.keys(), record.day])];
  return [
    { originality: originalityAsFound(record), asFound: true, milestones: [] },
    ...originalitySeries(record, days).map((originality) => ({
      originality,
      asFound: false,
      milestones: views.get(originality.date) ?? [],
    })),
  ];
}

/** The letter a milestone is marked with in the drawing, in the order they were reached: a, b … z, aa. */
export function letterOf(n: number): string {
  return n < 26 ? String.fromCharCode(97 + n) : letterOf(Math.floor(n / 26) - 1) + letterOf(n % 26);
}

/** The share of the whole vehicle as a line from 0 to 100 %, the days of milestones marked with their letters; null when no time has passed. */
export function vehicleShareLine(record: JournalRecord, days: readonly ShareOnDay[], width: number): string | null {
  const milestones = days.filter((day) => day.milestones.length > 0).map(({ originality }) => originality.date);
  return shareLine(record, 'the vehicle', days, ({ overall }) => overall, width, milestones);
}

/** The share of one subsystem, in a small drawing; null when no time has passed or nothing of it counts. */
export function subsystemShareLine(record: JournalRecord, days: readonly ShareOnDay[], id: SubsystemId): string | null {
  const name = record.journal.subsystems.get(id)?.name ?? id;
  return shareLine(record, name, days, ({ bySubsystem }) => bySubsystem.get(id), SMALL_WIDTH, []);
}

function shareLine(
  record: JournalRecord,
  name: string,
  days: readonly ShareOnDay[],
  of: (originality: Originality) => Share | undefined,
  width: number,
  marked: readonly IsoDate[],
): string | null {
  const figures = figuresOf(record.journal.settings);
  const percent = (value: number): string => figures.share(value, 1);
  const points = days.flatMap(({ originality }) => {
    const share = of(originality)?.share;
    return share ? [{ date: originality.date, day: dayOf(originality.date), share: share.valueOf() }] : [];
  });
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || first.date === last.date) return null;
  const least = points.reduce((a, b) => (b.share < a.share ? b : a));
  const label =
    `Originality share of ${name}: ${percent(first.share)} as found on ${figures.date(first.date)}, ` +
    `lowest ${percent(least.share)} on ${figures.date(least.date)}, ${percent(last.share)} on ${figures.date(last.date)}.`;
  return drawn(label, {
    ...frame(width),
    x: { type: 'utc', domain: [first.day, last.day] },
    y: { domain: [0, 1] },
    marks: [
      ...axes(figures, first.date, last.date, width, {
        ticks: width > SMALL_WIDTH ? [0, 0.25, 0.5, 0.75, 1] : [0, 0.5, 1],
        written: percent,
      }),
      ruleX(marked.map(dayOf), { className: 'milestone' }),
      text(
        marked.map((date, n) => ({ day: dayOf(date), letter: letterOf(n) })),
        { x: 'day', text: 'letter', frameAnchor: 'top', lineAnchor: 'bottom', dy: -7 },
      ),
      lineY(points, { x: 'day', y: 'share', className: 'line' }),
      dot([last], { x: 'day', y: 'share', r: 3, className: 'mark' }),
    ],
  });
}
