/** What a copy withholds, as texts to look for: whatever the whole says in a field and the copy says in none. */
import type { Journal } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { formatMoney } from '../values/money.ts';

/** A text that must not be published, and where the journal says it. */
export interface Withheld {
  readonly text: string;
  /** What it is, for whoever is told: `parts / drum / private`. */
  readonly what: string;
}

/** Shorter texts, and single words in small letters, are words of any page. */
export const SHORTEST = 5;
const A_WORD = /^\p{Ll}+$/u;

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
  const left = [...textsOf(whole.journal, copy.journal), ...(whole.ledger === copy.ledger ? [] : amountsOf(whole))];
  if (left.length === 0) return [];
  // A statement repeats the words of entries, which the copy may have without it.
  const kept = new Set([
    ...[...textsOf(copy.journal, null)].map(({ text }) => text),
    ...copy.ledger.entries.map(({ what }) => folded(what)),
  ]);
  const found = new Map<string, string>();
  for (const { text, what } of left) {
    if (text.length >= SHORTEST && !A_WORD.test(text) && !kept.has(text) && !found.has(text)) found.set(text, what);
  }
  for (const { text } of amountsOf(copy)) found.delete(text);
  for (const text of whole.journal.settings.copies.get(copy.copy.name)?.maySay ?? []) found.delete(folded(text));
  return [...found].map(([text, what]) => ({ text, what })).sort((a, b) => b.text.length - a.text.length || (a.text < b.text ? -1 : 1));
}

/**
 * Every text in a field of a journal.
 *
 * @param beside a copy of it: what it has as the very same thing is passed over
 */
function* textsOf(value: unknown, beside: unknown, path: readonly string[] = []): Generator<Withheld> {
  if (value === beside) return;
  if (typeof value === 'string') {
    if (!A_DATE.test(value)) yield { text: folded(value), what: path.join(' / ') };
  } else if (value instanceof Map) for (const [key, held] of value) yield* textsOf(held, beneath(beside, key), [...path, String(key)]);
  else if (Array.isArray(value))
    for (const [n, held] of value.entries()) yield* textsOf(held, beneath(beside, n), [...path, nameOf(held, n)]);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, held] of Object.entries(value)) if (!NO_TEXT.has(key)) yield* textsOf(held, beneath(beside, key), [...path, key]);
  }
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

/** Amounts as pages write them: with their sign, so that a measurement of the same figures is none. */
function* amountsOf({ journal, ledger }: JournalRecord): Generator<Withheld> {
  const { settings } = journal as Pick<Journal, 'settings'>;
  if (settings.currency === null) return;
  const { currency, currencyDigits, locale } = settings;
  const told = new Set<number>([0]);
  for (const entry of ledger.entries) {
    for (const minor of [entry.gross, entry.net]) {
      if (told.has(minor)) continue;
      told.add(minor);
      yield { text: formatMoney(minor, { currency, currencyDigits, locale }), what: `${entry.session}: ${entry.what}` };
    }
  }
}

/** White space counts once, and accents however they are coded. */
export function folded(text: string): string {
  return text.normalize('NFC').replace(/\s+/gu, ' ').trim();
}
