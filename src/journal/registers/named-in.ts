import type { Charge, ConsumableId, PartId, ProseLink, Session } from '../model.ts';
import type { Stay } from '../record.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';

/** Every part that a session names in any of its fields or in its prose, and what lay in the bags it names. */
export function partsNamedIn(record: RegisterSource, session: Session): ReadonlySet<PartId> {
  const { items } = record.history;
  const named = [
    ...session.parts.map(({ part }) => part),
    ...session.decisions.flatMap(({ part, with: other }) => (other === null ? [part] : [part, other])),
    ...session.methods.flatMap(({ on }) => on),
    ...session.measured.map(({ part }) => part),
    ...chargesIn(session).flatMap(({ part }) => part ?? []),
    ...[...session.closes, ...session.defers].flatMap(({ id }) => items.get(id)?.opening.on?.part ?? []),
    ...session.pictures.flatMap(({ shows }) => shows),
    ...session.film.flatMap(({ marks }) => marks.flatMap(({ parts }) => parts)),
    ...session.papers.flatMap(({ shows }) => shows),
    ...session.bags.flatMap(({ off }) => off ?? []),
    ...session.links.flatMap((link) => partsOfLink(record, link)),
    ...bagsIn(session).flatMap((bag) => contentsOn(record, bag, session)),
  ];
  return new Set(named.filter((part) => record.journal.parts.has(part)));
}

/** Every consumable that a session names: used, counted, bought, tried, or linked in its prose. */
export function consumablesNamedIn(session: Session): ReadonlySet<ConsumableId> {
  return new Set([
    ...session.used.map(({ consumable }) => consumable),
    ...session.counted.map(({ consumable }) => consumable),
    ...session.bills.flatMap(({ lines }) => lines.flatMap(({ consumable }) => consumable ?? [])),
    ...session.methods.flatMap((method) => method.with),
    ...session.links.flatMap(({ scheme, id }) => (scheme === 'consumable' ? [id] : [])),
  ]);
}

function chargesIn(session: Session): readonly Charge[] {
  return [
    ...session.hours.map(({ on }) => on),
    ...session.used.map(({ on }) => on),
    ...session.sold.map(({ charge }) => charge),
    ...session.bills.flatMap(({ lines }) => lines.flatMap(({ charges }) => charges.map(({ charge }) => charge))),
    ...session.opens.flatMap(({ on }) => on ?? []),
  ];
}

function partsOfLink({ history }: RegisterSource, { scheme, id }: ProseLink): readonly PartId[] {
  if (scheme === 'part') return [id];
  return scheme === 'item' ? [history.items.get(id)?.opening.on?.part ?? []].flat() : [];
}

function bagsIn(session: Session): readonly number[] {
  return [
    ...session.bags.map(({ bag }) => bag),
    ...session.emptied.map(({ bag }) => bag),
    ...session.links.flatMap(({ scheme, id }) => (scheme === 'bag' ? [Number(id)] : [])),
  ];
}

const staysByBag = perRecord((record) => {
  const stays = [...record.history.stays.values()].flat();
  return groupedBy(stays, ({ where }: Stay) => (where.at === 'bag' ? where.bag : null));
});

/** What was in a bag at any time of a session's day. */
function contentsOn(record: RegisterSource, bag: number, { date }: Session): readonly PartId[] {
  const stays = staysByBag(record).get(bag) ?? [];
  return stays.filter(({ from, to }) => from.date <= date && (to === null || to.date >= date)).map(({ part }) => part);
}
