import type { IsoDate, PartId } from '../model.ts';
import type { Moment, Stay } from '../record.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { covers, deedsOf, staysOf } from './stays.ts';

/** Of what was sent out together some came back, and the rest is still there: the firm owes it, or says where it went. */
export interface CameShort {
  readonly part: PartId;
  readonly firm: string;
  readonly sent: Moment;
  readonly sentCount: number;
  readonly back: number;
  /** When the last of them came. */
  readonly lastBack: Moment;
  /** Still with the firm, and not declared gone. */
  readonly owed: number;
  /** Which of a numbered lot are owed; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
}

/** Everything that came back short and is still owed at the end of a day, in catalogue order. */
export function cameShortAt(record: RegisterSource, at: At): readonly CameShort[] {
  return lotsSentOut(record).flatMap((id) => cameShortOf(record, id, at));
}

/** Lots that were ever out with a firm: of nothing else can some have come back. */
const lotsSentOut = perRecord((record): readonly PartId[] =>
  [...record.journal.parts.values()].flatMap(({ id, count }) =>
    count > 1 && staysOf(record, id).some(({ where }) => where.at === 'out') ? [id] : [],
  ),
);

/** What of one part came back short, each sending by itself, oldest first. */
export function cameShortOf(record: RegisterSource, part: PartId, at: At): readonly CameShort[] {
  const date = dateOf(record, at);
  const out = staysOf(record, part).filter(({ where, from }) => where.at === 'out' && from.date <= date);
  const sendings = groupedBy(out, ({ where, from }) => JSON.stringify([where.at === 'out' && where.firm, from.date, from.session]));
  return [...sendings.values()].flatMap((stays) => shortOf(record, stays, date));
}

function shortOf(record: RegisterSource, stays: readonly Stay[], date: IsoDate): CameShort[] {
  const [{ part, where, from: sent } = {} as Stay] = stays;
  if (where?.at !== 'out') return [];
  const { firm } = where;
  const still = stays.filter((stay) => covers(stay, date));
  const ends = groupedBy(
    stays.filter((stay) => !covers(stay, date)),
    ({ to }) => to?.session ?? null,
  );
  const returns = [...ends].flatMap(([session, ended]) => {
    const count = Math.min(sumOf(ended), returnedIn(record, part, firm, session));
    const when = ended[0]?.to;
    return count > 0 && when ? [{ count, when }] : [];
  });
  const lastBack = returns
    .map(({ when }) => when)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .at(-1);
  const owed = sumOf(still);
  if (lastBack === undefined || owed === 0) return [];
  const which = still.every((stay) => stay.which !== null) ? still.flatMap((stay) => stay.which ?? []).sort((a, b) => a - b) : null;
  return [{ part, firm, sent, sentCount: sumOf(stays), back: sumOf(returns), lastBack, owed, which }];
}

/** How many of a part a note says came back from a firm: what is declared gone there did not. */
function returnedIn(record: RegisterSource, part: PartId, firm: string, session: string | null): number {
  return sumOf(
    deedsOf(record, part).filter(
      (deed) => deed.session === session && deed.did === 'returned' && deed.from.at === 'out' && deed.from.firm === firm,
    ),
  );
}

function sumOf(list: readonly { readonly count: number }[]): number {
  return list.reduce((sum, { count }) => sum + count, 0);
}
