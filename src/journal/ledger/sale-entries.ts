import type { Journal, Session } from '../model.ts';
import type { Entry } from '../record.ts';
import { entryOf } from './entry.ts';

/** Money that came in for what was sold: negative in both views, so that it takes off what was paid and what the job cost. */
export function saleEntries(session: Session, journal: Journal): Entry[] {
  return session.sold.map((sale, i) =>
    entryOf(`${session.id}#sold-${i + 1}`, session, sale.charge, journal, {
      kind: 'sale',
      what: sale.what,
      net: -sale.net || 0,
      tax: -sale.tax || 0,
      gross: -sale.gross || 0,
      paid: true,
      cost: true,
      place: sale.place,
    }),
  );
}
