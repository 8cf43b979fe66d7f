/** By what the register can be narrowed: what each row is told by, and how many there are of each. */
import type { OutcomeKind } from '../../../journal/registers/outcome.ts';
import type { RegisterRow } from '../../../journal/registers/register.ts';
import { subsystemsInOrder } from '../page/facts.ts';
import type { Sheet } from '../page/sheet.ts';
import { ORIGIN_WORDS } from '../page/words.ts';
import { BETWEEN_ORIGINS } from './between-origins.ts';

const OUTCOME_WORDS: Readonly<Record<OutcomeKind, string>> = {
  'kept-as-found': 'kept as found',
  'kept-conserved': 'kept, conserved',
  'kept-repaired': 'kept, repaired',
  'kept-refinished': 'kept, refinished',
  'kept-worked-on': 'kept, worked on',
  'kept-otherwise': 'kept, went back otherwise',
  replaced: 'replaced',
  'partly-replaced': 'partly replaced',
  added: 'added',
  'left-off': 'left off',
  missing: 'missing',
  'off-for-now': 'off, or not yet fitted',
  elsewhere: 'fitted elsewhere',
  'stayed-behind': 'stayed behind',
  gone: 'gone',
  'not-yet': 'not yet here',
  undecided: 'undecided',
  untouched: 'untouched',
};

/** What a row is told by, as attributes of it; `settled` where nobody doubts it. */
export interface RowFacets {
  readonly outcome: string;
  readonly origin: string;
  readonly settled: '' | null;
}

export function facetsOf(row: RegisterRow): RowFacets {
  const origins = row.fitted.map(({ origin }) => (origin === null ? 'origin not known' : ORIGIN_WORDS[origin]));
  return {
    outcome: OUTCOME_WORDS[row.outcome.kind],
    origin: [...new Set(origins.length === 0 ? ['nothing'] : origins)].join(BETWEEN_ORIGINS),
    settled: isSettled(row) ? '' : null,
  };
}

/** Untouched or kept as found, all of it there and of a known origin, and nothing against it or still to do. */
function isSettled({ outcome, fitted, mismatches, pending, undecided, empty }: RegisterRow): boolean {
  const left = outcome.kind === 'untouched' || outcome.kind === 'kept-as-found';
  return left && fitted.every(({ origin }) => origin !== null) && mismatches.length + pending.length + undecided + empty === 0;
}

/** A choice of a list, and how many rows it leaves. */
export interface Choice {
  readonly value: string;
  readonly words: string;
  readonly count: number;
}

export interface Narrowing {
  readonly outcomes: readonly Choice[];
  readonly origins: readonly Choice[];
  readonly subsystems: readonly Choice[];
  /** How many can be folded away. */
  readonly settled: number;
}

/** Choices stand in the order of the rows' words; subsystems in that of the journal. */
export function narrowingOf(sheet: Sheet, rows: readonly RegisterRow[]): Narrowing {
  const facets = rows.map(facetsOf);
  const inWords = (values: readonly string[], order: readonly string[]) => choices(values, order, (value) => value);
  return {
    outcomes: inWords(
      facets.map(({ outcome }) => outcome),
      Object.values(OUTCOME_WORDS),
    ),
    origins: inWords(
      facets.flatMap(({ origin }) => origin.split(BETWEEN_ORIGINS)),
      [...Object.values(ORIGIN_WORDS), 'origin not known', 'nothing'],
    ),
    subsystems: choices(
      rows.map(({ subsystem }) => subsystem),
      subsystemsInOrder(sheet),
      sheet.subsystemName,
    ),
    settled: facets.filter(({ settled }) => settled !== null).length,
  };
}

function choices(values: readonly string[], order: readonly string[], wordsOf: (value: string) => string): Choice[] {
  const counts = Map.groupBy(values, (value) => value);
  const all = new Set([...order.filter((value) => counts.has(value)), ...counts.keys()]);
  return [...all].map((value) => ({ value, words: wordsOf(value), count: counts.get(value)?.length ?? 0 }));
}
