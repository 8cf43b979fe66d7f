/** An edition of the record: all of it, or all but some kinds of matter. */
import { ledgerOf } from '../ledger/ledger.ts';
import { type CopyName, type Journal, LEAVE_OUT, type LeaveOut } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { replay } from '../replay/replay.ts';
import { WITHOUT } from './leave-out.ts';

/** What a copy leaves out where journal.yaml does not say. */
export const USUAL_COPIES: Readonly<Record<'workshop' | 'keeper' | 'record' | 'public', readonly LeaveOut[]>> = {
  workshop: [],
  keeper: ['former-private'],
  record: ['private'],
  public: ['private', 'money', 'people', 'marks'],
};

/** Private notes on parts and evenings: where things are and what they cost is the same without. */
const FOLLOWED_BY_NOTHING: ReadonlySet<LeaveOut> = new Set(['private']);

/** The copies of a journal: the usual ones, and those that it names, each with what it leaves out. */
export function copiesOf({ settings }: Pick<Journal, 'settings'>): ReadonlyMap<CopyName, readonly LeaveOut[]> {
  const named = [...settings.copies].map(([name, { leaveOut }]) => [name, LEAVE_OUT.filter((kind) => leaveOut.includes(kind))] as const);
  return new Map<CopyName, readonly LeaveOut[]>([...Object.entries(USUAL_COPIES), ...named]);
}

/**
 * Makes a copy: the journal is made smaller, and everything that follows from it is worked out again, so that nothing
 * made from the copy knows more than it does.
 *
 * @param record all there is
 * @param name one of `copiesOf`
 */
export function copyOf(record: JournalRecord, name: CopyName): JournalRecord {
  const leavesOut = copiesOf(record.journal).get(name) ?? [];
  if (leavesOut.length === 0) return { ...record, copy: { name, leavesOut } };
  const journal = leavesOut.reduce((left, kind) => WITHOUT[kind](left), record.journal);
  // Nothing was left out, so what follows is the same.
  if (journal === record.journal) return { ...record, copy: { name, leavesOut } };
  if (leavesOut.every((kind) => FOLLOWED_BY_NOTHING.has(kind))) return { ...record, journal, copy: { name, leavesOut } };
  // What is amiss in it has been told of the whole.
  const { history } = replay(journal);
  const { ledger } = ledgerOf(journal, new Set(journal.consumables.keys()));
  return { journal, history, ledger, day: record.day, copy: { name, leavesOut } };
}
