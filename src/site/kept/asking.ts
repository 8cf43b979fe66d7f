/**
 * What each page asked and was told. A page whose questions would all be answered as they were is the page that it was, since
 * it is made by the same program from nothing else.
 */
import type { IsoDate } from '../../journal/model.ts';
import { keptIn } from '../../journal/values/once.ts';
import type { Address } from '../addresses.ts';
import type { RecordSheet } from '../views/page/sheet.ts';
import { digestOf } from './digest.ts';
import type { Question, Word } from './question.ts';

/** A question as it was asked, and a digest of the answer. */
export interface Asked {
  readonly question: string;
  readonly words: readonly Word[];
  readonly answer: string;
}

/** All that a page was told. Shared questions are known by their number, since many pages ask them. */
export interface Told {
  readonly shared: ReadonlySet<number>;
  readonly own: readonly Asked[];
}

/** Told so far, of a page that is being made. */
export interface Telling {
  shared: Set<number>;
  readonly own: Asked[];
  /** Days of which it was told by all that such an answer follows from. */
  days: Set<IsoDate>;
}

export interface Asking {
  /** Begins a page anew; what it asks is noted from now on. */
  begin(page: Address): Telling;
  /** What a page that was made was told; null for one that reads the record itself. It is forgotten here. */
  end(page: Address): Told | null;
  /** The number of a shared question, which is answered by then. */
  numberOf(question: string, words: readonly Word[], answer: () => unknown): number;
  /** The number of a shared question that was asked in an earlier build and is answered as it was. */
  numberAgain(asked: Asked): number;
  /** Every shared question that has a number, by it. */
  readonly all: readonly Asked[];
}

export function startAsking(): Asking {
  const pages = new Map<Address, Telling>();
  const all: Asked[] = [];
  const numbers = new Map<string, Map<string, number>>();
  const numbered = (question: string, words: readonly Word[], answer: () => string): number =>
    keptIn(
      keptIn(numbers, question, () => new Map<string, number>()),
      words.length === 1 && typeof words[0] === 'string' ? words[0] : `\0${JSON.stringify(words)}`,
      () => all.push({ question, words, answer: answer() }) - 1,
    );
  return {
    begin: (page) => {
      const telling = { shared: new Set<number>(), own: [], days: new Set<IsoDate>() };
      pages.set(page, telling);
      return telling;
    },
    end: (page) => {
      const telling = pages.get(page);
      pages.delete(page);
      return telling ? { shared: telling.shared, own: telling.own } : null;
    },
    numberOf: (question, words, answer) => numbered(question, words, () => digestOf(answer())),
    numberAgain: ({ question, words, answer }) => numbered(question, words, () => answer),
    all,
  };
}

/** What was made of a thing for one page and serves for others, with the numbers of what was asked in making it. */
export type Shared<Made> = WeakMap<object, { readonly made: Made; readonly asked: readonly number[] }>;

/**
 * Makes something once for all pages that share it; each of them is noted as having asked what was asked in making it.
 *
 * @param telling of the page that it is made for now
 * @throws Error where something is asked that each page is told in its own way
 */
export function sharedBy<Made>(known: Shared<Made>, thing: object, make: () => Made, telling: Telling): Made {
  const before = known.get(thing);
  if (before !== undefined) {
    for (const number of before.asked) telling.shared.add(number);
    return before.made;
  }
  const { shared: outer, own, days } = telling;
  const asked = new Set<number>();
  const told = own.length;
  telling.shared = asked;
  // What this page was told by does not serve the others.
  telling.days = new Set();
  const made = make();
  telling.shared = outer;
  telling.days = days;
  if (own.length > told) throw new Error('what pages share asks for what is of one page');
  for (const number of asked) outer.add(number);
  known.set(thing, { made, asked: [...asked] });
  return made;
}

/** Asks on behalf of a page. */
export type Ask = <Words extends readonly Word[], Answer>(question: Question<Words, Answer>, ...words: Words) => Answer;

/**
 * @param sheet of the page, with the record
 * @param telling where it is noted
 */
export function askedFrom(sheet: RecordSheet, asking: Asking, telling: Telling): Ask {
  const note = (name: string, shared: boolean, words: readonly Word[], answer: unknown): void => {
    if (shared) telling.shared.add(asking.numberOf(name, words, () => answer));
    else telling.own.push({ question: name, words, answer: digestOf(answer) });
  };
  return (question, ...words) => {
    const { name, shared } = question;
    const answer = question.answer(sheet, ...words);
    const day = question.day?.(...words) ?? null;
    if (shared && day !== null && telling.days.has(day)) return answer;
    if (!shared && day !== null) telling.days.add(day);
    const key = question.key?.(sheet, ...words) ?? null;
    if (key !== null) note(name, shared, words, key);
    else if (answer instanceof Promise) return noted(answer, (told) => note(name, shared, words, told)) as typeof answer;
    else note(name, shared, words, answer);
    return answer;
  };
}

async function noted<Answer>(answer: Promise<Answer>, note: (told: Answer) => void): Promise<Answer> {
  const told = await answer;
  note(told);
  return told;
}
