import type { PartEntry, PartId } from '../../../journal/model.ts';
import { numbersInWords } from '../../../journal/replay/words.ts';
import { html, type Markup } from '../page/html.ts';
import { partLinks } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';

const HOW_WORDS: Readonly<Record<string, string>> = {
  loan: 'on loan',
  returned: 'given back',
  'made-into': 'made into something else',
  'made-safe': 'made safe',
};

/** One thing that an entry says, and the parts that it says it of. */
export interface Relation {
  readonly words: string;
  readonly parts: readonly PartId[];
}

/** What an entry under `parts` says of other parts, of how, and of which of a lot. */
export function relationsOf(sheet: Pick<Sheet, 'figures'>, entry: PartEntry): readonly Relation[] {
  const { how, which, into, madeFrom, pattern, due, quoted } = entry;
  const one = (words: string, parts: readonly PartId[] = []): Relation => ({ words, parts });
  return [
    ...(which === null ? [] : [one(capital(numbersInWords(which)))]),
    ...(how === null ? [] : [one(capital(HOW_WORDS[how] ?? how))]),
    ...(into.length === 0 ? [] : [one('Into: ', into)]),
    ...(madeFrom.length === 0 ? [] : [one('Made from: ', madeFrom)]),
    ...(pattern === null ? [] : [one('Made after: ', [pattern])]),
    ...(due === null ? [] : [one(`Due: ${sheet.figures.shortDate(due)}`)]),
    ...(quoted === null ? [] : [one(`Quoted: ${sheet.figures.money(quoted)}`)]),
  ];
}

/** The same with links, one thing a line. */
export function entryRelations(sheet: Sheet, entry: PartEntry): readonly Markup[] {
  return relationsOf(sheet, entry).map(({ words, parts }) => html`${words}${partLinks(sheet, parts)}`);
}
