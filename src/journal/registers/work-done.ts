import type { ActionWord, IsoDate, PartId } from '../model.ts';
import { deedCount } from './deed-count.ts';
import { groupedBy, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** How deep a work goes into the substance of a part: 1 conserved, 2 refinished, 3 repaired or machined. */
const DEPTH: Partial<Record<ActionWord, number>> = { conserved: 1, refinished: 2, repaired: 3, machined: 3 };
/** Looking at a part and gauging it leaves it untouched. */
const LOOKED: readonly ActionWord[] = ['inspected', 'measured'];

/** The deepest work done to a part by the end of a day, and on how many of a lot. */
export interface WorkDone {
  /** 0: none; then as deep as conserved, refinished, repaired. */
  readonly depth: 0 | 1 | 2 | 3;
  /**
   * Of a numbered lot those that were named. Else what several entries say of some of a lot is taken to be of others
   * each time; all of them at most. What one entry says twice is of the same ones.
   */
  readonly count: number;
}

export function workDone(record: RegisterSource, part: PartId, date: IsoDate): WorkDone {
  const deeds = deedsOf(record, part).filter((deed) => deed.date <= date);
  const depth = Math.max(0, ...deeds.map(({ did }) => DEPTH[did] ?? 0)) as WorkDone['depth'];
  const such = depth === 0 ? [] : deeds.filter(({ did }) => DEPTH[did] === depth);
  const numbered = new Set(such.flatMap(({ which }) => which ?? []));
  const others = such.filter(({ which }) => which === null);
  const sum = [...groupedBy(others, ({ entry }) => entry)].reduce((all, [, list]) => all + deedCount(list), numbered.size);
  return { depth, count: Math.min(sum, record.journal.parts.get(part)?.count ?? sum) };
}

/** True when nothing was done to a part by the end of a day but to look at it. */
export function isUntouched(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  return deedsOf(record, part).every((deed) => deed.date > date || LOOKED.includes(deed.did));
}
