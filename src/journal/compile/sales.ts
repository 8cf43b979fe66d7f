/** What a note says was sold. */
import type { Charge, Sale } from '../model.ts';
import { GENERAL } from '../model.ts';
import type { SessionSource } from '../schema/session.ts';
import { readMoney } from '../values/money.ts';
import { applyTax, readTax, UNSAID } from '../values/tax.ts';
import type { NoteContext } from './session.ts';
import { each } from './work.ts';

/** Money that came in. What is sold without a part counts under `on`, else under general. */
export function salesOf(list: SessionSource['sold'], context: NoteContext): Sale[] {
  const { names, out, catalogues, place } = context;
  const { currency, currencyDigits } = catalogues.settings;
  return each(list, (entry, i) => {
    const part = entry.part === undefined ? null : names.part(entry.part, place('sold', i, 'part'));
    const charge = saleCharge(part, entry.on, context, i);
    const price = out.take(readMoney(entry.price, currency, currencyDigits), place('sold', i, 'price'));
    const tax = entry.tax === undefined ? UNSAID : out.take(readTax(entry.tax), place('sold', i, 'tax'));
    if ((entry.part !== undefined && part === null) || charge === null || price === null || tax === null) return null;
    if (price.minor < 0) {
      out.report('A808', place('sold', i, 'price'), 'The price of a sale is negative.', {
        hint: 'Money paid back goes under `bought` with `refund`.',
      });
      return null;
    }
    const what = part?.name ?? entry.what ?? 'Sale';
    return { what, charge, count: entry.count ?? null, to: entry.to ?? null, ...applyTax(price.minor, tax), place: place('sold', i) };
  });
}

function saleCharge(
  part: { id: string; subsystem: string } | null,
  on: string | undefined,
  context: NoteContext,
  i: number,
): Charge | null {
  if (part) return { part: part.id, subsystem: part.subsystem };
  return on === undefined ? { part: null, subsystem: GENERAL } : context.names.charge(on, context.place('sold', i, 'on'));
}
