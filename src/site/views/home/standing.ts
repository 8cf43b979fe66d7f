/** Where the vehicle stands: what the home page says in its first sentences. All of it is counted from the record. */
import type { IsoDate, Milestone, SessionId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import type { Gate, ItemRow } from '../../../journal/registers/open-items.ts';
import { gatesAt, temporaryMeasuresAt } from '../../../journal/registers/open-items.ts';
import { type Originality, originalityAt } from '../../../journal/registers/originality.ts';
import { registerAt } from '../../../journal/registers/register.ts';

export interface Standing {
  readonly sessions: number;
  /** The note that the record stands on; null while there is none. */
  readonly newest: { readonly id: SessionId; readonly date: IsoDate } | null;
  readonly minutes: number;
  readonly people: number;
  readonly positions: number;
  /** Positions all of whose places hold an original of their own. */
  readonly original: number;
  readonly mismatches: number;
  readonly originality: Originality;
  readonly gates: readonly Gate[];
  /** The first milestone that is not reached; null when all are. */
  readonly next: Gate | null;
  readonly lastReached: { readonly milestone: Milestone; readonly date: string } | null;
  readonly temporary: readonly ItemRow[];
}

export function standingOf(record: JournalRecord): Standing {
  const { sessions } = record.journal;
  const rows = registerAt(record, null);
  const gates = gatesAt(record, null);
  const passed = gates.flatMap(({ milestone, reached }) => (reached ? [{ milestone, date: reached.date }] : []));
  const full = rows.filter(({ fitted, empty }) => empty === 0 && fitted.every(({ origin }) => origin === 'original'));
  return {
    sessions: sessions.length,
    newest: sessions.at(-1) ?? null,
    minutes: sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0),
    people: new Set(sessions.flatMap(({ hours }) => hours.map(({ by }) => by))).size,
    positions: rows.length,
    original: full.length,
    mismatches: rows.reduce((sum, row) => sum + row.mismatches.length, 0),
    originality: originalityAt(record, null),
    gates,
    next: gates.find(({ reached }) => reached === null) ?? null,
    lastReached: passed.sort((a, b) => (a.date < b.date ? -1 : 1)).at(-1) ?? null,
    temporary: temporaryMeasuresAt(record, null),
  };
}
