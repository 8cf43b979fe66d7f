/**
 * A position's life as stretches along a line of dates: which parts stood there, how many of each, and
 * when nothing did. Pure geometry: shares of the whole width, from 0 to 1.
 */
import type { IsoDate, Part, PartId, Position } from '../../../journal/model.ts';
import type { Stay } from '../../../journal/record.ts';
import { daysBetween, monthsFrom } from '../../../journal/values/date.ts';

export interface Stretch {
  readonly part: PartId;
  readonly count: number;
  readonly from: IsoDate;
  /** Null: still so. */
  readonly to: IsoDate | null;
  /** Along the line. */
  readonly x: number;
  readonly width: number;
  /** Across the line: the lot's places stacked, the original lowest. */
  readonly y: number;
  readonly height: number;
}

/** Places with nothing in them; of a lot, how many. Across the line they lie over what is there. */
export interface Gap {
  readonly count: number;
  readonly from: IsoDate;
  readonly to: IsoDate | null;
  readonly x: number;
  readonly width: number;
  readonly height: number;
}

export interface Track {
  readonly start: IsoDate;
  readonly end: IsoDate;
  readonly stretches: readonly Stretch[];
  readonly gaps: readonly Gap[];
  readonly ticks: readonly { readonly month: string; readonly x: number }[];
}

const MOST_TICKS = 9;

export function trackOf(
  position: Position,
  parts: ReadonlyMap<PartId, Part>,
  stays: readonly Stay[],
  [start, end]: readonly [IsoDate, IsoDate],
): Track {
  const at = along(start, end);
  const moments = momentsOf(stays, start, end);
  const slices = moments.map((from, n) => ({ from, to: moments[n + 1] ?? null, held: heldAt(position, parts, stays, from) }));
  const place = (from: IsoDate, to: IsoDate | null) => ({ x: at(from), width: at(to ?? end) - at(from) });
  return {
    start,
    end,
    stretches: merged(slices.flatMap(({ from, to, held }) => held.map((one) => ({ ...one, from, to })))).map((one) => ({
      ...one,
      ...place(one.from, one.to),
    })),
    gaps: gapsOf(position, slices).map((gap) => ({ ...gap, ...place(gap.from, gap.to), height: gap.count / position.count })),
    ticks: ticksOf(start, end, at),
  };
}

/** Where a day stands on the line, from 0 to 1. */
export function along(start: IsoDate, end: IsoDate): (date: IsoDate) => number {
  const whole = Math.max(1, daysBetween(start, end));
  return (date) => Math.min(1, Math.max(0, daysBetween(start, date) / whole));
}

function momentsOf(stays: readonly Stay[], start: IsoDate, end: IsoDate): IsoDate[] {
  const dates = new Set<IsoDate>([start]);
  for (const { from, to } of stays) {
    if (from.date > start && from.date <= end) dates.add(from.date);
    if (to && to.date > start && to.date <= end) dates.add(to.date);
  }
  return [...dates].sort();
}

type Held = Pick<Stretch, 'part' | 'count' | 'y' | 'height'>;

function heldAt(position: Position, parts: ReadonlyMap<PartId, Part>, stays: readonly Stay[], date: IsoDate): Held[] {
  const counts = new Map<PartId, number>();
  for (const { part, count, from, to } of stays) {
    if (from.date <= date && (to === null || to.date > date)) counts.set(part, (counts.get(part) ?? 0) + count);
  }
  const inOrder = [...counts].sort(([a], [b]) => rank(parts, position, a) - rank(parts, position, b));
  let y = 1;
  return inOrder.map(([part, count]) => {
    const height = count / position.count;
    y -= height;
    return { part, count, y, height };
  });
}

function rank(parts: ReadonlyMap<PartId, Part>, position: Position, id: PartId): number {
  const of = position.parts.indexOf(id);
  return (parts.get(id)?.origin === 'original' ? 0 : 1000) + (of < 0 ? 999 : of);
}

type Slice = Held & Pick<Stretch, 'from' | 'to'>;

/** Joins what stands in the same place across a moment when something else changed. */
function merged(slices: readonly Slice[]): Slice[] {
  const done: Slice[] = [];
  for (const slice of slices) {
    const at = done.findIndex((one) => one.to === slice.from && one.part === slice.part && one.count === slice.count && one.y === slice.y);
    const before = done[at];
    if (before) done[at] = { ...before, to: slice.to };
    else done.push(slice);
  }
  return done;
}

function gapsOf(position: Position, slices: readonly { from: IsoDate; to: IsoDate | null; held: readonly Held[] }[]) {
  const done: { count: number; from: IsoDate; to: IsoDate | null }[] = [];
  for (const { from, to, held } of slices) {
    const count = position.count - held.reduce((sum, one) => sum + one.count, 0);
    const last = done.at(-1);
    if (last?.to === from && last.count === count) last.to = to;
    else if (count > 0) done.push({ count, from, to });
  }
  return done;
}

const labelled = new Map<string, readonly string[]>();

/** First days of months, as many as can be labelled. All positions of a record share the same. */
function ticksOf(start: IsoDate, end: IsoDate, at: (date: IsoDate) => number): Track['ticks'] {
  const key = `${start} ${end}`;
  const months = labelled.get(key) ?? labelledMonths(start, end);
  labelled.set(key, months);
  return months.map((month) => ({ month, x: at(`${month}-01`) }));
}

function labelledMonths(start: IsoDate, end: IsoDate): readonly string[] {
  const months = monthsFrom(start, end).filter((month) => `${month}-01` > start);
  const step = [1, 2, 3, 6, 12, 24, 60, 120].find((every) => months.length / every <= MOST_TICKS) ?? 240;
  return months.filter((month) => (Number(month.slice(0, 4)) * 12 + Number(month.slice(5)) - 1) % step === 0);
}
