/** Statements that were closed: what they listed, charged or not, is listed once. */
import { sentBy } from '../model/sent-by.ts';
import type { FrozenLine, FrozenReceipt, FrozenStatement, IsoDate } from '../model.ts';
import type { Entry, JournalRecord, ReceivedEntry } from '../record.ts';

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

/** The ids of entries that a statement closed by the end of a day has charged, or shown as not charged. */
export function statedAlready(books: Books, at: IsoDate): ReadonlySet<string> {
  const sent = new Set(sentBy(books.journal, at));
  return new Set(chargedThen(books).flatMap(({ statement, entry }) => (sent.has(statement) && entry !== null ? entry.id : [])));
}

/**
 * Money that came in by the end of a day and that no statement closed by then has listed, each as often as the notes tell of it. One
 * whose file does not keep what was received has listed what came in on its days.
 */
export function unlistedReceipts({ journal, ledger }: Books, at: IsoDate): ReceivedEntry[] {
  const sent = sentBy(journal, at);
  const listed = sent.flatMap(({ sentWith }) => sentWith?.received.map(receiptKey) ?? []);
  const isOfOne = ({ date }: ReceivedEntry): boolean =>
    sent.some(({ sentWith, from, to }) => sentWith === null && date >= from && date <= to);
  return ledger.received.filter((one) => {
    if (one.date > at || isOfOne(one)) return false;
    const place = listed.indexOf(receiptKey(one));
    if (place >= 0) listed.splice(place, 1);
    return place < 0;
  });
}

/** Without whom it came from, which a copy does not say. */
const receiptKey = ({ date, for: what, amount }: FrozenReceipt): string => `${date} ${amount} ${what}`;
