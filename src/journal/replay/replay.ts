import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Journal, Origin, PartId, PositionId, Session } from '../model.ts';
import type { History, Stay } from '../record.ts';
import { applyEntry } from './apply.ts';
import { Bags } from './bags.ts';
import { Decisions } from './decisions.ts';
import { withExchange } from './exchanged.ts';
import { arrive, asFound } from './initial.ts';
import { Items } from './items.ts';
import { Milestones } from './milestones.ts';
import { momentOrder, sessionRanks, sessionsInOrder } from './order.ts';
import type { State } from './state.ts';

/** What is carried from session to session. */
export interface Replay {
  readonly journal: Journal;
  readonly state: State;
  readonly bags: Bags;
  /** What the notes so far have come to believe of origins; of others the catalogue says it. */
  readonly origins: Map<PartId, Origin>;
}

/**
 * Replays a journal: the present is the as-found state with every action of every session in order.
 * In a session, bags are filled first, then parts are acted on as written, bags emptied, items opened,
 * deferred and closed, milestones reached, and decisions taken. What cannot be is told once, and then believed.
 */
export function replay(journal: Journal): { history: History; diagnostics: readonly Diagnostic[] } {
  const sessions = sessionsInOrder(journal.sessions);
  const { history, diagnostics } = replaySessions(journal, sessions);
  return { history, diagnostics: withExchange(sessions, diagnostics, (others) => replaySessions(journal, others).diagnostics) };
}

function replaySessions(journal: Journal, sessions: readonly Session[]): { history: History; diagnostics: Diagnostic[] } {
  const { state, arrivals, diagnostics: found } = asFound(journal, sessions);
  const diagnostics = [...found];
  const bags = new Bags(sessions, journal.parts.values(), journal.settings.arrived);
  const items = new Items(sessions);
  const milestones = new Milestones(journal.milestones, items);
  const decisions = new Decisions(journal, state);
  const context: Replay = { journal, state, bags, origins: new Map() };
  const coming = arrivals.values();
  let next = coming.next();
  for (const session of sessions) {
    for (; !next.done && next.value.date <= session.date; next = coming.next()) arrive(state, next.value);
    for (const { part, origin } of session.attributed) context.origins.set(part, origin);
    diagnostics.push(...bags.fill(session));
    for (const entry of session.parts) {
      diagnostics.push(...applyEntry(context, session, entry));
    }
    bags.describe(context, session);
    diagnostics.push(
      ...bags.idle(context, session),
      ...bags.empty(context, session),
      ...milestones.tooLate(session),
      ...items.apply(session),
    );
    diagnostics.push(...milestones.apply(session), ...decisions.apply(session));
  }
  for (; !next.done; next = coming.next()) arrive(state, next.value);
  const stays = state.stays();
  const history: History = {
    stays,
    occupants: occupantsOf(journal, stays),
    deeds: state.deeds,
    decisions: decisions.history,
    aside: decisions.aside,
    bags: bags.history(),
    items: items.history,
    reached: milestones.history,
  };
  return { history, diagnostics };
}

/** Stays on the vehicle by position, in order of their beginning. */
function occupantsOf(journal: Journal, stays: ReadonlyMap<PartId, readonly Stay[]>): Map<PositionId, Stay[]> {
  const occupants = new Map<PositionId, Stay[]>([...journal.positions.keys()].map((id) => [id, []]));
  for (const list of stays.values()) {
    for (const stay of list) if (stay.where.at === 'fitted') occupants.get(stay.where.position)?.push(stay);
  }
  const order = momentOrder(sessionRanks(journal.sessions));
  for (const list of occupants.values()) list.sort((a, b) => order(a.from, b.from));
  return occupants;
}
