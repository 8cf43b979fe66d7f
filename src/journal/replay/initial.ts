import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, Journal, Part, PartId, PositionId, Session, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { compareText } from '../values/text-order.ts';
import { type Seat, whereSeated } from './seat.ts';
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

/** Puts every part of the catalogue where it was on the day the vehicle arrived, what others are in before what is in it. */
export function asFound(journal: Journal, sessions: readonly Session[]): Initial {
  const state = new State();
  const diagnostics: Diagnostic[] = [];
  const { arrived } = journal.settings;
  const brought = broughtOn(sessions);
  const isBrought = ({ id, acquired }: Part): boolean => acquired !== null && brought.get(id)?.has(acquired) === true;
  const from: Moment = { date: arrived, session: null };
  for (const part of outermostFirst(journal)) {
    const order = state.nextOrder();
    const there = part.count - part.missing;
    const isIn = (part.found === 'fitted' || part.within !== null) && there > 0 && !isLater(part, arrived);
    const seat = isIn ? seatAsFound(journal, state, part) : null;
    const problem = seat ? overfilled(journal, state, part, seat) : null;
    if (problem) diagnostics.push(problem);
    // What is in a spare has not stood where it would on the vehicle.
    const seated = seat && !problem ? { ...seat, since: part.within === null ? order : 0 } : null;
    const where = seated
      ? whereSeated(seated, seated.carrier === null ? null : state.whereOf(seated.carrier))
      : whereFound(part, arrived, isBrought(part));
    const pile = { part: part.id, count: there, which: numbersThere(part), where, seat: seated, from, cause: part.place, order };
    const lacking = { ...pile, count: part.missing, which: part.missingWhich, where: MISSING, seat: null, order: state.nextOrder() };
    state.commit(
      part.id,
      [pile, lacking].filter(({ count }) => count > 0),
    );
  }
  const arrivals = [...journal.parts.values()]
    .flatMap((part) => (isLater(part, arrived) && !isBrought(part) ? [{ date: part.acquired as IsoDate, part }] : []))
    .sort((a, b) => compareText(a.date, b.date));
  return { state, arrivals, diagnostics };
}

/** By how deep their position lies in others; at each, parts that make it and then candidates, which only stand in. */
function outermostFirst(journal: Journal): readonly Part[] {
  const depth = new Map([...journal.positions.keys()].map((id) => [id, depthOf(journal, id)]));
  const rank = (part: Part) => 2 * (depth.get(part.position) ?? 0) + (part.makesPosition ? 0 : 1);
  return [...journal.parts.values()].sort((a, b) => rank(a) - rank(b));
}

/** How many parts a position lies in: none on the vehicle itself. A circle, which is told elsewhere, ends where it began. */
function depthOf(journal: Journal, position: PositionId): number {
  const seen = new Set<PositionId>();
  for (let at = journal.positions.get(position)?.inside; at && !seen.has(at); at = journal.positions.get(at)?.inside) seen.add(at);
  return seen.size;
}

/** As found, what is in another part is in the one that it says, in the one that stood there, or in the one that belongs there. */
function seatAsFound(journal: Journal, state: State, { position, within }: Part): Omit<Seat, 'since'> {
  if (within !== null) return { position, carrier: within };
  const outer = journal.positions.get(position)?.inside ?? null;
  return { position, carrier: outer === null || outer === position ? null : (state.holderAt(outer) ?? outer) };
}

const MISSING: Whereabouts = { at: 'missing' };

/** Which of a numbered lot were there as found. */
function numbersThere({ numbered, count, missingWhich }: Part): readonly number[] | null {
  if (numbered === null) return null;
  return Array.from({ length: count }, (_, index) => index + 1).filter((one) => !missingWhich?.includes(one));
}

/** @param brought a note of the day on which it was acquired brings it */
function whereFound(part: Part, arrived: IsoDate, brought: boolean): Whereabouts {
  if (part.found === 'missing') return MISSING;
  if (isLater(part, arrived) || brought) return { at: 'not-yet' };
  if (part.found === 'considered') return { at: 'considered' };
  return part.bag === null ? { at: 'stores', store: part.store } : { at: 'bag', bag: part.bag };
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

function overfilled(journal: Journal, state: State, part: Part, seat: Omit<Seat, 'since'>): Diagnostic | null {
  const position = journal.positions.get(part.position);
  const others = state.standingIn(seat);
  const taken = others.reduce((sum, { count }) => sum + count, 0);
  const all = taken + part.count - part.missing;
  if (!position || all <= position.count) return null;
  const related = others.map(({ part: id, cause }) => ({ place: cause, message: `${id} is fitted there as found.` }));
  const message = `As found, ${all} are fitted at \`${position.id}\`, which takes ${position.count}.`;
  const hint = 'Say `found: loose` or `found: missing` for what was not on the vehicle, or correct `count`.';
  return diagnostic('A512', part.place, message, { hint, related });
}

/** Brings in what the catalogue says was acquired on that day, as far as no note has brought it before. */
export function arrive(state: State, { date, part }: Arrival): void {
  const moment: Moment = { date, session: null };
  const where: Whereabouts = { at: 'stores', store: part.store };
  const all = state.pilesOf(part.id);
  const coming = all.filter((pile) => pile.where.at === 'not-yet');
  const ended = coming.map((pile) => ({ stay: stayOf(pile, pile.count, pile.which, moment), order: pile.order }));
  const here = coming.map((pile) => ({ ...pile, where, from: moment, cause: part.place, order: state.nextOrder() }));
  state.commit(part.id, [...all.filter((pile) => !coming.includes(pile)), ...here], ended);
}
