import type { IsoDate, PartEntry, PartId, SessionId } from '../model.ts';
import { someInWords } from '../replay/words.ts';
import { deedCount } from './deed-count.ts';
import { OBSERVED, seenIn } from './observed.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { deedsOf, orderedSessions } from './stays.ts';

/** Something seen of a part and written down in an entry. */
export interface Observation {
  readonly part: PartId;
  readonly date: IsoDate;
  readonly session: SessionId;
  readonly entry: PartEntry;
}

const byPart = perRecord((record) => {
  const seen = orderedSessions(record).flatMap(({ id: session, date, parts }) =>
    parts.filter((entry) => seenIn(entry).length > 0).map((entry): Observation => ({ part: entry.part, date, session, entry })),
  );
  return groupedBy(seen, ({ part }) => part);
});

/** What was written down of a part, oldest first. */
export function observationsOf(record: RegisterSource, part: PartId): readonly Observation[] {
  return byPart(record).get(part) ?? [];
}

/** Which an entry saw; null where it does not say, and did nothing to any by name. */
export function numbersSeen(record: RegisterSource, { part, entry }: Pick<Observation, 'part' | 'entry'>): readonly number[] | null {
  if (entry.which !== null) return entry.which;
  const done = deedsOf(record, part).flatMap((deed) => (deed.entry === entry && deed.which ? deed.which : []));
  return done.length > 0 ? [...new Set(done)].sort((a, b) => a - b) : null;
}

/** Of how many of a lot an entry speaks. */
export function observedCount(record: RegisterSource, { part, entry }: Pick<Observation, 'part' | 'entry'>, all: number): number {
  const deeds = deedsOf(record, part).filter((deed) => deed.entry === entry);
  return entry.count ?? entry.which?.length ?? (deeds.length > 0 ? deedCount(deeds) : all);
}

/** Of how many of a lot an entry speaks, and of which: `2 of 6, numbers 3 and 4`; '' for all. */
export function someSeen(record: RegisterSource, one: Pick<Observation, 'part' | 'entry'>): string {
  const all = record.journal.parts.get(one.part)?.count ?? 1;
  return someInWords(observedCount(record, one, all), all, numbersSeen(record, one));
}

/** What was said, and of how many and which of a lot where it was not of all: `K 3 (2 of 6, numbers 3 and 4)`. */
const saidOf = (words: string, record: RegisterSource, one: Observation): string => withSome(words, someSeen(record, one));

const withSome = (words: string, some: string): string => (some === '' ? words : `${words} (${some})`);

/** What was noted of one field of a part since it was catalogued, oldest first. */
export interface NotedSince {
  readonly label: string;
  readonly list: readonly { readonly words: string; readonly date: IsoDate; readonly session: SessionId }[];
}

/** The fields of which something was noted, in the order of the table; what has no name is left to the chronicle. */
export function notedSince(record: RegisterSource, part: PartId): readonly NotedSince[] {
  const seen = observationsOf(record, part);
  return OBSERVED.flatMap(({ label, lasts, words: wordsOf }) => {
    const list = seen.flatMap((one) => {
      const words = wordsOf(one.entry);
      return words === null ? [] : [{ words: saidOf(words, record, one), date: one.date, session: one.session }];
    });
    return label === null || !lasts || list.length === 0 ? [] : [{ label, list }];
  });
}

/**
 * Every mark that the catalogue or a note gives of a part, each once, the first first; that there was none, or that nobody
 * wrote it down, is no mark.
 *
 * @param which those of a numbered lot that are meant; null for all of it
 */
export function marksOf(record: RegisterSource, part: PartId, which: readonly number[] | null = null): readonly string[] {
  const catalogued = record.journal.parts.get(part)?.marks ?? null;
  const noted = observationsOf(record, part).flatMap((one) => (isMark(one.entry.marks) ? markOf(one.entry.marks, record, one, which) : []));
  return [...new Set([...(isMark(catalogued) ? [catalogued] : []), ...noted])];
}

function markOf(mark: string, record: RegisterSource, one: Observation, which: readonly number[] | null): readonly string[] {
  const seen = numbersSeen(record, one);
  if (which === null || seen === null) return [saidOf(mark, record, one)];
  const common = which.filter((number) => seen.includes(number));
  return common.length === 0 ? [] : [withSome(mark, someInWords(common.length, which.length, common))];
}

const isMark = (marks: string | null): marks is string => marks !== null && !NO_MARKS.has(marks.trim().toLowerCase());

const NO_MARKS: ReadonlySet<string> = new Set(['none', 'not taken']);
