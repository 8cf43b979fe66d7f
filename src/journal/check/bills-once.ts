import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Bill } from '../model.ts';
import type { JournalRecord } from '../record.ts';

/** A paper of one seller and one total is one bill; within a note it may hold several equal lines, of different things. */
export function billsOnce({ ledger }: JournalRecord): Diagnostic[] {
  const papered = ledger.bills.filter(({ paper }) => paper !== null);
  const groups = Map.groupBy(papered, ({ paper, from, gross }) => JSON.stringify([paper, from, gross]));
  return [...groups.values()].flatMap(([first, ...more]) =>
    first ? more.filter((bill) => isAgain(bill, first)).map((bill) => again(bill, first)) : [],
  );
}

function isAgain(bill: Bill, first: Bill): boolean {
  const whats = (one: Bill): string => one.lines.map(({ what }) => what).join('\n');
  return bill.session !== first.session || whats(bill) === whats(first);
}

function again({ place, paper, from }: Bill, first: Bill): Diagnostic {
  const message = `A bill${from === null ? '' : ` from ${from}`} of the same total and the same paper, ${paper}, is in the journal already.`;
  const related = [{ place: first.place, message: 'The first of them is here.' }];
  return diagnostic('A817', place, message, { hint: 'Take one of them out, or give each its own paper.', related });
}
