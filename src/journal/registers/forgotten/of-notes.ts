import type { Bill, IsoDate, Place, Session } from '../../model.ts';
import { filmIndex } from '../film.ts';
import type { RegisterSource } from '../source.ts';
import { orderedSessions } from '../stays.ts';
import type { Missed } from './forgotten.ts';
import { listItem } from './list-item.ts';
import { namedOnlyAt } from './named-in-prose.ts';

/** Bills that name no paper. A receipt of the same note that no bill by then names is the likeliest. */
export function billsWithoutPaper(record: RegisterSource, date: IsoDate): Missed[] {
  const sessions = sessionsTo(record, date);
  const named = new Set(sessions.flatMap(({ bills }) => bills.map(({ paper }) => paper)));
  return sessions.flatMap((session) => {
    const receipts = session.papers.filter(({ kind, file }) => kind === 'receipt' && !named.has(file));
    return session.bills
      .filter(({ paper }) => paper === null)
      .map((bill, n) => ({
        about: { name: nameOfBill(bill) },
        lacks: 'names no paper',
        at: { date: bill.date, session: bill.session },
        place: bill.place,
        write: `paper: ${nameOf(receipts[n]?.file ?? '…')}`,
      }));
  });
}

/** So many lines of a bill say which it is. */
const LINES_NAMED = 3;

/** Its lines and its seller: either may have commas and brackets of its own, so semicolons stand between them. */
function nameOfBill({ from, lines }: Bill): string {
  const all = [...new Set(lines.map((line) => line.what))];
  const more = all.length - LINES_NAMED;
  const what = [...all.slice(0, LINES_NAMED), ...(more > 0 ? [`${more} more`] : [])].join('; ');
  return from === null ? what : `${what} (from ${from})`;
}

/** Pictures that nobody says anything about, those that only lie by the note too. */
export function picturesWithoutWords(record: RegisterSource, date: IsoDate): Missed[] {
  return sessionsTo(record, date).flatMap((session) =>
    session.pictures
      .filter(({ caption, alt }) => caption === null && alt === null)
      .map(({ file, place, unmentioned }) => ({
        about: { name: nameOf(file) },
        lacks: unmentioned ? 'lies by the note, and nothing says what it shows' : 'has neither a caption nor an alternative text',
        at: { date: session.date, session: session.id },
        place: place ?? topOf(session),
        write: unmentioned ? `- { file: ${listItem(nameOf(file))}, shows: […], caption: … }` : 'caption: …',
      })),
  );
}

/** Clips of which no note says what they show at which time, and those that lie by a note which does not name them. */
export function clipsWithoutMarks(record: RegisterSource, date: IsoDate): Missed[] {
  return [...namedWithoutMarks(record, date), ...lyingByNotes(record, date)];
}

function lyingByNotes(record: RegisterSource, date: IsoDate): Missed[] {
  return sessionsTo(record, date).flatMap((session) =>
    session.clipsBeside.map((path) => ({
      about: { name: nameOf(path) },
      lacks: 'lies by the note, which does not name it: nobody sees it',
      at: { date: session.date, session: session.id },
      place: topOf(session),
      write: `- { clip: ${listItem(nameOf(path))}, shows: { "0:00": … } }`,
    })),
  );
}

function namedWithoutMarks(record: RegisterSource, date: IsoDate): Missed[] {
  const { clips } = filmIndex(record);
  const marked = new Set(clips.filter(({ marks }) => marks.some((mark) => mark.date <= date)).map(({ clip, file }) => file ?? clip));
  const seen = new Set<string>();
  return sessionsTo(record, date).flatMap((session) =>
    session.film.flatMap(({ clip, file, title, place }) => {
      const key = file ?? clip;
      if (marked.has(key) || seen.has(key)) return [];
      seen.add(key);
      const lacks = 'has no marks: nothing says which part it shows, and when';
      return [
        {
          about: { name: title ?? nameOf(clip) },
          lacks,
          at: { date: session.date, session: session.id },
          place,
          write: 'shows: { "0:00": … }',
        },
      ];
    }),
  );
}

/** Parts that a note calls by name in its prose, and that no field and no link of it names. */
export function named(record: RegisterSource, date: IsoDate): Missed[] {
  return namedOnlyAt(record, date).map(({ part, session, place }) => ({
    about: { part },
    lacks: 'came up in the prose, and in no field or link',
    at: { date: session.date, session: session.id },
    place,
    write: `[…](part:${part})`,
  }));
}

function sessionsTo(record: RegisterSource, date: IsoDate): readonly Session[] {
  return orderedSessions(record).filter((session) => session.date <= date);
}

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

function topOf({ file }: Session): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}
