/** A repeatable source of chance: the same seed gives the same run of choices on every machine. */
export interface Random {
  /** A whole number from 0 to `n` - 1. */
  below(n: number): number;
  /** A whole number from `low` to `high`, both included. */
  between(low: number, high: number): number;
  /** True in the share `p` (0 to 1) of all calls. */
  chance(p: number): boolean;
  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
  /** A new list in another order. */
  shuffle<T>(list: readonly T[]): T[];
}

/**
 * Makes a source of chance by mulberry32 (public domain): 32 bits of state, integer
 * arithmetic only, so no engine rounds it differently.
 *
 * @param seed any whole number; its low 32 bits count
 */
export function randomFrom(seed: number): Random {
  const next = mulberry32(seed);
  const below = (n: number): number => Math.floor(next() * n);
  const pick = <T>(list: readonly T[]): T => {
    const chosen = list[below(list.length)];
    if (chosen === undefined) throw new RangeError('Nothing to choose from.');
    return chosen;
  };
  return {
    below,
    between: (low, high) => low + below(high - low + 1),
    chance: (p) => next() < p,
    pick,
    shuffle: (list) => shuffled(list, below),
  };
}

function mulberry32(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function shuffled<T>(list: readonly T[], below: (n: number) => number): T[] {
  const deck = [...list];
  return list.map(() => deck.splice(below(deck.length), 1)[0] as T);
}
