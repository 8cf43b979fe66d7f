import type { PartId } from '../model.ts';
import type { Path } from '../read/source/tree.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import type { NoteAtHand } from './session.ts';

/**
 * What the entries of a list come to. Each is looked through for what is wrong in it; one in doubt, or that comes to
 * nothing, is left out.
 *
 * @param make gets the entry and its place in the list, from 0; null where it comes to nothing
 */
export function believed<Says, Out>(
  list: readonly WrittenEntry<Says>[],
  make: (entry: WrittenEntry<Says>, index: number) => Out | null,
): Out[] {
  return known(
    list.map((entry, index) => {
      const made = make(entry, index);
      return entry.doubtful ? null : made;
    }),
  );
}

/** What came to something. */
export function known<T>(values: readonly (T | null)[]): T[] {
  return values.filter((value) => value !== null);
}

/** What a field comes to that may be absent. */
export function given<T, Out>(value: T | null, make: (value: T) => Out | null): Out | null {
  return value === null ? null : make(value);
}

/** Ids of the parts that a field of an entry names; unknown ones are reported and left out. */
export function partsNamed(ids: readonly string[], entry: WrittenEntry<unknown>, { names }: NoteAtHand, ...path: Path): PartId[] {
  return known(ids.map((id, n) => names.part(id, entry.placeOf(...path, n))?.id ?? null));
}
