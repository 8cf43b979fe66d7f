import type { BenchPart, BenchPosition } from './catalogue.ts';

/** Where a part that is off the vehicle lies. */
export type Lies = { readonly store: string } | { readonly bag: number };

/**
 * How a position stands.
 *
 * - `on`: all that belongs there is fitted · `off`: some or all of it lies at `lies` · `out`: with a firm
 * - `split`: part of a lot was replaced, for good · `left-off`: decided to stay off · `missing`: never found
 */
export type Phase = 'on' | 'off' | 'out' | 'split' | 'left-off' | 'missing';

/** The state of one position while the journal is played through. Only the steps change it. */
export interface Stand {
  readonly position: BenchPosition;
  /** The part that goes on and off here now. */
  current: BenchPart;
  /** The one of the two that is not in use and lies in a store; null when there is none here. */
  idle: { readonly part: BenchPart; readonly store: string } | null;
  phase: Phase;
  lies: Lies | null;
  firm: string | null;
  /** How many are off. */
  off: number;
  /** The candidate is still to be acquired or made. */
  toCome: boolean;
  /** The session that touched it last. */
  last: string | null;
}

/** The as-found state of a position. */
export function standAsFound(position: BenchPosition): Stand {
  const { main, candidate, arrives } = position;
  const here = candidate !== null && arrives === 'start' && candidate.at !== null;
  return {
    position,
    current: main,
    idle: here ? { part: candidate, store: candidate.at } : null,
    phase: main.found === 'fitted' ? 'on' : main.found === 'loose' ? 'off' : 'missing',
    lies: main.at === null ? null : { store: main.at },
    firm: null,
    off: main.found === 'loose' ? main.count : 0,
    toCome: candidate !== null && arrives !== 'start',
    last: null,
  };
}
