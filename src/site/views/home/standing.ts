/** Where the vehicle stands: what the home page says in its first sentences. All of it is counted from the record. */
import type { IsoDate, Milestone, SessionId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import type { Gate, ItemRow } from '../../../journal/registers/open-items.ts';
import { gatesAt, openItemsAt, temporaryMeasuresAt } from '../../../journal/registers/open-items.ts';
import { type RegisterRow, registerAt } from '../../../journal/registers/register.ts';

export interface Standing {
  readonly sessions: number;
  /** The note that the record stands on; null while there is none. */
  readonly newest: { readonly id: SessionId; readonly date: IsoDate } | null;
  /** How many of the sessions have hours. */
  readonly worked: number;
  readonly minutes: number;
  /** Who put them in; null in a copy that leaves people out, where all are as one. */
  readonly people: number | null;
  /** Places for a single part, and pieces of what the catalogue counts in lots: fasteners, wheels, slats. */
  readonly single: Holding;
  readonly lots: Holding;
  /** Positions in which what stands there is not what was decided, whatever number of reasons. */
  readonly mismatches: number;
  readonly gates: readonly Gate[];
  /** The first milestone that is not reached; null when all are. */
  readonly next: Gate | null;
  readonly lastReached: { readonly milestone: Milestone; readonly date: string } | null;
  readonly temporary: readonly ItemRow[];
  /** The next jobs: what is due before the next milestone, the oldest first, then the oldest of the rest. */
  readonly jobs: readonly ItemRow[];
}

/** How many belong on the vehicle, and how many are there that the works put there. */
export interface Holding {
  readonly all: number;
  readonly original: number;
}

/** So many jobs stand on the front page. */
const JOBS = 3;

export function standingOf(record: JournalRecord): Standing {
  const { sessions } = record.journal;
  const rows = registerAt(record, null);
  const gates = gatesAt(record, null);
  const passed = gates.flatMap(({ milestone, reached }) => (reached ? [{ milestone, date: reached.date }] : []));
  const next = gates.find(({ reached }) => reached === null) ?? null;
  const temporary = temporaryMeasuresAt(record, null);
  return {
    sessions: sessions.length,
    newest: sessions.at(-1) ?? null,
    worked: sessions.filter(({ hours }) => hours.length > 0).length,
    minutes: sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0),
    people: record.copy.leavesOut.includes('people') ? null : new Set(sessions.flatMap(({ hours }) => hours.map(({ by }) => by))).size,
    single: holdingOf(record, rows, (count) => count === 1),
    lots: holdingOf(record, rows, (count) => count > 1),
    mismatches: rows.filter((row) => row.mismatches.length > 0).length,
    gates,
    next,
    lastReached: passed.sort((a, b) => (a.date < b.date ? -1 : 1)).at(-1) ?? null,
    temporary,
    jobs: jobsOf(openItemsAt(record, null), next),
  };
}

function holdingOf({ journal }: JournalRecord, rows: readonly RegisterRow[], of: (count: number) => boolean): Holding {
  const some = rows.filter(({ count }) => of(count));
  const originals = some.flatMap(({ fitted, position }) =>
    fitted.filter(({ part, origin }) => origin === 'original' && journal.parts.get(part)?.position === position),
  );
  const sum = (list: readonly { readonly count: number }[]): number => list.reduce((all, { count }) => all + count, 0);
  return { all: sum(some), original: sum(originals) };
}

/** What others have promised is no job; temporary measures have a list of their own. */
function jobsOf(open: readonly ItemRow[], next: Gate | null): readonly ItemRow[] {
  const jobs = open.filter(({ kind }) => kind !== 'temporary' && kind !== 'waiting');
  const due = new Set([...(next?.items ?? []), ...(next?.earlier ?? [])].map(({ id }) => id));
  return [...jobs.filter(({ id }) => due.has(id)), ...jobs.filter(({ id }) => !due.has(id))].slice(0, JOBS);
}
