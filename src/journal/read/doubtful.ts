/** Entries that have a fault in a field that says what they mean. */
import type { Path } from './source/tree.ts';

/** Entries whose fault is in a field that says what they mean: looked through for what else is wrong, and not believed. */
const DOUBTFUL = new WeakSet<object>();

/** Whether an entry must not be counted with. */
export function isDoubtful(entry: unknown): boolean {
  return typeof entry === 'object' && entry !== null && DOUBTFUL.has(entry);
}

/** Casts doubt on the entry at a path, and on those that it lies in. */
export function doubt(value: unknown, path: Path): void {
  let at: unknown = value;
  for (const step of path) {
    at = (at as Record<PropertyKey, unknown> | undefined)?.[step];
    if (typeof at === 'object' && at !== null && !Array.isArray(at)) DOUBTFUL.add(at);
  }
}
