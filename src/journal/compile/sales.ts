/** What a note says was sold. */
import type { Sale } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import { readMoney } from '../values/money.ts';
import { applyTax, readTax, UNSAID } from '../values/tax.ts';
import { believed, given } from './believed.ts';
import { UNDER_GENERAL } from './context.ts';
import type { NoteAtHand } from './session.ts';

/** Money that came in. What is sold without a part counts under `on`, else under general. */
export function salesOf(list: NoteFields['sold'], { names, out, catalogues }: NoteAtHand): Sale[] {
  const { currency, currencyDigits } = catalogues.settings;
  return believed(list, ({ says, place, placeOf }) => {
    const part = given(says.part, (id) => names.part(id, placeOf('part')));
    const on = part ? { part: part.id, subsystem: part.subsystem } : given(says.on, (id) => names.charge(id, placeOf('on')));
    const price = out.take(readMoney(says.price, currency, currencyDigits), placeOf('price'));
    const tax = says.tax === null ? UNSAID : out.take(readTax(says.tax), placeOf('tax'));
    const unknown = (says.part !== null && part === null) || (says.on !== null && on === null);
    if (unknown || price === null || tax === null) return null;
    if (price.minor < 0) {
      out.report('A808', placeOf('price'), 'The price of a sale is negative.', {
        hint: 'Money paid back goes under `bought` with `refund`.',
      });
      return null;
    }
    const { count, to } = says;
    const charge = on ?? UNDER_GENERAL;
    const money = { ...applyTax(price.minor, tax), taxed: tax, foreign: price.foreign };
    return { what: part?.name ?? says.what ?? 'Sale', charge, count, to, ...money, place };
  });
}
