/** The sessions as a journal would be divided: by the milestones they led to, and a long way by its seasons. */
import type { Milestone, Picture, Session } from '../../../journal/model.ts';
import { yearOf } from '../../../journal/values/date.ts';
import type { SiteRecord } from '../../record.ts';
import { amongOthers } from './threads.ts';

export interface Chapter {
  /** The milestone its last session reached; null where the way went on. */
  readonly to: Milestone | null;
  /** Oldest first. */
  readonly sessions: readonly Session[];
  readonly minutes: number;
}

/** A way to a milestone with more sessions than this is divided by its seasons. */
const LONG = 12;

/** Chapters in order, oldest first: every session stands in exactly one. */
export function chaptersOf({ journal, history }: SiteRecord): readonly Chapter[] {
  const names = new Map(journal.milestones.map((one) => [one.id, one]));
  const reached = new Map([...history.reached.values()].map(({ session, milestone }) => [session, names.get(milestone) ?? null]));
  const ways: Session[][] = [[]];
  for (const session of journal.sessions) {
    ways.at(-1)?.push(session);
    if (reached.has(session.id)) ways.push([]);
  }
  return ways
    .flatMap((way) => (way.length > LONG ? [...Map.groupBy(way, seasonOf).values()] : [way]))
    .filter((sessions) => sessions.length > 0)
    .map((sessions) => ({ sessions, to: reached.get(sessions.at(-1)?.id ?? '') ?? null, minutes: minutesOf(sessions) }));
}

/** The years in which there were sessions, the last first. */
export function yearsOf({ journal }: SiteRecord): readonly string[] {
  return [...new Set(journal.sessions.map(({ date }) => yearOf(date)))].reverse();
}

export interface ReadingOfYear {
  readonly told: readonly { readonly session: Session; readonly html: string; readonly pictures: readonly Picture[] }[];
  /** The years before and after that have sessions. */
  readonly before: string | null;
  readonly after: string | null;
}

/** A year's prose, oldest first, with the pictures that the notes mention outside it. */
export async function readingOfYear(record: SiteRecord, year: string): Promise<ReadingOfYear> {
  const years = yearsOf(record);
  const at = years.indexOf(year);
  const sessions = record.journal.sessions.filter(({ date }) => yearOf(date) === year);
  const told = sessions.map(async (session) => ({
    session,
    html: amongOthers(await record.noteHtml(session.id), session.id),
    pictures: session.pictures.filter(({ inProse, unmentioned }) => !inProse && !unmentioned),
  }));
  return { told: await Promise.all(told), before: years[at + 1] ?? null, after: years[at - 1] ?? null };
}

/** Three months that belong together, December with the two after it: so weather is reckoned (WMO, meteorological seasons). They are not named: names depend on the half of the earth. */
function seasonOf({ date }: Session): number {
  const [year, month] = date.split('-').map(Number);
  return (year ?? 0) * 4 + Math.floor((month ?? 0) / 3);
}

const minutesOf = (sessions: readonly Session[]): number =>
  sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0);
