import type { IsoDate, PartEntry, PartId, SessionId } from '../model.ts';
import { OBSERVED, seenIn } from './observed.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

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

/** What was noted of one field of a part since it was catalogued, oldest first. */
export interface NotedSince {
  readonly label: string;
  readonly list: readonly { readonly words: string; readonly date: IsoDate; readonly session: SessionId }[];
}

/** The fields of which something was noted, in the order of the table; what has no name is left to the chronicle. */
export function notedSince(record: RegisterSource, part: PartId): readonly NotedSince[] {
  const seen = observationsOf(record, part);
  return OBSERVED.flatMap(({ label, lasts, words: wordsOf }) => {
    const list = seen.flatMap(({ entry, date, session }) => {
      const words = wordsOf(entry);
      return words === null ? [] : [{ words, date, session }];
    });
    return label === null || !lasts || list.length === 0 ? [] : [{ label, list }];
  });
}

/** Every mark that the catalogue or a note gives of a part, each once, the first first; that there was none, or that nobody wrote it down, is no mark. */
export function marksOf(record: RegisterSource, part: PartId): readonly string[] {
  const noted = observationsOf(record, part).map(({ entry }) => entry.marks);
  const all = [record.journal.parts.get(part)?.marks ?? null, ...noted];
  return [...new Set(all.flatMap((marks) => (marks === null || NO_MARKS.has(marks.trim().toLowerCase()) ? [] : [marks])))];
}

const NO_MARKS: ReadonlySet<string> = new Set(['none', 'not taken']);
