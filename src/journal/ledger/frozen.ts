/** Statements that were closed: what they charged stays charged, and is charged once. */
import type { FrozenLine, FrozenStatement } from '../model.ts';
import type { Entry, JournalRecord } from '../record.ts';

type Books = Pick<JournalRecord, 'journal' | 'ledger'>;

/** The statement that was closed last; null before the first. */
export function lastClosed(statements: readonly FrozenStatement[]): FrozenStatement | null {
  return statements.at(-1) ?? null;
}

/** A line of a closed statement, and the entry that it charged as the notes have it now. */
export interface ChargedThen {
  readonly statement: FrozenStatement;
  readonly line: FrozenLine;
  /** Null: the notes no longer tell of it. */
  readonly entry: Entry | null;
}

/**
 * Every line of every closed statement with its entry: that of the same id, where it is still the same work; else one
 * of the same note with the same words, which moved when another was written before it; else what has the id now.
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
    return entry && isSameWork(entry, line) ? take(entry) : null;
  });
  const moved = lines.map(({ line }, i) => same[i] ?? take([...open.values()].find((entry) => isMoved(entry, line))));
  return lines.map((each, i) => ({ ...each, entry: moved[i] ?? take(open.get(each.line.entry)) }));
}

function isMoved(entry: Entry, line: FrozenLine): boolean {
  return line.entry.startsWith(`${entry.session}#`) && isSameWork(entry, line);
}

/** Whether an entry is what a line charged, to the penny and the minute. */
export function isSameWork({ kind, what, date, minutes, gross }: Entry, line: FrozenLine): boolean {
  return kind === line.kind && what === line.what && date === line.date && minutes === line.minutes && gross === line.cost;
}

/** The ids of entries that a closed statement has charged. */
export function chargedAlready(books: Books): ReadonlySet<string> {
  return new Set(chargedThen(books).flatMap(({ entry }) => entry?.id ?? []));
}
