/** What a copy withholds, as texts to look for: whatever the whole says in a field and the copy says in none. */
import { NOT_TOLD_OF, WORK } from '../ledger/ledger.ts';
import { HEAD_NAMES, type Journal } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { bareIn, sumsOf } from './withheld-sums.ts';

/** A text that must not be published, and where the journal says it. */
export interface Withheld {
  readonly text: string;
  /** What it is, for whoever is told: `parts / drum / private`. */
  readonly what: string;
  /**
   * How it is looked for where it is not looked for everywhere: a short `word`, which chance makes in bytes that are no
   * text; a `number`, which may be another one; a `sum` without its currency, in what people read.
   */
  readonly as?: 'word' | 'number' | 'sum';
}

/** Shorter texts are looked for as words; single words in small letters are words of any page, and so are numbers of one or two figures. */
const SHORTEST = 5;
const ANY_PAGE = /^(?:\p{Ll}+|\d{1,2}|[^\p{L}\p{N}]+)$/u;
/** What the head of a statement calls its lines is the program's, and so is what it calls labour and why it does not charge for a difference. */
const A_FIELD = /^statements .* head \/ \d+ \/ name$/u;
/** A time in a clip, which may as well be one of the day, or so many hours and minutes. */
const A_CLOCK = /^\d{1,2}(?::\d{2}){1,2}$/u;
/** A number alone, or a length of time as a note writes it, or terms: pages say such of other things too. */
const A_NUMBER = /^\d+[hm]?$/u;
const SO_MANY_DAYS = /^\d+ days?$/u;

/** Fields that hold places in files, ids, dates or words of the format, which tell nothing by themselves; prose is looked through, not for. */
const NO_TEXT = new Set([
  'place',
  'datePlace',
  'correctsPlace',
  'arrivedPlace',
  'id',
  'session',
  'entry',
  'svg',
  'body',
  'date',
  'kind',
  'as',
  'rate',
]);
const A_DATE = /^\d{4}-\d{2}-\d{2}$/;

/**
 * @param whole the record of everything
 * @param copy the same, made smaller
 * @returns each withheld text once, longest first; amounts as they would be printed. What the journal says may stand is not among them
 */
export function withheldTexts(whole: JournalRecord, copy: JournalRecord): readonly Withheld[] {
  const sums = whole.ledger === copy.ledger ? [] : sumsLookedFor(whole, copy);
  const left = [...leftOut(whole.journal, copy.journal), ...sums];
  if (left.length === 0) return [];
  const kept = keptOf(new Set(left.map(({ text }) => text)), copy);
  const found = new Map<string, Withheld>();
  for (const one of left) if (!kept.has(one.text) && !found.has(one.text)) found.set(one.text, one);
  for (const { text } of sumsOf(copy)) found.delete(text);
  for (const text of whole.journal.settings.copies.get(copy.copy.name)?.maySay ?? []) found.delete(folded(text));
  return [...found.values()].sort((a, b) => b.text.length - a.text.length || (a.text < b.text ? -1 : 1));
}

/** What the whole says and the copy does not have as the very same thing. */
function leftOut(whole: Journal, copy: Journal): readonly Withheld[] {
  const left: Withheld[] = [];
  eachText(whole, copy, (text, path) => left.push(...lookedFor({ text: folded(text), what: inWords(path) })));
  return left;
}

/** Which of some texts a copy says elsewhere. A statement repeats the words of entries, which it may have without it. */
function keptOf(texts: ReadonlySet<string>, { journal, ledger }: JournalRecord): ReadonlySet<string> {
  const kept = new Set<string>();
  const take = (text: string): void => {
    const said = folded(text);
    if (texts.has(said)) kept.add(said);
  };
  eachText(journal, null, take);
  for (const { what } of ledger.entries) take(what);
  return kept;
}

/** Every sum as pages print it; bare, as a measurement or an amount of stuff may be too, where the notes of the copy have it. */
function sumsLookedFor(whole: JournalRecord, copy: JournalRecord): readonly Withheld[] {
  const told = new Set([...sumsOf(copy)].map(({ text }) => text));
  const sums = [...sumsOf(whole)].filter(({ text }) => !told.has(text));
  if (sums.length === 0) return [];
  const bare = new Set(sums.flatMap((sum) => (sum.bare ? [sum.text] : [])));
  const written = bareIn(proseOf(copy.journal), bare);
  return sums.flatMap(({ text, what, bare: alone }): Withheld[] => {
    if (!alone) return [{ text, what }];
    const as = written.get(text);
    return as === undefined ? [] : [{ text, what, as }];
  });
}

function proseOf(journal: Journal): readonly string[] {
  const texts: string[] = [];
  eachText(journal, null, (text) => void texts.push(folded(text)));
  return [...texts, ...journal.sessions.map(({ body }) => folded(body))];
}

/** A text with how it is looked for; none where it would stand on any page. */
function lookedFor({ text, what }: Withheld): readonly Withheld[] {
  if (ANY_PAGE.test(text)) return [];
  if (A_FIELD.test(what) || text === WORK || text === NOT_TOLD_OF) return [];
  if (A_CLOCK.test(text) || SO_MANY_DAYS.test(text)) return [{ text, what, as: 'number' }];
  if (text.length >= SHORTEST) return [{ text, what }];
  return [{ text, what, as: A_NUMBER.test(text) ? 'number' : 'word' }];
}

/** Where a thing hangs: its name, and where that of which it is a part does. */
interface Path {
  readonly name: string;
  readonly within: Path | null;
}

/** `parts / drum / private` */
function inWords(path: Path | null): string {
  return path === null ? '' : path.within === null ? path.name : `${inWords(path.within)} / ${path.name}`;
}

/**
 * Takes every text in a field of a journal.
 *
 * @param beside a copy of it: what it has as the very same thing is passed over
 */
function eachText(value: unknown, beside: unknown, take: (text: string, path: Path | null) => void, within: Path | null = null): void {
  if (value === beside) return;
  if (typeof value === 'string') {
    if (!A_DATE.test(value)) take(value, within);
  } else if (value instanceof Map) {
    for (const [key, held] of value) eachText(held, beneath(beside, key), take, { name: String(key), within });
  } else if (Array.isArray(value)) {
    for (const [n, held] of value.entries()) eachText(held, beneath(beside, n), take, { name: nameOf(held, n), within });
  } else if (typeof value === 'object' && value !== null && !isDay(value)) {
    for (const [key, held] of Object.entries(value))
      if (!NO_TEXT.has(key)) eachText(held, beneath(beside, key), take, { name: key, within });
  }
}

/** A line of the head of a statement that says a day and nothing else: days tell nothing by themselves. */
function isDay(value: object): boolean {
  return 'name' in value && value.name === HEAD_NAMES.due;
}

/** What stands in a thing at the same place. */
function beneath(thing: unknown, key: unknown): unknown {
  if (thing instanceof Map) return thing.get(key);
  return typeof thing === 'object' && thing !== null ? (thing as Record<PropertyKey, unknown>)[key as PropertyKey] : undefined;
}

function nameOf(value: unknown, n: number): string {
  const { id, part } = (value ?? {}) as { id?: unknown; part?: unknown };
  return typeof id === 'string' ? id : typeof part === 'string' ? part : String(n + 1);
}

/** White space counts once, and accents however they are coded. */
export const folded = (text: string): string => composed(text).replace(NOT_ONE_SPACE, ' ').trim();

/** Accents in one with their letters (Unicode Normalization Form C); the text itself where there is nothing to do. */
export const composed = (text: string): string => (MAY_COMPOSE.test(text) ? text.normalize('NFC') : text);

/** Before U+0300 every character is in that form already (Unicode Standard Annex 15, NFC_Quick_Check), and so are what pages have besides. */
const MAY_COMPOSE = /[\u0300-\u2001\u2003-\u200f\u2028-\u20ab\u20ad-\u2211\u2213-\uffff]/;
/** Most white space is one space, which is what it becomes. */
const NOT_ONE_SPACE = /[^\S ]\s*|\s{2,}/gu;
