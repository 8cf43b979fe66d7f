import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Place, Session } from '../model.ts';
import type { BagHistory, Moment } from '../record.ts';
import type { Replay } from './replay.ts';
import { stayOf } from './state.ts';

/** Bags as they are filled and emptied while sessions are replayed. */
export class Bags {
  readonly history = new Map<number, BagHistory>();
  readonly #emptiedAt = new Map<number, Place>();
  /** The first filling of each bag in the whole journal, to say "only later". */
  readonly #ever = new Map<number, { session: Session; place: Place }>();

  constructor(sessions: readonly Session[]) {
    for (const session of sessions) {
      for (const { bag, place } of session.bags) if (!this.#ever.has(bag)) this.#ever.set(bag, { session, place });
    }
  }

  /** Fills the bags of a session; a number that was used before is refused. */
  fill(session: Session): Diagnostic[] {
    return session.bags.flatMap((filling) => {
      const before = this.history.get(filling.bag);
      if (!before) {
        const { id, date } = session;
        this.history.set(filling.bag, { bag: filling.bag, filled: { session: id, date, filling }, emptied: null });
        return [];
      }
      const message = `Bag ${filling.bag} was filled before, in session ${before.filled.session}. A number is used once.`;
      const related = [{ place: before.filled.filling.place, message: `Bag ${filling.bag} was first filled here.` }];
      return [diagnostic('A601', filling.place, message, { hint: 'Take the next free number.', related })];
    });
  }

  /** Null when a part may go into the bag in this session, else what stands against it. */
  refuses(bag: number, session: Session, place: Place): Diagnostic | null {
    const ever = this.#ever.get(bag);
    if (!ever) return this.unknown(bag, place);
    if (this.history.get(bag)?.filled.session === session.id) return null;
    const message = `Nothing can go into bag ${bag} here: it is filled in session ${ever.session.id}, and only that note puts parts into it.`;
    const related = [{ place: ever.place, message: `Bag ${bag} is filled here.` }];
    return diagnostic('A604', place, message, { hint: 'Fill a new bag under `bags` of this note.', related });
  }

  /** Null when some note fills the bag. */
  unknown(bag: number, place: Place): Diagnostic | null {
    if (this.#ever.has(bag)) return null;
    const hint = `Fill it under \`bags\` of the note it belongs to: \`- { bag: ${bag}, holds: [ … ] }\`.`;
    return diagnostic('A606', place, `No note fills a bag ${bag}.`, { hint });
  }

  /** Empties the bags of a session; what still lies in one goes to stores, unplaced. */
  empty(replay: Replay, session: Session): Diagnostic[] {
    return session.emptied.flatMap(({ bag, place }) => {
      const problem = this.#cannotEmpty(bag, place);
      if (problem) return [problem];
      const known = this.history.get(bag) as BagHistory;
      this.history.set(bag, { ...known, emptied: { session: session.id, date: session.date } });
      this.#emptiedAt.set(bag, place);
      return tipOut(replay, session, bag, place);
    });
  }

  #cannotEmpty(bag: number, place: Place): Diagnostic | null {
    const known = this.history.get(bag);
    if (!known) {
      const later = this.#ever.get(bag);
      const when = later ? `it is filled only later, in session ${later.session.id}` : 'no note fills it';
      const related = later ? [{ place: later.place, message: `Bag ${bag} is filled here.` }] : [];
      return diagnostic('A602', place, `Bag ${bag} cannot be emptied: ${when}.`, { related });
    }
    if (!known.emptied) return null;
    const before = this.#emptiedAt.get(bag);
    const related = before ? [{ place: before, message: `Bag ${bag} was emptied here.` }] : [];
    const message = `Bag ${bag} was emptied before, in session ${known.emptied.session}.`;
    return diagnostic('A603', place, message, { related });
  }
}

function tipOut({ state }: Replay, session: Session, bag: number, place: Place): Diagnostic[] {
  const now: Moment = { date: session.date, session: session.id };
  return state.inBag(bag).map((part) => {
    const inside = state.pilesOf(part).filter(({ where }) => where.at === 'bag' && where.bag === bag);
    const rest = state.pilesOf(part).filter((pile) => !inside.includes(pile));
    const count = inside.reduce((sum, pile) => sum + pile.count, 0);
    const ended = inside.map((pile) => ({ stay: stayOf(pile, pile.count, now), order: pile.order }));
    const where = { at: 'stores', store: null } as const;
    state.commit(part, [...rest, { part, count, where, from: now, cause: place, order: state.nextOrder() }], ended);
    const message = `Bag ${bag} is emptied, and no action says where ${count} of \`${part}\` in it went. It counts as in stores, unplaced.`;
    const hint = `Say so under \`parts\`: \`- { part: ${part}, did: fitted }\` or \`did: stored\`.`;
    const related = inside.map(({ cause }) => ({ place: cause, message: `${part} went into bag ${bag} here.` }));
    return diagnostic('A605', place, message, { hint, related });
  });
}
