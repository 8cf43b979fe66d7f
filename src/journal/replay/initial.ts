import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, Journal, Part, PartId, Session, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { compareText } from '../values/text-order.ts';
import { State, stayOf } from './state.ts';

/** Catalogue dates on which parts arrive, oldest first. */
export interface Arrival {
  readonly date: IsoDate;
  readonly part: Part;
}

/** The as-found state, what is wrong with it, and what the catalogue says comes later. */
export interface Initial {
  readonly state: State;
  readonly arrivals: readonly Arrival[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Puts every part of the catalogue where it was on the day the vehicle arrived. */
export function asFound(journal: Journal, sessions: readonly Session[]): Initial {
  const state = new State();
  const diagnostics: Diagnostic[] = [];
  const { arrived } = journal.settings;
  const from: Moment = { date: arrived, session: null };
  for (const part of makersFirst(journal)) {
    let where = whereFound(part, arrived);
    const problem = where.at === 'fitted' ? overfilled(journal, state, part) : null;
    if (problem) {
      diagnostics.push(problem);
      where = { at: 'stores', store: part.store };
    }
    state.commit(part.id, [{ part: part.id, count: part.count, where, from, cause: part.place, order: state.nextOrder() }]);
  }
  const brought = broughtOn(sessions);
  const arrivals = [...journal.parts.values()]
    .flatMap((part) => (isLater(part, arrived) ? [{ date: part.acquired as IsoDate, part }] : []))
    .filter(({ date, part }) => !brought.get(part.id)?.has(date))
    .sort((a, b) => compareText(a.date, b.date));
  return { state, arrivals, diagnostics };
}

/** Parts that make a position, then candidates: what belongs there has the place before what only stands in. */
function makersFirst(journal: Journal): readonly Part[] {
  const parts = [...journal.parts.values()];
  return [...parts.filter((part) => part.makesPosition), ...parts.filter((part) => !part.makesPosition)];
}

function whereFound(part: Part, arrived: IsoDate): Whereabouts {
  if (part.found === 'missing') return { at: 'missing' };
  if (isLater(part, arrived)) return { at: 'not-yet' };
  if (part.found === 'considered') return { at: 'considered' };
  if (part.found === 'fitted') return { at: 'fitted', position: part.position };
  return { at: 'stores', store: part.store };
}

function isLater(part: Part, arrived: IsoDate): boolean {
  return part.found !== 'missing' && part.acquired !== null && part.acquired > arrived;
}

/** The days on which notes acquire or make a part. Of such a day the note says where it went, and the catalogue only that it came. */
function broughtOn(sessions: readonly Session[]): ReadonlyMap<PartId, ReadonlySet<IsoDate>> {
  const brought = new Map<PartId, Set<IsoDate>>();
  for (const { date, parts } of sessions) {
    for (const { part, did } of parts) {
      if (did.some((word) => word === 'acquired' || word === 'made')) brought.set(part, (brought.get(part) ?? new Set()).add(date));
    }
  }
  return brought;
}

function overfilled(journal: Journal, state: State, part: Part): Diagnostic | null {
  const position = journal.positions.get(part.position);
  const others = [...state.occupants(part.position)];
  const taken = others.reduce((sum, [, count]) => sum + count, 0);
  if (!position || taken + part.count <= position.count) return null;
  const related = others.flatMap(([id]) => {
    const place = journal.parts.get(id)?.place;
    return place ? [{ place, message: `${id} is fitted there as found.` }] : [];
  });
  const message = `As found, ${taken + part.count} are fitted at \`${position.id}\`, which takes ${position.count}.`;
  const hint = 'Say `found: loose` or `found: missing` for what was not on the vehicle, or correct `count`.';
  return diagnostic('A512', part.place, message, { hint, related });
}

/** Brings in what the catalogue says was acquired on that day, as far as no note has brought it before. */
export function arrive(state: State, { date, part }: Arrival): void {
  const moment: Moment = { date, session: null };
  const where: Whereabouts = { at: 'stores', store: part.store };
  const all = state.pilesOf(part.id);
  const coming = all.filter((pile) => pile.where.at === 'not-yet');
  const ended = coming.map((pile) => ({ stay: stayOf(pile, pile.count, moment), order: pile.order }));
  const here = coming.map((pile) => ({ ...pile, where, from: moment, cause: part.place, order: state.nextOrder() }));
  state.commit(part.id, [...all.filter((pile) => !coming.includes(pile)), ...here], ended);
}
