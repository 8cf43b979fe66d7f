import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { ActionWord, Destination, PartEntry, Session, Whereabouts } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { mayComeBack, moves, suits } from './actions.ts';
import { destinationOf, destinationText, idleDestination, isAt } from './destinations.ts';
import { noRoom, notThere, tooMany, wrongState } from './refusals.ts';
import type { Replay } from './replay.ts';
import { type Ended, type Pile, stayOf } from './state.ts';
import { sameWhere } from './words.ts';

/** A part's piles while an entry is applied; nothing is final until all of its words are. */
interface Draft {
  readonly piles: readonly Pile[];
  readonly ended: readonly Ended[];
  readonly deeds: readonly Deed[];
  /** The pieces the entry has moved: its later words are about the same ones. Null before it moves any. */
  readonly hand: ReadonlySet<Pile> | null;
}

/** So many of a pile. */
interface Share {
  readonly pile: Pile;
  readonly count: number;
}

/**
 * Applies one entry under `parts`, its words in order. An entry that cannot be changes nothing at all.
 *
 * @returns what stands against it, or null when it took effect
 */
export function applyEntry(replay: Replay, session: Session, entry: PartEntry): Diagnostic | null {
  const idle = idleDestination(entry);
  if (idle) return idle;
  let draft: Draft = { piles: replay.state.pilesOf(entry.part), ended: [], deeds: [], hand: null };
  for (const word of entry.did) {
    const next = applyWord(replay, session, entry, word, draft);
    if ('code' in next) return next;
    draft = next;
  }
  if (entry.did.length > 0) replay.state.commit(entry.part, draft.piles, draft.ended, draft.deeds);
  return null;
}

function applyWord(replay: Replay, session: Session, entry: PartEntry, word: ActionWord, draft: Draft): Draft | Diagnostic {
  const shares = choose(replay, entry, word, draft);
  if ('code' in shares) return shares;
  if (!moves(word)) {
    const done = shares.map((share) => deedOf(replay, session, entry, word, share, share.pile.where));
    return { ...draft, deeds: [...draft.deeds, ...done] };
  }
  const to = destinationOf(replay, session, entry, word);
  if ('code' in to) return to;
  const full = to.at === 'fitted' ? overfills(replay, entry, to.position, sumOf(shares), draft) : null;
  return full ?? moved(replay, session, entry, word, draft, shares, to);
}

/** The pieces a word is about: in the state it needs, from where the entry says, oldest stay first. */
function choose(replay: Replay, entry: PartEntry, word: ActionWord, draft: Draft): readonly Share[] | Diagnostic {
  const all = draft.piles;
  let piles = draft.hand ? all.filter((pile) => draft.hand?.has(pile)) : all;
  const source = draft.hand ? null : sourceOf(entry);
  if (source) {
    const unknown = source.bag === null ? null : replay.bags.unknown(source.bag, entry.place);
    if (unknown) return unknown;
    piles = piles.filter(({ where }) => isAt(source, where));
    if (piles.length === 0) return notThere(entry, destinationText(source), all);
  }
  const able = ableTo(replay, piles, entry, word, draft);
  if (able.length === 0) return wrongState(entry, word, piles);
  const count = able.reduce((sum, pile) => sum + pile.count, 0);
  if (entry.count !== null && entry.count > count) return tooMany(entry, word, count, all);
  return take(able, entry.count ?? count);
}

/** Those that the action may be done to. What is acquired `from` somebody may be what had gone: it comes after what never was here. */
function ableTo(replay: Replay, piles: readonly Pile[], entry: PartEntry, word: ActionWord, draft: Draft): readonly Pile[] {
  const able = suited(piles, entry, word, draft);
  if (word !== 'acquired' && word !== 'made') return able;
  const enough = able.reduce((sum, pile) => sum + pile.count, 0) >= (entry.count ?? 1);
  if (entry.from && !enough) return [...able, ...piles.filter(({ where }) => mayComeBack(where))];
  // Where the catalogue has brought it on another day, the two are told apart by a check, and the note is believed.
  const dated = (replay.journal.parts.get(entry.part)?.acquired ?? null) !== null;
  return able.length === 0 && dated ? piles.filter(({ where, from }) => where.at === 'stores' && from.session === null) : able;
}

/** `from`; or `at`, where it does not say where to fit. Of what comes here `from` says who had it. */
function sourceOf(entry: PartEntry): Destination | null {
  if (entry.did.includes('acquired') || entry.did.includes('made')) return null;
  if (entry.from || entry.at === null || entry.did.includes('fitted')) return entry.from;
  return { bag: null, name: entry.at };
}

/** Work in place before a move is about the pieces that will be moved. */
function suited(piles: readonly Pile[], entry: PartEntry, word: ActionWord, draft: Draft): readonly Pile[] {
  const able = piles.filter(({ where }) => suits(word, where));
  const move = moves(word) || draft.hand ? undefined : entry.did.find(moves);
  const bound = move ? able.filter(({ where }) => suits(move, where)) : [];
  return bound.length > 0 ? bound : able;
}

function take(piles: readonly Pile[], count: number): readonly Share[] {
  const shares: Share[] = [];
  let left = count;
  for (const pile of piles) {
    if (left === 0) break;
    shares.push({ pile, count: Math.min(left, pile.count) });
    left -= Math.min(left, pile.count);
  }
  return shares;
}

function overfills(replay: Replay, entry: PartEntry, position: string, wanted: number, draft: Draft): Diagnostic | null {
  const takes = replay.journal.positions.get(position)?.count ?? 0;
  const isThere = ({ where }: Pile) => where.at === 'fitted' && where.position === position;
  const others = [...replay.state.occupants(position).keys()].filter((part) => part !== entry.part);
  const standing = [...others.flatMap((part) => replay.state.pilesOf(part)), ...draft.piles].filter(isThere);
  const held = standing.reduce((sum, pile) => sum + pile.count, 0);
  return held + wanted > takes ? noRoom(entry, position, takes, wanted, standing) : null;
}

function moved(
  replay: Replay,
  session: Session,
  entry: PartEntry,
  word: ActionWord,
  draft: Draft,
  shares: readonly Share[],
  to: Whereabouts,
): Draft {
  const from: Moment = { date: session.date, session: session.id };
  const leaving = shares.filter(({ pile }) => !sameWhere(pile.where, to));
  const left = new Map(leaving.map(({ pile, count }) => [pile, pile.count - count]));
  const piles = draft.piles.flatMap((pile) => {
    const rest = left.get(pile);
    return rest === undefined ? [pile] : rest === 0 ? [] : [{ ...pile, count: rest }];
  });
  const hand = new Set(shares.filter((share) => !leaving.includes(share)).map(({ pile }) => pile));
  if (leaving.length > 0) {
    const count = sumOf(leaving);
    const arrived = { part: entry.part, count, where: to, from, cause: entry.place, order: replay.state.nextOrder() };
    piles.push(arrived);
    hand.add(arrived);
  }
  const ended = leaving.map(({ pile, count }) => ({ stay: stayOf(pile, count, from), order: pile.order }));
  const deeds = shares.map((share) => deedOf(replay, session, entry, word, share, to));
  return { piles, ended: [...draft.ended, ...ended], deeds: [...draft.deeds, ...deeds], hand };
}

/** Work on a part off the vehicle concerns the position it belongs to. */
function deedOf(replay: Replay, session: Session, entry: PartEntry, did: ActionWord, share: Share, to: Whereabouts): Deed {
  const { part } = entry;
  const { where: from } = share.pile;
  const fitted = to.at === 'fitted' ? to : from.at === 'fitted' ? from : null;
  const position = fitted?.position ?? replay.journal.parts.get(part)?.position ?? part;
  return { part, did, count: share.count, date: session.date, session: session.id, from, to, position, entry };
}

function sumOf(shares: readonly Share[]): number {
  return shares.reduce((sum, { count }) => sum + count, 0);
}
