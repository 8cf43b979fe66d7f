import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { PartEntry } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { formatMoney } from '../values/money.ts';

/** An entry that names several parts says the same of each, what a firm quoted too: one price for all of them is then counted for each. */
export function quotedOfEach({ journal: { sessions, settings } }: JournalRecord): Diagnostic[] {
  return sessions.flatMap(({ parts }) =>
    [...Map.groupBy(parts, ({ place: { line, column } }) => `${line}:${column}`).values()].flatMap((named): Diagnostic[] => {
      const [first] = named;
      if (first === undefined || named.length < 2 || first.quoted === null) return [];
      return [told(first, named.length, first.quoted, (sum) => formatMoney(sum, settings))];
    }),
  );
}

function told({ place }: PartEntry, count: number, quoted: number, money: (sum: number) => string): Diagnostic {
  const message = `${money(quoted)} is quoted for each of the ${count} parts that are named here, ${money(quoted * count)} in all.`;
  const hint =
    'If it is for all of them together, leave `quoted` out here and open an item that says it once: `- { id: …, kind: waiting, what: …, from: …, price: … }`. If it is for each, give each an entry of its own.';
  return diagnostic('A824', place, message, { hint });
}
