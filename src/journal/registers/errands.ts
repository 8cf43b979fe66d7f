import type { IsoDate, Minor, PartId } from '../model.ts';
import type { Moment } from '../record.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { deedsOf, whereaboutsAt } from './stays.ts';

/** Why so many of a part are out: what is to be done, by when and for how much, or that they are lent. */
export interface Errand {
  readonly firm: string;
  readonly since: Moment;
  readonly loan: boolean;
  readonly work: string | null;
  readonly due: IsoDate | null;
  /** The day it was due has passed. */
  readonly overdue: boolean;
  readonly quoted: Minor | null;
}

/** The errand that a part is out on at the end of a day; null when none of it is out. */
export function errandOf(record: RegisterSource, part: PartId, at: At): Errand | null {
  const date = dateOf(record, at);
  const firms = whereaboutsAt(record, part, date).flatMap(({ where }) => (where.at === 'out' ? [where.firm] : []));
  const sent = deedsOf(record, part).findLast(
    (deed) => deed.did === 'sent-out' && deed.date <= date && deed.to.at === 'out' && firms.includes(deed.to.firm),
  );
  if (sent?.to.at !== 'out') return null;
  const { how, work, due, quoted } = sent.entry;
  const since = { date: sent.date, session: sent.session };
  return { firm: sent.to.firm, since, loan: how === 'loan', work, due, overdue: due !== null && due < date, quoted };
}
