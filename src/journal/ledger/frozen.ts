/** Statements that were closed: what they listed, charged or not, is listed once. */
import type { FrozenLine, FrozenStatement } from '../model.ts';
import type { Entry, JournalRecord } from '../record.ts';

type Books = Pick<JournalRecord, 'journal' | 'ledger'>;

/** The statement that was closed last; null before the first. */
export function lastClosed(statements: readonly FrozenStatement[]): FrozenStatement | null {
  return statements.at(-1) ?? null;
}

/** A line of a closed statement, and the entry that it listed as the notes have it now. */
export interface ChargedThen {
  readonly statement: FrozenStatement;
  readonly line: FrozenLine;
  /** Null: the notes no longer tell of it. */
  readonly entry: Entry | null;
}

/**
 * Every line of every closed statement with its entry: that of the same id, where it is still the same work; else one
 * of the same note with the same words, which moved when another was written before it; else what has the id now. A line that was
 * not charged is of no entry that is to be charged now.
 */
export function chargedThen({ journal, ledger }: Books): ChargedThen[] {
  if (journal.statements.length === 0) return [];
  const open = new Map(ledger.entries.filter(({ cost }) => cost).map((entry) => [entry.id, entry]));
  const take = (entry: Entry | undefined): Entry | null => {
    if (entry) open.delete(entry.id);
    return entry ?? null;
  };
  const lines = journal.statements.flatMap((statement) => statement.lines.map((line) => ({ statement, line })));
  const same = lines.map(({ line }) => {
    const entry = open.get(line.entry);
    return entry && isSameWork(entry, line) && mayBe(entry, line) ? take(entry) : null;
  });
  const moved = lines.map(({ line }, i) => same[i] ?? take([...open.values()].find((entry) => isMoved(entry, line) && mayBe(entry, line))));
  return lines.map((each, i) => {
    const now = open.get(each.line.entry);
    return { ...each, entry: moved[i] ?? (now && mayBe(now, each.line) ? take(now) : null) };
  });
}

function mayBe(entry: Entry, line: FrozenLine): boolean {
  return line.notCharged === null || entry.notCharged !== null;
}

function isMoved(entry: Entry, line: FrozenLine): boolean {
  return line.entry.startsWith(`${entry.session}#`) && isSameWork(entry, line);
}

/** Whether an entry is what a line listed, to the penny and the minute. */
export function isSameWork({ kind, what, date, minutes, gross }: Entry, line: FrozenLine): boolean {
  return kind === line.kind && what === line.what && date === line.date && minutes === line.minutes && gross === line.cost;
}

/** The ids of entries that a closed statement has charged, or shown as not charged. */
export function statedAlready(books: Books): ReadonlySet<string> {
  return new Set(chargedThen(books).flatMap(({ entry }) => entry?.id ?? []));
}
