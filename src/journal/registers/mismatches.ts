import type { Mismatch } from './mismatch.ts';
import { registerAt } from './register.ts';
import type { At, RegisterSource } from './source.ts';

export type { Mismatch } from './mismatch.ts';

/** Every mismatch at the end of a day, in catalogue order of the positions. */
export function mismatchesAt(record: RegisterSource, at: At): readonly Mismatch[] {
  return registerAt(record, at).flatMap((row) => row.mismatches);
}
