import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { bagsAt } from '../../src/journal/registers/bags.ts';
import { changesBetween } from '../../src/journal/registers/changes.ts';
import { openItemsAt } from '../../src/journal/registers/open-items.ts';
import { registerAt } from '../../src/journal/registers/register.ts';
import { storesAt } from '../../src/journal/registers/stores.ts';
import { positionTimeline } from '../../src/journal/timelines/timelines.ts';
import { loadJournal } from '../../src/load/load.ts';
import type { Aim } from './aims.ts';
import { LAST_DAY } from './generate.ts';
import { flatness } from './report.ts';

/** Seconds that the stages of the core take in one process. */
export interface Views {
  readonly sessions: number;
  readonly positions: number;
  readonly load: number;
  readonly compile: number;
  /** Register, stores, bags, open items, and what changed since the view before, at the ends of twelve equal stretches of the journal. */
  readonly asAt: number;
  /** The timeline of every position. */
  readonly timelines: number;
}

const DATES = 12;
/** What is measured in milliseconds is told apart from the noise by the least of so many. */
const TIMES = 3;

/**
 * Journals of several lengths, loaded and compiled, each asked for as-at views and timelines; the least of several times. The
 * shortest is gone through once before, since code that has just been loaded is slow.
 *
 * @param folders of generated journals with their lengths, the shortest first
 * @throws when a journal does not compile without an error
 */
export function measureViews(folders: readonly (readonly [folder: string, sessions: number])[]): Views[] {
  for (const [folder, sessions] of folders.slice(0, 2)) measuredOnce(folder, sessions);
  return folders.map(([folder, sessions]) => leastOf(Array.from({ length: TIMES }, () => measuredOnce(folder, sessions))));
}

function leastOf(all: readonly Views[]): Views {
  const least = (figure: 'load' | 'compile' | 'asAt' | 'timelines'): number => Math.min(...all.map((one) => one[figure]));
  const [{ sessions, positions } = { sessions: 0, positions: 0 }] = all;
  return { sessions, positions, load: least('load'), compile: least('compile'), asAt: least('asAt'), timelines: least('timelines') };
}

function measuredOnce(folder: string, sessions: number): Views {
  const [load, sources] = timed(() => loadJournal(folder));
  const [compile, { record, diagnostics }] = timed(() => compileJournal(sources, { today: LAST_DAY }));
  const error = diagnostics.find(({ severity }) => severity === 'error');
  if (record === null || error) throw new Error(`The generated journal has an error: ${error?.code} ${error?.message}`);
  const [asAt] = timed(() =>
    datesOf(record).map((date, n, dates) => viewOf(record, date, dates[n - 1] ?? record.journal.settings.arrived)),
  );
  const [timelines] = timed(() => eventsOf(record));
  return { sessions, positions: record.journal.positions.size, load, compile, asAt, timelines };
}

/** Of one position after the other, as its page is made: none is kept for the next. */
function eventsOf(record: JournalRecord): number {
  let events = 0;
  for (const id of record.journal.positions.keys()) events += positionTimeline(record, id).events.length;
  return events;
}

function viewOf(record: JournalRecord, date: string, before: string): unknown[] {
  return [registerAt, storesAt, bagsAt, openItemsAt]
    .map((view) => view(record, date) as unknown)
    .concat(changesBetween(record, before, date));
}

function datesOf({ journal }: JournalRecord): string[] {
  const { sessions } = journal;
  return Array.from({ length: DATES }, (_, n) => sessions[Math.ceil(((n + 1) * sessions.length) / DATES) - 1]?.date ?? LAST_DAY);
}

function timed<T>(work: () => T): [seconds: number, result: T] {
  const start = performance.now();
  const result = work();
  return [(performance.now() - start) / 1000, result];
}

/** What a session adds to each stage of the core. */
export function viewsAims(all: readonly Views[]): Aim[] {
  const stages = [
    ['compile', 'compiling and checking'],
    ['asAt', `register, stores, bags and items at ${DATES} days`],
    ['timelines', 'timelines of all positions'],
  ] as const;
  return stages.flatMap(
    ([key, what]) =>
      flatness(
        what,
        all.map((one) => ({ sessions: one.sessions, seconds: one[key] })),
      ) ?? [],
  );
}
