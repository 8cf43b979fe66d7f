import Fraction from 'fraction.js';
import type { IsoDate, PartId, Position, SubsystemId } from '../model.ts';
import type { Stay } from '../record.ts';
import { compareText } from '../values/text-order.ts';
import { daysOriginal, originAt } from './origins.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { covers, occupantsOf } from './stays.ts';

/** The originality share and the numbers behind it: sums of weight × count, exact, and plain counts. */
export interface Share {
  /** Σ weight × originals fitted at their own position. */
  readonly originals: Fraction;
  /** Σ weight × count over all positions. */
  readonly of: Fraction;
  /** The first divided by the second; null when there is nothing to divide by. */
  readonly share: Fraction | null;
  /** Originals fitted at their own position and places there are, unweighted; positions of weight 0 left out. */
  readonly fitted: number;
  readonly places: number;
}

/** The share at the end of a day, of the whole vehicle and of each subsystem, in declared order. */
export interface Originality {
  readonly date: IsoDate;
  readonly overall: Share;
  readonly bySubsystem: ReadonlyMap<SubsystemId, Share>;
}

export function originalityAt(record: RegisterSource, at: At): Originality {
  const date = dateOf(record, at);
  const sums = new Sums(record);
  for (const position of record.journal.positions.values()) {
    for (const stay of occupantsOf(record, position.id)) {
      const isOriginal = originAt(record, stay.part, date) === 'original';
      if (covers(stay, date) && isOriginal && isHome(record, stay.part, position)) sums.add(position, stay.count);
    }
  }
  return sums.at(date);
}

/** The share at each of several days, oldest first, in one pass over everything that was ever fitted. */
export function originalitySeries(record: RegisterSource, dates: readonly IsoDate[]): readonly Originality[] {
  const sums = new Sums(record);
  const changes = changesOf(record).sort((a, b) => compareText(a.date, b.date));
  let next = 0;
  return [...dates].sort().map((date) => {
    for (let change = changes[next]; change && change.date <= date; change = changes[next]) {
      sums.add(change.position, change.count);
      next += 1;
    }
    return sums.at(date);
  });
}

/** The share of the vehicle as it arrived, before anything was done. */
export function originalityAsFound(record: RegisterSource): Originality {
  const sums = new Sums(record);
  const isAsFound = ({ from }: Stay) => from.session === null && from.date === record.journal.settings.arrived;
  for (const position of record.journal.positions.values()) {
    for (const stay of occupantsOf(record, position.id)) {
      const isOriginal = originAt(record, stay.part, record.journal.settings.arrived) === 'original';
      if (isAsFound(stay) && isOriginal && isHome(record, stay.part, position)) sums.add(position, stay.count);
    }
  }
  return sums.at(record.journal.settings.arrived);
}

interface Change {
  readonly date: IsoDate;
  readonly position: Position;
  readonly count: number;
}

function changesOf(record: RegisterSource): Change[] {
  return [...record.journal.positions.values()].flatMap((position) =>
    occupantsOf(record, position.id)
      .filter((stay) => isHome(record, stay.part, position))
      .flatMap((stay) => daysOriginal(record, stay.part).flatMap((days) => changesIn(position, stay, days))),
  );
}

/** What a stay adds on the first day on which its part stood there as an original, and takes away on the day it ceased to. */
function changesIn(position: Position, { count, from, to }: Stay, original: ReturnType<typeof daysOriginal>[number]): Change[] {
  const begins = original.from !== null && original.from > from.date ? original.from : from.date;
  const ends = [to?.date ?? NEVER, original.to ?? NEVER].sort()[0] ?? NEVER;
  if (begins >= ends) return [];
  return [{ date: begins, position, count }, ...(ends === NEVER ? [] : [{ date: ends, position, count: -count }])];
}

/** Later than any day. */
const NEVER: IsoDate = '9999-99-99';

/** A part standing at the position it belongs to. */
function isHome(record: RegisterSource, id: PartId, position: Position): boolean {
  return record.journal.parts.get(id)?.position === position.id;
}

/** Running sums by subsystem; the denominators never change. */
class Sums {
  readonly #rows = new Map<SubsystemId, { originals: Fraction; of: Fraction; fitted: number; places: number }>();

  constructor(record: RegisterSource) {
    const { subsystems, positions } = record.journal;
    for (const id of subsystems.keys()) this.#rows.set(id, { originals: ZERO, of: ZERO, fitted: 0, places: 0 });
    for (const position of positions.values()) {
      const row = this.#rows.get(position.subsystem) ?? { originals: ZERO, of: ZERO, fitted: 0, places: 0 };
      this.#rows.set(position.subsystem, row);
      if (position.weight.equals(0)) continue;
      row.of = row.of.add(position.weight.mul(position.count));
      row.places += position.count;
    }
  }

  add({ subsystem, weight }: Position, count: number): void {
    const row = this.#rows.get(subsystem);
    if (!row || weight.equals(0)) return;
    row.originals = row.originals.add(weight.mul(count));
    row.fitted += count;
  }

  at(date: IsoDate): Originality {
    const all = [...this.#rows.values()];
    const overall = {
      originals: all.reduce((sum, row) => sum.add(row.originals), ZERO),
      of: all.reduce((sum, row) => sum.add(row.of), ZERO),
      fitted: all.reduce((sum, row) => sum + row.fitted, 0),
      places: all.reduce((sum, row) => sum + row.places, 0),
    };
    const bySubsystem = new Map([...this.#rows].map(([id, row]) => [id, shareOf(row)]));
    return { date, overall: shareOf(overall), bySubsystem };
  }
}

const ZERO = new Fraction(0);

function shareOf(row: Omit<Share, 'share'>): Share {
  return { ...row, share: row.of.equals(0) ? null : row.originals.div(row.of) };
}
