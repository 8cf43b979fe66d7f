import type { BagFilling, PartId, Session } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { numbersSeen, someSeen } from './observations.ts';
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
  /** Of how many of a lot it was said, and of which: `2 of 6, numbers 3 and 4`; '' for all. */
  readonly some: string;
  /** Which of a numbered lot; null where it does not say. */
  readonly which: readonly number[] | null;
}

/** What was written down of ways back, by part, in the order of the notes. */
const waysBack = perRecord((record) => {
  const ways = new Map<PartId, WayBack[]>();
  const add = (part: PartId, way: WayBack) => ways.set(part, [...(ways.get(part) ?? []), way]);
  for (const session of orderedSessions(record)) {
    const at = { date: session.date, session: session.id };
    const said = session.bags.map((bag) => ({ ...bag, ...aboutOf(record, session, bag) }));
    for (const entry of session.parts) {
      const { part, goesBack, stack } = entry;
      const bag = said.find(({ alike }) => alike.has(part))?.bag ?? null;
      const seen = { part, entry };
      if (goesBack === null && stack.length === 0) continue;
      add(part, { at, bag, goesBack, stack, some: someSeen(record, seen), which: numbersSeen(record, seen) });
    }
    for (const { bag, goesBack, about, alike } of said) {
      if (goesBack !== null && alike.size === 0)
        for (const part of about) add(part, { at, bag, goesBack, stack: [], some: '', which: null });
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

/** What went back, some of a lot too, with a way back written down and nobody saying whether it is as it was, in catalogue order. */
export function notConfirmedAt(record: RegisterSource, at: At): readonly WentBack[] {
  const date = dateOf(record, at);
  return [...record.journal.parts.keys()].flatMap((part) => wentBack(record, part, date) ?? []);
}

function wentBack(record: RegisterSource, part: PartId, date: string): WentBack | null {
  const order = compareMoments(record);
  const fitted = unsaidOn(deedsOf(record, part).filter(({ date: day }) => day <= date));
  if (fitted === null) return null;
  const ways = waysBackOf(record, part, date).filter((way) => order(way.at, fitted) < 0 && isOfSame(way, fitted));
  return ways.length === 0 ? null : { part, ways, fitted };
}

const isOfSame = (way: WayBack, { which }: Deed): boolean =>
  way.which === null || which === null || way.which.some((number) => which.includes(number));

/** Some of a part that were fitted, and nobody said whether as they were. */
interface Unsaid {
  readonly deed: Deed;
  readonly count: number;
  readonly which: readonly number[] | null;
}

/** The last deed that fitted what still stands there, and of which nobody said whether it is as it was. */
function unsaidOn(deeds: readonly Deed[]): Deed | null {
  let unsaid: readonly Unsaid[] = [];
  for (const deed of deeds) {
    if (deed.did === 'removed') unsaid = without(unsaid, deed);
    else if (deed.did === 'fitted' && deed.entry.asWas === null) unsaid = [...unsaid, { deed, count: deed.count, which: deed.which }];
  }
  return unsaid.at(-1)?.deed ?? null;
}

/** Of a numbered lot those that are named come off, else the ones that were fitted first. */
function without(unsaid: readonly Unsaid[], { count, which }: Deed): readonly Unsaid[] {
  let left = count;
  return unsaid.flatMap((one) => {
    const stay = which && one.which ? one.which.filter((number) => !which.includes(number)) : null;
    const rest = stay?.length ?? Math.max(0, one.count - left);
    left = Math.max(0, left - (one.count - rest));
    return rest > 0 ? [{ ...one, count: rest, which: stay }] : [];
  });
}
