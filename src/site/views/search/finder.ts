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

/** What a document is searched by: its title, the marks on it, and everything else. */
interface Searched {
  readonly t: string;
  readonly m?: string;
  readonly x: string;
}

/**
 * Every word asked for must be there; a word may be begun only, and a long one may be a letter wrong, but a figure never.
 *
 * @param searched what each document is searched by
 * @returns finds those that are wanted, the nearest first
 */
export function nearestFirst<T>(
  documents: readonly T[],
  searched: (one: T) => Searched,
): (asked: string, isWanted?: (one: T) => boolean) => readonly T[] {
  const index = new MiniSearch<Searched & { id: number }>({
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
  index.addAll(documents.map((one, id) => ({ ...searched(one), id })));
  return (asked, isWanted = () => true) =>
    index.search(asked).flatMap(({ id }) => {
      const one = documents[id];
      return one !== undefined && isWanted(one) ? [one] : [];
    });
}

/** Finds documents of the search page. */
export function finderOf(documents: readonly SearchDocument[]): Finder {
  const find = nearestFirst(documents, (one) => one);
  return (asked, { kind, subsystem } = { kind: '', subsystem: '' }) =>
    find(asked, (one) => (kind === '' || one.k === kind) && (subsystem === '' || one.s.split(' ').includes(subsystem)));
}
