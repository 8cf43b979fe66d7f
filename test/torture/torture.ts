/** What every part of the torture has in common. */
import type { Random } from '../bench/random.ts';

export interface Setting {
  /** How much is tried: 1 in a short run, more in a long one. */
  readonly times: number;
  readonly random: Random;
  /** A folder of its own, removed afterwards. */
  readonly folder: string;
  /** Said while it goes on. */
  progress(text: string): void;
}

/** What came of a part. */
export interface Outcome {
  /** Counted things by name, as `killed 60`. */
  readonly counts: Readonly<Record<string, number>>;
  /** Each in a line that tells how to see it again. */
  readonly failures: readonly string[];
}

export interface Part {
  readonly name: string;
  /** What it shows, as a sentence. */
  readonly shows: string;
  run(setting: Setting): Promise<Outcome>;
}
