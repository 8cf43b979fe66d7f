/** Which of a part an action is about. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { ActionWord, Destination, PartEntry } from '../model.ts';
import type { Deed } from '../record.ts';
import { mayComeBack, moves, suits } from './actions.ts';
import type { Act } from './apply.ts';
import { destinationText, isAt } from './destinations.ts';
import { notThere, notThoseThere, tooMany, whichOfThem, wrongState } from './refusals.ts';
import type { Replay } from './replay.ts';
import type { Ended, Pile } from './state.ts';
import { isHere } from './words.ts';

/** A part's piles while an entry is applied. */
export interface Draft {
  readonly piles: readonly Pile[];
  readonly ended: readonly Ended[];
  readonly deeds: readonly Deed[];
  /** The pieces the entry has moved: its later words are about the same ones. Null before it moves any. */
  readonly hand: ReadonlySet<Pile> | null;
}

/** So many of a pile, and of a numbered lot which. */
export interface Share {
  readonly pile: Pile;
  readonly count: number;
  readonly which: readonly number[] | null;
}

interface Choice {
  readonly shares: readonly Share[];
  /** Why the action cannot be about them; they are what it is taken to be about. */
  readonly problem: Diagnostic | null;
}

/** The pieces a word is about: in the state it needs, from where the entry says, oldest stay first. */
export function choose(replay: Replay, { entry, word }: Act, draft: Draft): Choice {
  const all = draft.piles;
  const inHand = draft.hand ? all.filter((pile) => draft.hand?.has(pile)) : all;
  const source = draft.hand ? null : sourceOf(entry);
  const unknown = source?.bag ? replay.bags.unknown(source.bag, entry.place) : null;
  const there = source ? inHand.filter(({ where }) => isAt(source, where)) : inHand;
  const piles = there.length > 0 ? there : inHand;
  const able = ableTo(replay, piles, entry, word, draft);
  const wanted = draft.hand ? { ...entry, count: null, which: null } : entry;
  if (source && there.length === 0) {
    return { shares: believed(able, all, wanted), problem: unknown ?? notThere(entry, destinationText(source), all) };
  }
  if (able.length === 0) return { shares: believed(able, piles, wanted), problem: unknown ?? wrongState(entry, word, piles) };
  const problem = unknown ?? countProblem(able, all, wanted, word);
  return { shares: problem ? believed(able, all, wanted) : take(able, wanted), problem };
}

/** What is wrong with the number, or with the numbers, that an entry gives. */
function countProblem(able: readonly Pile[], all: readonly Pile[], entry: PartEntry, word: ActionWord): Diagnostic | null {
  const count = countOf(able);
  if (entry.which) {
    const there = able.flatMap(({ which }) => which ?? []);
    const absent = entry.which.filter((one) => !there.includes(one));
    return absent.length === 0 ? null : notThoseThere(entry, word, absent, there, all);
  }
  if (entry.count !== null && entry.count > count) return tooMany(entry, word, count, all);
  const free = entry.count !== null && entry.count < count && able.some(({ which }) => which !== null);
  return free ? whichOfThem(entry, able) : null;
}

/** What an entry that cannot be is taken to be about: as many as it says, the fittest first. */
function believed(able: readonly Pile[], all: readonly Pile[], entry: PartEntry): readonly Share[] {
  const here = all.filter(({ where }) => isHere(where) && where.at !== 'gone' && where.at !== 'missing');
  const inTurn = [...new Set([...able, ...here, ...all])];
  if (entry.which || entry.count !== null) return take(inTurn, entry);
  const whole = able.length > 0 ? able : here.length > 0 ? here : all;
  return take(whole, entry);
}

/** Those that the action may be done to. What is acquired `from` somebody may be what had gone: it comes after what never was here. */
function ableTo(replay: Replay, piles: readonly Pile[], entry: PartEntry, word: ActionWord, draft: Draft): readonly Pile[] {
  const able = suited(piles, entry, word, draft);
  if (word !== 'acquired' && word !== 'made') return able;
  const enough = countOf(able) >= (entry.count ?? 1);
  if (entry.from && !enough) return [...able, ...cameBack(piles, entry)];
  // Where the catalogue has brought it on another day, the two are told apart by a check, and the note is believed.
  const dated = (replay.journal.parts.get(entry.part)?.acquired ?? null) !== null;
  return able.length === 0 && dated ? piles.filter(({ where, from }) => where.at === 'stores' && from.session === null) : able;
}

/** What had gone and may be here again. Where nothing says how many, what was lost or stolen is not among it unless there is nothing else. */
function cameBack(piles: readonly Pile[], entry: PartEntry): readonly Pile[] {
  const back = piles.filter(({ where }) => mayComeBack(where));
  const parted = back.filter(({ where }) => where.at === 'gone' && where.how !== 'lost' && where.how !== 'stolen');
  return entry.count === null && entry.which === null && parted.length > 0 ? parted : back;
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

/** As many as the entry says, or those that it names, or all. */
function take(piles: readonly Pile[], entry: Pick<PartEntry, 'count' | 'which'>): readonly Share[] {
  const shares: Share[] = [];
  let left = entry.count ?? countOf(piles);
  for (const pile of piles) {
    const free = pile.which && entry.which ? pile.which.filter((one) => entry.which?.includes(one)) : pile.which;
    const count = Math.min(left, free?.length ?? pile.count);
    if (count > 0) shares.push({ pile, count, which: free?.slice(0, count) ?? null });
    left -= count;
  }
  return shares;
}

/** So many of the shares, the first ones first. */
export function firstOf(shares: readonly Share[], count: number): readonly Share[] {
  let left = count;
  return shares.flatMap((share) => {
    const taken = Math.min(left, share.count);
    left -= taken;
    return taken > 0 ? [{ ...share, count: taken, which: share.which?.slice(0, taken) ?? null }] : [];
  });
}

/** A pile without a share of it: none where nothing is left. */
export function without(pile: Pile, count: number, which: readonly number[] | null): readonly Pile[] {
  if (count === pile.count) return [];
  return [{ ...pile, count: pile.count - count, which: pile.which?.filter((one) => !which?.includes(one)) ?? null }];
}

/** Numbers of a lot, smallest first. */
export function inOrderOf(which: readonly number[]): readonly number[] {
  return [...which].sort((a, b) => a - b);
}

function countOf(piles: readonly Pile[]): number {
  return piles.reduce((sum, { count }) => sum + count, 0);
}
