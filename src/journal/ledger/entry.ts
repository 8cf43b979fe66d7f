import type { Charge, Journal, Session } from '../model.ts';
import type { Entry } from '../record.ts';

type Figures = Pick<Entry, 'kind' | 'what' | 'net' | 'tax' | 'gross' | 'paid' | 'cost' | 'place'> & Partial<Entry>;

/** An entry of a session: what it is laid to, and its figures; all else is null. */
export function entryOf(id: string, session: Session, charge: Charge, journal: Journal, figures: Figures): Entry {
  return {
    id,
    date: session.date,
    session: session.id,
    subsystem: charge.subsystem,
    part: charge.part,
    position: charge.part === null ? null : (journal.parts.get(charge.part)?.position ?? null),
    person: null,
    minutes: null,
    taxRate: null,
    foreign: null,
    bill: null,
    consumable: null,
    ...figures,
  };
}
