import type { Sort } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';

/** What stands around a name where it is written, which says how another would have to be written there. */
export type Around = 'nothing' | 'single quotes' | 'double quotes' | 'address' | 'attribute';

/** A name where it is written, before it is known what the journal has. */
export interface WrittenName {
  /** What it may name; the first sort that has such a name is meant. */
  readonly sorts: readonly NamedSort[];
  /** Of a bag, its number without zeros before it. */
  readonly name: string;
  /** The thing comes into the journal here: it is the entry of a catalogue, or the filling of a bag. */
  readonly brings: boolean;
  /** The name alone, without its marks. */
  readonly place: Place;
  readonly around: Around;
}

/** Sorts of things. A position has the name of the part that makes it. */
export type NamedSort = Exclude<Sort, 'position'>;

export const namedSort = (sort: Sort): NamedSort => (sort === 'position' ? 'part' : sort);
