/** What is searched with: an index over the documents, and how words and marks are taken apart. */
import MiniSearch from 'minisearch';
import type { SearchDocument } from './search-documents.ts';

export interface Wanted {
  /** '' for every kind. */
  readonly kind: string;
  /** '' for all of the vehicle. */
  readonly subsystem: string;
}

/** Finds documents, the nearest first. */
export type Finder = (asked: string, wanted?: Wanted) => readonly SearchDocument[];

/** Letters and figures apart: a mark is typed as it is found, `C 4417`, `c4417` or `4417`. */
export function wordsOf(text: string): string[] {
  return text.match(/\p{L}+|\p{N}+/gu) ?? [];
}

/** The words of a text, and figures that stand in groups also as one: `88 206` is found by `88206`. */
function wordsToFind(text: string): string[] {
  const grouped = text.match(/\p{N}+(?:[ ./-]\p{N}+)+/gu) ?? [];
  return [...wordsOf(text), ...grouped.map((group) => group.replaceAll(/\P{N}/gu, ''))];
}

/** Every word asked for must be there; a word may be begun only, and a long one may be a letter wrong, but a figure never. */
export function finderOf(documents: readonly SearchDocument[]): Finder {
  const index = new MiniSearch<SearchDocument & { id: number }>({
    fields: ['t', 'm', 'x'],
    tokenize: wordsToFind,
    searchOptions: {
      tokenize: wordsOf,
      boost: { t: 3, m: 4 },
      prefix: (term) => term.length > 1,
      fuzzy: (term) => (term.length > 5 && !/\p{N}/u.test(term) ? 0.15 : false),
      combineWith: 'AND',
    },
  });
  index.addAll(documents.map((one, id) => ({ ...one, id })));
  return (asked, { kind, subsystem } = { kind: '', subsystem: '' }) => {
    const isWanted = (one: SearchDocument | undefined): boolean =>
      one !== undefined && (kind === '' || one.k === kind) && (subsystem === '' || one.s.split(' ').includes(subsystem));
    return index.search(asked, { filter: ({ id }) => isWanted(documents[id]) }).flatMap(({ id }) => documents[id] ?? []);
  };
}
