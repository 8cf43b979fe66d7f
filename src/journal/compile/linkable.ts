/** What links of the prose may lead to while the notes are compiled: by what is written, before anything is replayed. */
import type { NoteSource } from '../read/journal-source.ts';
import type { LinkScheme } from '../values/link.ts';
import type { Catalogues } from './context.ts';

export interface Linkable {
  /** The files of all notes. */
  readonly files: ReadonlySet<string>;
  /** Whether something of that name is there. Of a bag any number is taken: which are filled is not known yet. */
  has(scheme: LinkScheme, id: string): boolean;
  /** The names there are; none are told of bags. */
  names(scheme: LinkScheme): Iterable<string>;
}

export function linkableOf(notes: readonly NoteSource[], { parts, consumables }: Catalogues): Linkable {
  const names: Readonly<Record<LinkScheme, () => string[]>> = {
    part: () => [...parts.keys()],
    consumable: () => [...consumables.keys()],
    item: () => notes.flatMap(({ source }) => source.opens.map(({ says }) => says.id)),
    session: () => notes.flatMap(({ id, source }) => [id, source.date]),
    bag: () => [],
  };
  return {
    files: new Set(notes.map(({ file }) => file)),
    names: (scheme) => names[scheme](),
    has: (scheme, id) => (scheme === 'bag' ? /^\d+$/.test(id) : names[scheme]().includes(id)),
  };
}
