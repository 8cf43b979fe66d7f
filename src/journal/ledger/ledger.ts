/** The ledger: every session's hours and money as entries, in order, and the stock behind the consumables. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Journal } from '../model.ts';
import type { Entry, Ledger } from '../record.ts';
import { billEntries } from './bill-entries.ts';
import { labourEntries } from './labour-entries.ts';
import { saleEntries } from './sale-entries.ts';
import { stockRoom } from './stock.ts';

/**
 * Books a journal. The order of entries is that of the sessions, then as written.
 *
 * @returns the ledger, and A805 for every use beyond the stock, A810 for work without a rate
 */
export function ledgerOf(journal: Journal): { ledger: Ledger; diagnostics: Diagnostic[] } {
  const entries: Entry[] = [];
  const diagnostics: Diagnostic[] = [];
  const room = stockRoom(journal);
  for (const session of journal.sessions) {
    const labour = labourEntries(session, journal);
    entries.push(...labour.entries, ...billEntries(session, journal), ...saleEntries(session, journal));
    const used = room.book(session);
    entries.push(...used.entries);
    diagnostics.push(...labour.diagnostics, ...used.diagnostics);
  }
  const bills = journal.sessions.flatMap((session) => session.bills);
  return { ledger: { entries, bills, stock: room.accounts() }, diagnostics };
}
