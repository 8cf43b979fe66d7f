import type { Code } from '../diagnostics/catalogue.ts';
import { type Diagnostic, diagnostic, type Related } from '../diagnostics/diagnostic.ts';
import type { ActionWord, PartEntry, PartId, PositionId, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { moves, suits } from './actions.ts';
import { endOf } from './seat.ts';
import type { Pile } from './state.ts';
import { numbersInWords, whereInWords } from './words.ts';

/** Why an action cannot be: the part is not in the state the action needs. Says where it is and since when. */
export function wrongState(entry: PartEntry, word: ActionWord, piles: readonly Pile[]): Diagnostic {
  const code = codeOf(word, piles);
  return refusal(
    code,
    entry,
    `\`${entry.part}\` ${cannotBe(word)}: ${REASONS[code] ?? ''}${whereItIs(piles)}`,
    piles,
    code === 'A505' && (word === 'acquired' || piles.every(isScrapped)) ? SCRAPPED : hintOf(code, entry.part, piles),
  );
}

function hintOf(code: Code, part: PartId, piles: readonly Pile[]): string | null {
  if (code === 'A506' && piles.every(({ where }) => endOf(where).at === 'out'))
    return `Record first that it came back: \`- { part: ${part}, did: returned }\`, or \`did: [returned, …]\`.`;
  if (code === 'A507' && piles.every(({ where, from }) => where.at === 'fitted' && from.session === null)) return FROM_THE_START;
  const hint = HINTS[code]?.(part) ?? null;
  const lies = piles.every(({ where: { at } }) => at === 'stores' || at === 'bag');
  return code === 'A501' && lies ? `${hint} If it was only put somewhere else, say \`stored\`.` : hint;
}

/** More are named than are in the state the action needs. */
export function tooMany(entry: PartEntry, word: ActionWord, able: number, piles: readonly Pile[]): Diagnostic {
  const message = `${entry.count} of \`${entry.part}\` ${cannotBe(word)}, only ${able} can: ${whereItIs(piles)}`;
  return refusal('A504', entry, message, piles, `Say \`count: ${able}\`, or record first what became of the others.`);
}

/** Some of the numbers named are not in the state the action needs. */
export function notThoseThere(
  entry: PartEntry,
  word: ActionWord,
  absent: readonly number[],
  able: readonly number[],
  piles: readonly Pile[],
): Diagnostic {
  const message = `${numbersInWords(absent)} of \`${entry.part}\` ${cannotBe(word)}: ${whereItIs(piles)}`;
  const hint =
    able.length === 0
      ? 'Take these numbers out, or record first how they came off or here.'
      : `Say \`which: [${able.join(', ')}]\` or some of these, or record first what became of the others.`;
  return refusal('A504', entry, message, piles, hint);
}

/** A bare count of a lot whose parts can be told apart leaves a choice. */
export function whichOfThem(entry: PartEntry, able: readonly Pile[]): Diagnostic {
  const free = able.flatMap(({ which }) => which ?? []).sort((a, b) => a - b);
  const message = `${entry.count} of \`${entry.part}\` leaves a choice: it could be any of ${free.join(', ')}.`;
  return refusal('A517', entry, message, able, `Say which: \`which: [${free.slice(0, entry.count ?? 1).join(', ')}]\`, or others of them.`);
}

/** `from` (or `at`) names a place where none of the part is. */
export function notThere(entry: PartEntry, place: string, piles: readonly Pile[]): Diagnostic {
  return refusal('A511', entry, `None of \`${entry.part}\` is at ${place}: ${whereItIs(piles)}`, piles, fromElsewhere(entry, piles));
}

/** What to write where it was not where `from` says: where it is, or first how it came off. */
function fromElsewhere({ part, count, did }: PartEntry, piles: readonly Pile[]): string {
  const word = did.find(moves) ?? 'stored';
  const able = piles.filter(({ where }) => suits(word, where));
  if (able.length > 0) return 'Leave `from` out, or name the place where it is.';
  const many = count === null ? '' : `, count: ${count}`;
  return `Record first what came off, and leave \`from\` out here: \`- { part: ${part}, did: removed${many} }\`.`;
}

/**
 * The position has no room for so many.
 *
 * @param below what stands in the way and is taken off further down in the note
 */
export function noRoom(
  entry: PartEntry,
  position: PositionId,
  takes: number,
  wanted: number,
  standing: readonly Pile[],
  below: PartId | null,
): Diagnostic {
  const held = standing.reduce((sum, pile) => sum + pile.count, 0);
  const room = takes - held;
  const holds = held === 0 ? 'holds none' : `holds ${standing.map(holding).join(', ')}`;
  const message = `${wanted} of \`${entry.part}\` cannot be fitted at \`${position}\`: it takes ${takes} and ${holds}.`;
  const first = below === null ? comesOffFirst(standing) : `\`${below}\` is taken off below: put that entry above this one.`;
  const hint = room > 0 ? `There is room for ${room}: say \`count: ${room}\`.` : first;
  return refusal('A502', entry, message, standing, hint);
}

function comesOffFirst(standing: readonly Pile[]): string {
  const [other] = standing;
  return `Record first what came off${other ? `: \`- { part: ${other.part}, did: removed }\`` : ''}.`;
}

function holding({ part, count, from }: Pile): string {
  return `${count} of \`${part}\` since ${sinceWords(from)}`;
}

function refusal(code: Code, entry: PartEntry, message: string, piles: readonly Pile[], hint: string | null = null): Diagnostic {
  return diagnostic(code, entry.place, message, { hint, related: piles.map((pile) => whatPutItThere(pile, piles)) });
}

function whatPutItThere({ part, cause, count, where, from }: Pile, all: readonly Pile[]): Related {
  const isOne = all.reduce((sum, pile) => sum + pile.count, 0) === 1;
  const some = isOne ? part : `${count} of ${part}`;
  return { place: cause, message: `This is why ${some} ${count === 1 ? 'is' : 'are'} ${whereInWords(where)}, since ${sinceWords(from)}.` };
}

/** `it is in stores, shelf B2, since 2031-03-12 (2031-03-12-front-brakes).` or, for a lot spread about, each share. */
function whereItIs(piles: readonly Pile[]): string {
  const [first] = piles;
  if (!first) return 'it is nowhere.';
  if (piles.length === 1) return `it is ${whereInWords(first.where)}, since ${sinceWords(first.from)}.`;
  return `${piles.map(sharesInWords).join('; ')}.`;
}

/** `it is in stores` told of each share; of a numbered lot with its numbers. */
function sharesInWords({ count, which, where, from }: Pile): string {
  const what = which ? numbersInWords(which) : String(count);
  return `${what} ${whereInWords(where)} since ${sinceWords(from)}`;
}

function sinceWords({ date, session }: Moment): string {
  return session === null ? `${date} (catalogue)` : session.startsWith(date) ? `session ${session}` : `${date} (session ${session})`;
}

function cannotBe(word: ActionWord): string {
  return word === 'gone' ? 'cannot be gone' : `cannot be ${word.replace('-', ' ')}`;
}

const REASONS: Partial<Record<Code, string>> = {
  A501: 'it is not fitted; ',
  A503: 'it is fitted already; ',
  A505: 'it went before; ',
  A506: 'it is not here; ',
  A507: 'it was here already; ',
  A508: 'it is not out with a firm; ',
  A509: 'it is still fitted; ',
};

/** To whom it would come back from is not what is wrong: see what can be bought back. */
const SCRAPPED =
  'What was scrapped is not bought back. If it was kept after all, say `stored` or `sold` in place of the scrapping; another one of its kind is a part of its own, with `for`.';

/** A part of the catalogue that came later was written as one that makes a place of its own. */
const FROM_THE_START =
  'Without `for` in its catalogue entry a part stood there from the start. If it came later, say there for which place: `for: …`; else take that word out of `did`.';

function isScrapped({ where }: Pile): boolean {
  return where.at === 'gone' && where.how === 'scrapped';
}

const HINTS: Partial<Record<Code, (part: PartId) => string>> = {
  A505: (part) => `If it came back, record \`acquired\` with \`from:\` and who had it: \`- { part: ${part}, did: acquired, from: … }\`.`,
  A501: (part) => `If it went back on in between, record \`fitted\` where that was: \`- { part: ${part}, did: fitted }\`.`,
  A503: (part) => `If it came off in between, record \`removed\` where that was: \`- { part: ${part}, did: removed }\`.`,
  A506: () =>
    'Record first how it came here: `returned`, `acquired` or `made`, as in `did: [acquired, …]`. A part made in its stead is a part of its own, with `for`.',
  A507: () => 'Take that word out of `did`; if it was only put somewhere else, say `stored`.',
  A508: (part) => `If it was sent out, record \`sent-out\` where that was: \`- { part: ${part}, did: sent-out, to: … }\`.`,
  A509: () => 'Record `removed` first: `did: [removed, …]`.',
};

/** Which of the problems it is; for a lot spread about, the nearest to what the action needs. */
function codeOf(word: ActionWord, piles: readonly Pile[]): Code {
  const any = (...wheres: Whereabouts['at'][]) => piles.some(({ where }) => wheres.includes(where.at));
  const inOut = piles.some(({ where }) => where.at === 'in' && endOf(where).at === 'out');
  if (word === 'acquired' || word === 'made') {
    if (any('fitted', 'in', 'stores', 'bag', 'out')) return 'A507';
    return any('missing') ? 'A506' : 'A505';
  }
  if (word === 'returned') return any('fitted', 'in', 'stores', 'bag') ? 'A508' : any('missing', 'not-yet', 'considered') ? 'A506' : 'A505';
  if (word === 'removed' && any('stores', 'bag')) return 'A501';
  if (inOut && (word === 'removed' || !moves(word))) return 'A506';
  if (word === 'fitted' && any('fitted', 'in')) return 'A503';
  if (any('fitted', 'in')) return 'A509';
  return any('out', 'missing', 'not-yet', 'considered') ? 'A506' : 'A505';
}
