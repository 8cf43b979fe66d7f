import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { ActionWord, IsoDate, Journal, Part, PartId, Session, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { compareText } from './order.ts';
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
  const brought = broughtBySessions(sessions);
  const { arrived } = journal.settings;
  const from: Moment = { date: arrived, session: null };
  for (const part of makersFirst(journal)) {
    let where = whereFound(part, brought.has(part.id), arrived);
    const problem = where.at === 'fitted' ? overfilled(journal, state, part) : null;
    if (problem) {
      diagnostics.push(problem);
      where = { at: 'stores', store: part.store };
    }
    state.commit(part.id, [{ part: part.id, count: part.count, where, from, cause: part.place, order: state.nextOrder() }]);
  }
  const arrivals = [...journal.parts.values()]
    .flatMap((part) => (isLater(part, arrived) && !brought.has(part.id) ? [{ date: part.acquired as IsoDate, part }] : []))
    .sort((a, b) => compareText(a.date, b.date));
  return { state, arrivals, diagnostics };
}

/** Parts that make a position, then candidates: what belongs there has the place before what only stands in. */
function makersFirst(journal: Journal): readonly Part[] {
  const parts = [...journal.parts.values()];
  return [...parts.filter((part) => part.makesPosition), ...parts.filter((part) => !part.makesPosition)];
}

function whereFound(part: Part, brought: boolean, arrived: IsoDate): Whereabouts {
  if (part.found === 'missing') return { at: 'missing' };
  if (brought || isLater(part, arrived)) return { at: 'not-yet' };
  if (part.found === 'fitted') return { at: 'fitted', position: part.position };
  return { at: 'stores', store: part.store };
}

function isLater(part: Part, arrived: IsoDate): boolean {
  return part.found !== 'missing' && part.acquired !== null && part.acquired > arrived;
}

/** Parts that a session acquires or makes, unless an earlier session let them go: those were here before. */
function broughtBySessions(sessions: readonly Session[]): ReadonlySet<PartId> {
  const brought = new Set<PartId>();
  const wentFirst = new Set<PartId>();
  const does = (did: readonly ActionWord[], ...words: ActionWord[]) => words.some((word) => did.includes(word));
  for (const session of sessions) {
    for (const { part, did } of session.parts) {
      if (does(did, 'acquired', 'made') && !wentFirst.has(part)) brought.add(part);
      if (does(did, 'gone') && !brought.has(part)) wentFirst.add(part);
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

/** Brings in what the catalogue says was acquired on that day. */
export function arrive(state: State, { date, part }: Arrival): void {
  const moment: Moment = { date, session: null };
  const where: Whereabouts = { at: 'stores', store: part.store };
  const waiting = state.pilesOf(part.id);
  const ended = waiting.map((pile) => ({ stay: stayOf(pile, pile.count, moment), order: pile.order }));
  const piles = waiting.map((pile) => ({ ...pile, where, from: moment, cause: part.place, order: state.nextOrder() }));
  state.commit(part.id, piles, ended);
}
