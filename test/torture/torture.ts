/** What every part of the torture has in common. */
import type { Random } from '../bench/random.ts';

export interface Setting {
  /** How much is tried. */
  readonly amount: number;
  readonly random: Random;
  /** A folder of its own, removed afterwards. */
  readonly folder: string;
  /** True when the time that was given is over: what has been tried by then is told, and no more is begun. */
  isOver(): boolean;
  /** Said while it goes on. */
  progress(text: string): void;
}

/** What came of a part. */
export interface Outcome {
  /** Counted things by name, as `rename 60`. */
  readonly counts: Readonly<Record<string, number>>;
  /** Each in a line that tells how to see it again. */
  readonly failures: readonly string[];
}

export interface Part {
  /** Also the option that says how much of it is tried. */
  readonly name: string;
  /** What it shows, as a sentence. */
  readonly shows: string;
  /** How much a short run tries. */
  readonly usual: number;
  run(setting: Setting): Promise<Outcome>;
}
