import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { ActionWord, PartEntry, PartId, Session } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { moves } from './actions.ts';
import { choose, type Draft, firstOf, inOrderOf, type Share, without } from './choose.ts';
import { destinationOf, idleDestination, type Target } from './destinations.ts';
import { originalsGone } from './gone-with.ts';
import { idleField } from './idle-fields.ts';
import { noRoom } from './refusals.ts';
import type { Replay } from './replay.ts';
import { type Pile, stayOf } from './state.ts';
import { sameWhere } from './words.ts';

/** A word of an entry, and when it was done. */
export interface Act {
  readonly session: Session;
  readonly entry: PartEntry;
  readonly word: ActionWord;
}

/**
 * Applies one entry under `parts`, its words in order. An entry that cannot be is told once and then believed: what it
 * speaks of is where the entry puts it.
 *
 * @returns what is wrong with it, and what it takes along without saying so
 */
export function applyEntry(replay: Replay, session: Session, entry: PartEntry): readonly Diagnostic[] {
  const told: Diagnostic[] = [];
  const tell = (found: Diagnostic | null) => {
    if (!found || (found.severity === 'error' && (told.length > 0 || replay.state.isInDoubt(entry.part)))) return;
    told.push(found);
  };
  tell(idleDestination(replay.journal, entry));
  tell(idleField(entry));
  let draft: Draft = { piles: replay.state.pilesOf(entry.part), ended: [], deeds: [], hand: null };
  for (const word of entry.did) draft = applyWord(replay, { session, entry, word }, draft, tell);
  const wrong = told.some(({ severity }) => severity === 'error');
  const first = wrong ? sameBefore(session, entry) : null;
  if (first) return [doubled(entry, first)];
  if (entry.did.length > 0) replay.state.commit(entry.part, draft.piles, draft.ended, draft.deeds);
  if (wrong) replay.state.doubt(entry.part);
  return told;
}

/** The entry before this one in its note that is about the same part, when it says the same of it. */
function sameBefore({ parts }: Session, entry: PartEntry): PartEntry | null {
  const before = parts.slice(0, parts.indexOf(entry)).findLast(({ part }) => part === entry.part);
  return before && sayingOf(before) === sayingOf(entry) ? before : null;
}

function sayingOf({ did, count, which, to, from, at, into, how, note }: PartEntry): string {
  return JSON.stringify([did, count, which, to, from, at, into, how, note]);
}

function doubled(entry: PartEntry, first: PartEntry): Diagnostic {
  const message = `This entry stands twice in the note: \`${entry.part}\` was ${entry.did.join(', ')} before.`;
  const related = [{ place: first.place, message: 'It says the same as this one.' }];
  return diagnostic('A521', entry.place, message, { hint: 'Take it out; or say what is different about it.', related });
}

type Tell = (found: Diagnostic | null) => void;

function applyWord(replay: Replay, act: Act, draft: Draft, tell: Tell): Draft {
  const { shares, problem } = choose(replay, act, draft);
  // A place that was taken has been told of: the same note takes off below what it said above to be out of the way.
  if (act.word !== 'removed' || !replay.state.hasMadeRoom(act.entry.part, act.session.id)) tell(problem);
  if (!moves(act.word)) {
    const done = shares.map((share) => deedOf(replay, act, share, share.pile.where));
    return { ...draft, deeds: [...draft.deeds, ...done] };
  }
  const target = destinationOf(replay, act.session, act.entry, act.word);
  tell(target.problem);
  if (act.word === 'gone') tell(originalsGone(replay, act.entry));
  const fitting = target.seat ? makeRoom(replay, act, target.seat, shares, draft, tell) : shares;
  return moved(replay, act, draft, fitting, target);
}

/**
 * Takes out of a seat what others stand in the way of the shares. Where nothing does, nothing is told.
 *
 * @returns the shares as far as they then fit
 */
function makeRoom(
  replay: Replay,
  act: Act,
  seat: NonNullable<Target['seat']>,
  shares: readonly Share[],
  draft: Draft,
  tell: Tell,
): readonly Share[] {
  const takes = replay.journal.positions.get(seat.position)?.count ?? 0;
  const isThere = (pile: Pile) => pile.seat?.position === seat.position && pile.seat.carrier === seat.carrier;
  const coming = shares.filter(({ pile }) => !isThere(pile));
  const others = replay.state.standingIn(seat).filter(({ part }) => part !== act.entry.part);
  const own = draft.piles.filter(isThere);
  let over = sumOf(others) + sumOf(own) + sumOf(coming) - takes;
  if (over <= 0) return shares;
  const standing = [...others, ...own];
  tell(noRoom(act.entry, seat.position, takes, sumOf(coming), standing, takenOffBelow(act, standing)));
  for (const pile of others) {
    if (over <= 0) break;
    takeOut(replay, act, pile, Math.min(over, pile.count));
    over -= pile.count;
  }
  return over > 0 ? [...shares.filter(({ pile }) => isThere(pile)), ...firstOf(coming, sumOf(coming) - over)] : shares;
}

/** The part in the way that the same note takes off after this entry; null where it does not. */
function takenOffBelow({ session: { parts }, entry }: Act, standing: readonly Pile[]): PartId | null {
  const below = parts.slice(parts.indexOf(entry) + 1).filter(({ did }) => did.includes('removed'));
  return standing.find(({ part }) => below.some((one) => one.part === part))?.part ?? null;
}

/** Puts so many of a pile into stores, unplaced: the note says that something else stands where they stood. */
function takeOut(replay: Replay, { session, entry }: Act, pile: Pile, count: number): void {
  const from = momentOf(session);
  const which = pile.which?.slice(0, count) ?? null;
  const all = replay.state.pilesOf(pile.part);
  const rest = all.flatMap((one) => (one === pile ? without(pile, count, which) : [one]));
  const where = { at: 'stores', store: null } as const;
  const out: Pile = { ...pile, count, which, where, seat: null, from, cause: entry.place, order: replay.state.nextOrder() };
  replay.state.commit(pile.part, [...rest, out], [{ stay: stayOf(pile, count, which, from), order: pile.order }]);
  replay.state.makeRoom(pile.part, session.id);
}

/** Moves the shares to the target. What is there already stays as it is. */
function moved(replay: Replay, act: Act, draft: Draft, shares: readonly Share[], { where, seat }: Target): Draft {
  const from = momentOf(act.session);
  const leaving = shares.filter(({ pile }) => !sameWhere(pile.where, where));
  const piles = draft.piles.flatMap((pile) => {
    const share = leaving.find((one) => one.pile === pile);
    return share ? without(pile, share.count, share.which) : [pile];
  });
  const hand = new Set(shares.filter((share) => !leaving.includes(share)).map(({ pile }) => pile));
  if (leaving.length > 0) {
    const order = replay.state.nextOrder();
    const which = inOrderOf(leaving.flatMap((share) => share.which ?? []));
    const arrived: Pile = {
      part: act.entry.part,
      count: sumOf(leaving),
      which: leaving[0]?.which ? which : null,
      where,
      seat: seat && { ...seat, since: order },
      from,
      cause: act.entry.place,
      order,
    };
    piles.push(arrived);
    hand.add(arrived);
  }
  const ended = leaving.map(({ pile, count, which }) => ({ stay: stayOf(pile, count, which, from), order: pile.order }));
  const deeds = shares.map((share) => deedOf(replay, act, share, where));
  return { piles, ended: [...draft.ended, ...ended], deeds: [...draft.deeds, ...deeds], hand };
}

/** Work on a part off the vehicle concerns the position it belongs to. */
function deedOf(replay: Replay, { session, entry, word: did }: Act, { pile, count, which }: Share, to: Target['where']): Deed {
  const { part } = entry;
  const { where: from } = pile;
  const stood = [to, from].find((where) => where.at === 'fitted' || where.at === 'in');
  const position = stood?.position ?? replay.journal.parts.get(part)?.position ?? part;
  return { part, did, count, which, ...momentOf(session), session: session.id, from, to, position, entry };
}

function momentOf({ date, id }: Session): Moment {
  return { date, session: id };
}

function sumOf(list: readonly { readonly count: number }[]): number {
  return list.reduce((sum, { count }) => sum + count, 0);
}
