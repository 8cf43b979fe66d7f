import type { Session } from '../model.ts';
import { compareNumbered, compareText } from '../values/text-order.ts';

/** The order in which a journal happened: by date, then by session id with numbers compared as numbers. */
export function inSessionOrder(a: Pick<Session, 'date' | 'id'>, b: Pick<Session, 'date' | 'id'>): number {
  return compareText(a.date, b.date) || compareNumbered(a.id, b.id);
}
