import type { ActionWord, IsoDate, PartEntry, PartId, Verdict, Whereabouts } from '../model.ts';
import type { Deed } from '../record.ts';
import { deedCount } from './deed-count.ts';
import { goneOf } from './gone.ts';
import { groupedBy, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** What work made of a part. `worked-on`: a firm had it to do something to, and nobody said of what kind that was. */
export type WorkKind = 'repaired' | 'refinished' | 'conserved' | 'worked-on';

const BY_DEED: Partial<Record<ActionWord, WorkKind>> = {
  conserved: 'conserved',
  refinished: 'refinished',
  repaired: 'repaired',
  machined: 'repaired',
};
const BY_VERDICT: Partial<Record<Verdict, WorkKind>> = { conserve: 'conserved', refinish: 'refinished', repair: 'repaired' };
/** What is said, the deepest into the substance first; then what is not. */
const DEEPEST_FIRST = ['repaired', 'refinished', 'conserved', 'worked-on'] as const;
/** Looking at a part and gauging it leaves it untouched. */
const LOOKED: readonly ActionWord[] = ['inspected', 'measured'];

/** The deepest work done to what is left of a part by the end of a day, and on how many of a lot. */
export interface WorkDone {
  readonly kind: WorkKind;
  /**
   * Of a numbered lot those that were named and are not gone. Else what several entries say of some of a lot is taken to
   * be of others each time; all that are left at most. What one entry says twice is of the same ones.
   */
  readonly count: number;
  /** Work of unstated kind was done too, which may have gone deeper. */
  readonly andMore: boolean;
}

/** @returns null where nothing was done that changes what a part is */
export function workDone(record: RegisterSource, part: PartId, date: IsoDate): WorkDone | null {
  const deeds = deedsOf(record, part).filter((deed) => deed.date <= date);
  const counts = DEEPEST_FIRST.map((kind) => ({ kind, count: countOf(record, part, deeds, kind, date) })).filter(({ count }) => count > 0);
  const [deepest] = counts;
  if (deepest === undefined) return null;
  const unstated = deepest.kind !== 'worked-on' && deepest.kind !== 'repaired' && counts.at(-1)?.kind === 'worked-on';
  return { ...deepest, andMore: unstated };
}

function countOf(record: RegisterSource, part: PartId, deeds: readonly Deed[], kind: WorkKind, date: IsoDate): number {
  const gone = goneOf(record, part, date);
  const left = (record.journal.parts.get(part)?.count ?? 0) - gone.count;
  const such = deeds.filter((deed) => workOf(record, deed) === kind);
  const numbered = new Set(such.flatMap(({ which }) => which ?? []).filter((number) => !gone.which.includes(number)));
  const others = groupedBy(
    such.filter(({ which }) => which === null),
    ({ entry }) => entry,
  );
  const sum = [...others].reduce((all, [entry, list]) => all + deedCount(list) - goneWith(entry, deeds, gone.count), numbered.size);
  return Math.min(sum, left);
}

/**
 * What kind of work a deed was. What a firm was sent a part to do to it has been done when it comes back, whether or not
 * the note says so again: of the kind that was decided on, else of a kind that nobody has said.
 */
export function workOf(record: RegisterSource, deed: Deed): WorkKind | null {
  if (deed.did !== 'returned' || deed.entry.did.some((word) => word in BY_DEED)) return BY_DEED[deed.did] ?? null;
  const sent = deedsOf(record, deed.part).findLast(
    (one) => one.did === 'sent-out' && one.date <= deed.date && isSameFirm(one.to, deed.from),
  );
  return sent === undefined || sent.entry.work === null || sent.entry.how === 'loan' ? null : decidedOn(record, deed);
}

function isSameFirm(one: Whereabouts, other: Whereabouts): boolean {
  return one.at === 'out' && other.at === 'out' && one.firm === other.firm;
}

function decidedOn(record: RegisterSource, { position, part, date }: Deed): WorkKind {
  const decisions = record.history.decisions.get(position) ?? [];
  const last = decisions.findLast((one) => one.part === part && one.date <= date);
  return (last && BY_VERDICT[last.verdict]) ?? 'worked-on';
}

/** How many of those that an entry speaks of it throws away too. */
function goneWith(entry: PartEntry, deeds: readonly Deed[], gone: number): number {
  return Math.min(gone, deedCount(deeds.filter((deed) => deed.entry === entry && deed.did === 'gone')));
}

/** True when nothing was done to a part by the end of a day but to look at it. */
export function isUntouched(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  return deedsOf(record, part).every((deed) => deed.date > date || LOOKED.includes(deed.did));
}
