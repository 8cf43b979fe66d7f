import { type Diagnostic, diagnostic, unknownName } from '../diagnostics/diagnostic.ts';
import type { BagFilling, IsoDate, Part, PartEntry, PartId, Place, Session, Whereabouts } from '../model.ts';
import type { BagHistory, FilledBag, Moment } from '../record.ts';
import { keptIn } from '../values/once.ts';
import type { Replay } from './replay.ts';
import { type Pile, stayOf } from './state.ts';
import { whereInWords } from './words.ts';

/** Bags as they are filled, emptied and filled again while sessions are replayed. */
export class Bags {
  readonly #fillings = new Map<number, FilledBag[]>();
  readonly #emptiedAt = new Map<number, Place>();
  /** Fillings that no note has: something was put into the bag, and that was told. */
  readonly #supposed = new Set<BagFilling>();
  /** Fillings that a part opened by going into a bag that its note does not describe. */
  readonly #opened = new Set<BagFilling>();
  /** Bags that were filled since the last session was told what they hold. */
  readonly #begun = new Set<number>();
  /** The first filling of each bag, described or opened by a part, to say "only later". */
  readonly #ever = new Map<number, First>();

  /**
   * @param sessions in order
   * @param parts those of the catalogue, some of which lay in bags at the start
   * @param arrived the day of the start
   */
  constructor(sessions: readonly Session[], parts: Iterable<Part>, arrived: IsoDate) {
    for (const session of sessions) {
      const opened = session.parts.flatMap(({ to, place }) => (typeof to?.bag === 'number' ? [{ bag: to.bag, place }] : []));
      for (const { bag, place } of [...session.bags, ...opened]) keptIn(this.#ever, bag, () => ({ session: session.id, place }));
    }
    for (const { bag, name, place } of parts) {
      if (bag === null) continue;
      const holds = [...(this.#fillings.get(bag)?.[0]?.filled.filling.holds ?? []), name];
      this.#fillings.set(bag, [{ filled: { session: null, date: arrived, filling: fillingOf(bag, holds, place) }, emptied: null }]);
    }
  }

  /** What each number held in turn. */
  history(): Map<number, BagHistory> {
    return new Map([...this.#fillings].map(([bag, fillings]) => [bag, { bag, fillings }]));
  }

  /** Fills the bags of a session. One that is full must be emptied first; the same note may do both. */
  fill(session: Session): Diagnostic[] {
    return session.bags.flatMap((filling) => {
      const { bag } = filling;
      const full = this.#full(bag);
      const empties = full?.filled.session !== session.id && session.emptied.some((one) => one.bag === bag);
      if (full?.filled.session === session.id)
        return [filledTwice(filling, full, 'Take this entry out and say it all in one, or take the next free number.')];
      const told = full !== null && this.#supposed.has(full.filled.filling);
      if (full) this.#close(bag, session);
      this.#begin(session, filling);
      return full && !empties && !told
        ? [filledTwice(filling, full, `Say \`emptied: [${bag}]\` where it was emptied, or take the next free number.`)]
        : [];
    });
  }

  #begin(session: Session, filling: BagFilling): void {
    const { id, date } = session;
    this.#begun.add(filling.bag);
    const fillings = this.#fillings.get(filling.bag) ?? [];
    this.#fillings.set(filling.bag, [...fillings, { filled: { session: id, date, filling }, emptied: null }]);
  }

  #full(bag: number): FilledBag | null {
    const last = this.#fillings.get(bag)?.at(-1);
    return last && last.emptied === null ? last : null;
  }

  #close(bag: number, { id, date }: Session): void {
    const fillings = this.#fillings.get(bag) ?? [];
    const last = fillings.at(-1);
    if (last) this.#fillings.set(bag, [...fillings.slice(0, -1), { ...last, emptied: { session: id, date } }]);
  }

  /**
   * Null when a part may go into the bag in this session: one that the note describes, or one that is not full or is
   * emptied in the note, which the part then opens. Else what stands against it; after that the bag counts as filled.
   */
  refuses(bag: number, session: Session, { place, goesBack }: PartEntry): Diagnostic | null {
    const full = this.#full(bag);
    if (full?.filled.session === session.id) return null;
    const empties = session.emptied.some((one) => one.bag === bag);
    const refused = full && !empties ? fullOf(full, place, this.#free()) : null;
    const filling = { ...fillingOf(bag, [], place), goesBack };
    (refused ? this.#supposed : this.#opened).add(filling);
    if (full && empties) this.#close(bag, session);
    this.#begin(session, filling);
    return refused;
  }

  /** When the parts of a session have been acted on: what a bag holds that was opened by what went into it. */
  describe({ journal, state }: Replay, session: Session): void {
    for (const bag of this.#begun) {
      const fillings = this.#fillings.get(bag) ?? [];
      const last = fillings.at(-1);
      if (!last || last.filled.session !== session.id || !this.#opened.has(last.filled.filling)) continue;
      const holds = state.inBag(bag).flatMap((part) => {
        const count = state
          .pilesOf(part)
          .reduce((sum, { where, count: some }) => (where.at === 'bag' && where.bag === bag ? sum + some : sum), 0);
        const { name = part, count: of = 1 } = journal.parts.get(part) ?? {};
        return of > 1 ? `${count} ${name}` : name;
      });
      const filled = { ...last.filled, filling: { ...last.filled.filling, holds } };
      this.#fillings.set(bag, [...fillings.slice(0, -1), { ...last, filled }]);
    }
    this.#begun.clear();
  }

  /** The number that no bag has had. */
  #free(): number {
    return Math.max(0, ...this.#ever.keys(), ...this.#fillings.keys()) + 1;
  }

  /** The bag of this session that says it holds what came off there; null when none or more than one does. */
  takesOff(session: Session, part: PartId): Whereabouts | null {
    const [bag, ...more] = session.bags.filter(({ off }) => off === part);
    return bag && more.length === 0 ? { at: 'bag', bag: bag.bag } : null;
  }

  /** Null when some note fills the bag, or it was full at the start. */
  unknown(bag: number, place: Place): Diagnostic | null {
    if (this.#ever.has(bag) || this.#fillings.has(bag)) return null;
    const hint = `Fill it under \`bags\` of the note it belongs to: \`- { bag: ${bag}, holds: [ … ] }\`.`;
    return diagnostic('A606', place, `No note fills a bag ${bag}.`, { ...unknownBag(bag), hint });
  }

  /** Empties the bags of a session; what still lies in one since before goes to stores, unplaced. */
  empty(replay: Replay, session: Session): Diagnostic[] {
    return session.emptied.flatMap(({ bag, place }, index) => {
      const again = session.emptied.findIndex((one) => one.bag === bag) < index;
      // A bag that this very note emptied and filled anew was closed when it was filled.
      const refilled = !again && this.#fillings.get(bag)?.at(-2)?.emptied?.session === session.id;
      const problem = refilled ? null : this.#cannotEmpty(bag, place);
      if (problem) return [problem];
      const closing = this.#full(bag);
      if (!refilled) this.#close(bag, session);
      this.#emptiedAt.set(bag, place);
      const since = closing?.filled.session === session.id && !refilled ? null : session.id;
      return tipOut(replay, session, bag, place, since);
    });
  }

  #cannotEmpty(bag: number, place: Place): Diagnostic | null {
    if (this.#full(bag)) return null;
    const before = this.#fillings.get(bag)?.at(-1)?.emptied;
    if (before) {
      const at = this.#emptiedAt.get(bag);
      const related = at ? [{ place: at, message: `Bag ${bag} was emptied here.` }] : [];
      const hint = 'Take the number out of `emptied`.';
      return diagnostic('A603', place, `Bag ${bag} was emptied before, in session ${before.session}.`, { hint, related });
    }
    const later = this.#ever.get(bag);
    const when = later ? `it is filled only later, in session ${later.session}` : 'no note fills it';
    const related = later ? [{ place: later.place, message: `Bag ${bag} is filled here.` }] : [];
    return diagnostic('A602', place, `Bag ${bag} cannot be emptied: ${when}.`, {
      ...unknownBag(bag),
      hint: 'Take the number out of `emptied`.',
      related,
    });
  }

  /** Bags of the session that name by `off` what has not come off at all. */
  idle({ state }: Replay, session: Session): Diagnostic[] {
    return session.bags.flatMap(({ bag, off, place }) => {
      if (off === null || session.parts.some(({ part, did }) => part === off && did.includes('removed'))) return [];
      const piles = state.pilesOf(off);
      if (piles.length === 0 || piles.some(({ where }) => where.at !== 'fitted')) return [];
      const there = [...new Set(piles.map(({ where }) => whereInWords(where)))].join('; ');
      const message = `Bag ${bag} holds what came off \`${off}\`, and \`${off}\` has not come off: it is ${there}.`;
      const hint = `If it lies in the bag, say so under \`parts\`: \`- { part: ${off}, did: removed, to: bag ${bag} }\`. Else name in \`holds\` what does, and leave \`off\` out.`;
      return [diagnostic('A618', place, message, { hint })];
    });
  }
}

/** Where a bag was filled first. */
interface First {
  readonly session: string;
  readonly place: Place;
}

/** A number that is still on a full bag may have been meant for another one, so nothing is added to it. */
function fullOf({ filled: { filling, session } }: FilledBag, place: Place, free: number): Diagnostic {
  const { bag } = filling;
  const message = `Nothing can go into bag ${bag} here: it was filled ${session === null ? 'at the start' : `in session ${session}`}, and not emptied since.`;
  const related = [{ place: filling.place, message: `Bag ${bag} is filled here.` }];
  const hint = `If it is another bag, take the next free number: \`to: bag ${free}\`. If bag ${bag} was empty again, say \`emptied: [${bag}]\` where that was.`;
  return diagnostic('A604', place, message, { ...unknownBag(bag), hint, related });
}

function fillingOf(bag: number, holds: readonly string[], place: Place): BagFilling {
  return { bag, holds, off: null, goesBack: null, picture: null, place };
}

function filledTwice({ bag, place }: BagFilling, { filled }: FilledBag, hint: string): Diagnostic {
  const message = `Bag ${bag} is full: it was filled ${filled.session === null ? 'at the start' : `in session ${filled.session}`}, and not emptied since.`;
  const related = [{ place: filled.filling.place, message: `Bag ${bag} was filled here.` }];
  return diagnostic('A601', place, message, { hint, related });
}

/** Nearest numbers are no likelier than others. */
function unknownBag(bag: number) {
  return unknownName('bag', String(bag), []);
}

/** @param except what this session put in stays: the bag was filled anew. Null: everything is tipped out */
function tipOut({ state }: Replay, session: Session, bag: number, place: Place, except: string | null): Diagnostic[] {
  const now: Moment = { date: session.date, session: session.id };
  const isInside = ({ where, from }: Pile) => where.at === 'bag' && where.bag === bag && (except === null || from.session !== except);
  return state.inBag(bag).flatMap((part) => {
    const inside = state.pilesOf(part).filter(isInside);
    if (inside.length === 0) return [];
    const ended = inside.map((pile) => ({ stay: stayOf(pile, pile.count, pile.which, now), order: pile.order }));
    const where = { at: 'stores', store: null } as const;
    const out = inside.map((pile): Pile => ({ ...pile, where, from: now, cause: place, order: state.nextOrder() }));
    state.commit(part, [...state.pilesOf(part).filter((pile) => !inside.includes(pile)), ...out], ended);
    const count = inside.reduce((sum, pile) => sum + pile.count, 0);
    if (state.isInDoubt(part)) return [];
    state.doubt(part);
    const message = `Bag ${bag} is emptied, and no action says where ${count} of \`${part}\` in it went. It counts as in stores, unplaced.`;
    const hint = `Say so under \`parts\`: \`- { part: ${part}, did: fitted }\` or \`did: stored\`.`;
    const related = inside.map(({ cause }) => ({ place: cause, message: `${part} went into bag ${bag} here.` }));
    return [diagnostic('A605', place, message, { hint, related })];
  });
}
