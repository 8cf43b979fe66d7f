import type { PartEntry } from '../../../journal/model.ts';
import { numbersInWords } from '../../../journal/replay/words.ts';
import { html, type Markup, type Piece } from '../page/html.ts';
import { partLink, partLinks } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';

const HOW_WORDS: Readonly<Record<string, string>> = { loan: 'on loan', 'made-into': 'made into something else', 'made-safe': 'made safe' };

/** What an entry under `parts` says of other parts, of how, and of which of a lot, one thing a line. */
export function entryRelations(sheet: Sheet, entry: PartEntry): readonly Markup[] {
  const { how, which, into, madeFrom, pattern, due, quoted } = entry;
  const line = (words: string, what: Piece): Markup => html`${words}${what}`;
  return [
    ...(which === null ? [] : [line('', capital(numbersInWords(which)))]),
    ...(how === null ? [] : [line('', capital(HOW_WORDS[how] ?? how))]),
    ...(into.length === 0 ? [] : [line('Into: ', partLinks(sheet, into))]),
    ...(madeFrom.length === 0 ? [] : [line('Made from: ', partLinks(sheet, madeFrom))]),
    ...(pattern === null ? [] : [line('Made after: ', partLink(sheet, pattern))]),
    ...(due === null ? [] : [line('Due: ', sheet.figures.shortDate(due))]),
    ...(quoted === null ? [] : [line('Quoted: ', sheet.figures.money(quoted))]),
  ];
}
