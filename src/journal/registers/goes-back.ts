import type { BagFilling, PartEntry, PartId, Session } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { type At, dateOf, perRecord, type RegisterSource } from './source.ts';
import { compareMoments, deedsOf, orderedSessions } from './stays.ts';

/** How a part goes back, as somebody wrote it down when it came off or was bagged. */
export interface WayBack {
  readonly at: Moment & { readonly session: string };
  /** The bag on which it is written; null where it was said of the part alone. */
  readonly bag: number | null;
  readonly goesBack: string | null;
  /** What lies on it, in order; empty where nobody said. */
  readonly stack: readonly string[];
}

/** What was written down of ways back, by part, in the order of the notes. */
const waysBack = perRecord((record) => {
  const ways = new Map<PartId, WayBack[]>();
  const add = (part: PartId, way: WayBack) => ways.set(part, [...(ways.get(part) ?? []), way]);
  for (const session of orderedSessions(record)) {
    const at = { date: session.date, session: session.id };
    const said = session.bags.map((bag) => ({ ...bag, ...aboutOf(record, session, bag) }));
    for (const { part, goesBack, stack } of session.parts) {
      const bag = said.find(({ alike }) => alike.has(part))?.bag ?? null;
      if (goesBack !== null || stack.length > 0) add(part, { at, bag, goesBack, stack });
    }
    for (const { bag, goesBack, about, alike } of said) {
      if (goesBack !== null && alike.size === 0) for (const part of about) add(part, { at, bag, goesBack, stack: [] });
    }
  }
  return ways;
});

/** What each note put into bags. */
const putIntoBags = perRecord((record) =>
  Map.groupBy(
    record.history.deeds.filter(({ to }) => to.at === 'bag'),
    ({ session }) => session,
  ),
);

/** Parts that what is written on a bag is about, and those of them of which the note says the same: then it is of these alone. */
function aboutOf(record: RegisterSource, { id, parts }: Session, { bag, off, goesBack }: BagFilling) {
  const inIt = (putIntoBags(record).get(id) ?? []).filter(({ to }) => to.at === 'bag' && to.bag === bag);
  // A bag that says what it came off speaks of that; what else lies in it goes its own way.
  const about = new Set(off === null ? inIt.map(({ part }) => part) : [off]);
  const alike = parts.filter((entry) => about.has(entry.part) && entry.goesBack !== null && sameWords(entry.goesBack, goesBack));
  return { about, alike: new Set(alike.map(({ part }) => part)) };
}

/** Whether two texts say the same but for capitals, blanks and the stop at the end. */
function sameWords(one: string, other: string | null): boolean {
  const bare = (text: string): string =>
    text
      .toLowerCase()
      .replaceAll(/\s+/g, ' ')
      .replace(/\.?\s*$/, '')
      .trim();
  return other !== null && bare(one) === bare(other);
}

/** How a part goes back, in the order in which it was written, up to the end of a day. It outlives the bag that it was written on. */
export function waysBackOf(record: RegisterSource, part: PartId, at: At): readonly WayBack[] {
  const date = dateOf(record, at);
  return (waysBack(record).get(part) ?? []).filter((way) => way.at.date <= date);
}

/** A part that went back, with what had been said of how it goes, and whether it was said to be as it was. */
export interface WentBack {
  readonly part: PartId;
  readonly ways: readonly WayBack[];
  readonly fitted: Deed;
}

/** What went back with a way back written down and nobody saying whether it is as it was, in catalogue order. */
export function notConfirmedAt(record: RegisterSource, at: At): readonly WentBack[] {
  const date = dateOf(record, at);
  return [...record.journal.parts.keys()].flatMap((part) => wentBack(record, part, date) ?? []);
}

function wentBack(record: RegisterSource, part: PartId, date: string): WentBack | null {
  const order = compareMoments(record);
  const fitted = deedsOf(record, part).findLast(({ did, date: day }) => did === 'fitted' && day <= date);
  if (!fitted || saysHow(fitted.entry)) return null;
  const ways = waysBackOf(record, part, date).filter((way) => order(way.at, fitted) < 0);
  return ways.length === 0 ? null : { part, ways, fitted };
}

function saysHow({ asWas }: PartEntry): boolean {
  return asWas !== null;
}
