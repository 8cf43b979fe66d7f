import type { GoneHow, IsoDate, PartId, Whereabouts } from '../model.ts';
import type { RegisterSource } from './source.ts';
import { whereaboutsAt } from './stays.ts';

type Gone = Extract<Whereabouts, { readonly at: 'gone' }>;

/** How many of a part are gone for good at the end of a day, and how they went, each way once. */
export interface GoneCount {
  readonly count: number;
  readonly how: readonly GoneHow[];
  /** Which of a numbered lot. */
  readonly which: readonly number[];
}

export function goneOf(record: RegisterSource, part: PartId, date: IsoDate): GoneCount {
  const gone = whereaboutsAt(record, part, date).flatMap(({ where, ...rest }) => (isGone(where) ? [{ ...rest, how: where.how }] : []));
  return {
    count: gone.reduce((sum, { count }) => sum + count, 0),
    how: [...new Set(gone.map(({ how }) => how))],
    which: gone.flatMap(({ which }) => which ?? []),
  };
}

/** `gone (scrapped, sold)` */
export function goneInWords(how: readonly GoneHow[]): string {
  return `gone (${[...how].sort().join(', ')})`;
}

function isGone(where: Whereabouts): where is Gone {
  return where.at === 'gone';
}
