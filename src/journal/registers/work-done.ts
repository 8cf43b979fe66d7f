import type { ActionWord, IsoDate, PartEntry, PartId, Verdict } from '../model.ts';
import type { Deed } from '../record.ts';
import { deedCount } from './deed-count.ts';
import { goneOf } from './gone.ts';
import { groupedBy, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** How deep a work goes into the substance of a part: 1 conserved, 2 refinished, 3 repaired or machined. */
const DEPTH: Partial<Record<ActionWord, number>> = { conserved: 1, refinished: 2, repaired: 3, machined: 3 };
/** Looking at a part and gauging it leaves it untouched. */
const LOOKED: readonly ActionWord[] = ['inspected', 'measured'];

/** The deepest work done to what is left of a part by the end of a day, and on how many of a lot. */
export interface WorkDone {
  /** 0: none; then as deep as conserved, refinished, repaired. */
  readonly depth: 0 | 1 | 2 | 3;
  /**
   * Of a numbered lot those that were named and are not gone. Else what several entries say of some of a lot is taken to
   * be of others each time; all that are left at most. What one entry says twice is of the same ones.
   */
  readonly count: number;
}

export function workDone(record: RegisterSource, part: PartId, date: IsoDate): WorkDone {
  const deeds = deedsOf(record, part).filter((deed) => deed.date <= date);
  const gone = goneOf(record, part, date);
  const left = (record.journal.parts.get(part)?.count ?? 0) - gone.count;
  for (const depth of [3, 2, 1] as const) {
    const such = deeds.filter((deed) => depthOf(record, deed, deeds) === depth);
    const numbered = new Set(such.flatMap(({ which }) => which ?? []).filter((number) => !gone.which.includes(number)));
    const others = groupedBy(
      such.filter(({ which }) => which === null),
      ({ entry }) => entry,
    );
    const sum = [...others].reduce((all, [entry, list]) => all + deedCount(list) - goneWith(entry, deeds, gone.count), numbered.size);
    if (Math.min(sum, left) > 0) return { depth, count: Math.min(sum, left) };
  }
  return { depth: 0, count: 0 };
}

/** How deep a deed went. What a firm was sent it to do it has had done when it comes back, whether or not the note says so again. */
function depthOf(record: RegisterSource, deed: Deed, deeds: readonly Deed[]): number {
  if (deed.did !== 'returned' || deed.entry.did.some((word) => word in DEPTH)) return DEPTH[deed.did] ?? 0;
  const sent = deeds.findLast(({ did, date }) => did === 'sent-out' && date <= deed.date);
  return sent === undefined || sent.entry.work === null || sent.entry.how === 'loan' ? 0 : meantDepth(record, deed);
}

const BY_VERDICT: Partial<Record<Verdict, number>> = { conserve: 1, refinish: 2, repair: 3 };

/** What was decided says how deep it was to go; where nothing was, into the substance. */
function meantDepth(record: RegisterSource, { position, date }: Deed): number {
  const decision = (record.history.decisions.get(position) ?? []).findLast((one) => one.date <= date);
  return (decision && BY_VERDICT[decision.verdict]) ?? 3;
}

/** How many of those that an entry speaks of it throws away too. */
function goneWith(entry: PartEntry, deeds: readonly Deed[], gone: number): number {
  return Math.min(gone, deedCount(deeds.filter((deed) => deed.entry === entry && deed.did === 'gone')));
}

/** True when nothing was done to a part by the end of a day but to look at it. */
export function isUntouched(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  return deedsOf(record, part).every((deed) => deed.date > date || LOOKED.includes(deed.did));
}
