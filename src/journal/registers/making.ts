import type { PartId } from '../model.ts';
import { perRecord, type RegisterSource } from './source.ts';

/** What a part was made from and after, and what was made of it. Either note may say so; the other side is read from it. */
export interface Making {
  readonly from: readonly PartId[];
  readonly pattern: PartId | null;
  readonly into: readonly PartId[];
  /** Parts that were made after this one. */
  readonly patternOf: readonly PartId[];
}

const NONE: Making = { from: [], pattern: null, into: [], patternOf: [] };

const makings = perRecord((record) => {
  const known = new Map<PartId, Making>();
  const of = (part: PartId): Making => known.get(part) ?? NONE;
  const made = (from: PartId, into: PartId) => {
    known.set(into, { ...of(into), from: joined(of(into).from, from) });
    known.set(from, { ...of(from), into: joined(of(from).into, into) });
  };
  for (const { part, did, entry } of record.history.deeds) {
    if (did === 'gone' && entry.how === 'made-into' && entry.part === part) for (const into of entry.into) made(part, into);
    if (did !== 'made') continue;
    for (const from of entry.madeFrom) made(from, part);
    if (entry.pattern === null) continue;
    known.set(part, { ...of(part), pattern: entry.pattern });
    known.set(entry.pattern, { ...of(entry.pattern), patternOf: joined(of(entry.pattern).patternOf, part) });
  }
  return known;
});

function joined(list: readonly PartId[], one: PartId): readonly PartId[] {
  return list.includes(one) ? list : [...list, one];
}

/** Where a part came from by making, and what became of it by making. */
export function makingOf(record: RegisterSource, part: PartId): Making {
  return makings(record).get(part) ?? NONE;
}
