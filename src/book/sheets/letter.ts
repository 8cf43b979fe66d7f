/** The month's letter for the client, set as a sheet: what the page of that month says. */

import { type Letter, letterOf } from '../../site/views/letters/letter.ts';
import { capital } from '../../site/views/page/words.ts';
import { type BookSetting, figure } from '../setting.ts';
import { words } from '../typst-text.ts';
import type { SheetText } from './frame.ts';

/** @param month `2031-03` */
export function clientLetter(month: string): (setting: BookSetting) => SheetText {
  return (setting) => {
    const letter = letterOf(setting.sheet, month);
    return {
      title: setting.sheet.figures.month(month),
      line: `${letter.line}. All else as it stood on ${setting.sheet.date(letter.day)}.`,
      ownDay: letter.day !== setting.sheet.record.day,
      parts: [
        ...letter.evenings.map((evening) => eveningText(setting, evening)),
        took(letter),
        listOf(letter.next.before === null ? 'What is open' : `Before “${letter.next.before}”`, letter.next.what),
        listOf('Decisions wanted', letter.wanted),
        listOf('Came back short', letter.short),
      ],
    };
  };
}

function eveningText(setting: BookSetting, { session, words: said, picture }: Letter['evenings'][number]): string {
  const shown = picture === null ? '' : figure(setting, picture, session);
  const told = `=== ${words(session.title)}\n\n#block(above: 0.5em, below: 0.7em, plain[${words(setting.sheet.date(session.date))}])\n\n${words(said)}\n\n${shown}`;
  // A few sentences and a picture: short enough to stand on one page together.
  return `#block(above: 1.8em, breakable: false, width: 100%)[\n${told}\n]`;
}

function took({ took: figures, left }: Letter): string {
  const row = (...cells: readonly string[]): string => cells.map((cell) => `[${words(cell)}]`).join(', ');
  const rows = figures.map(([name, figure]) => row(name, figure));
  const hours = left.some((one) => one.hours !== '');
  const money = left.some((one) => one.money !== '');
  const kinds = [...(hours ? ['Hours'] : []), ...(money ? ['Money'] : [])];
  const budgets = left.map((one) => row(one.name, ...(hours ? [one.hours] : []), ...(money ? [one.money] : [])));
  const table = `#record-table(columns: (1fr, ${kinds.map(() => 'auto').join(', ')}), align: (left, ${kinds.map(() => 'right').join(', ')}), head: ([Left of the budget], ${kinds.map((kind) => `[${capital(kind)}]`).join(', ')}), ${budgets.join(', ')})`;
  if (rows.length === 0 && budgets.length === 0) return '';
  const first = rows.length === 0 ? '' : `#record-table(columns: (1fr, auto), align: (left, right), head: ([], []), ${rows.join(', ')})`;
  return `== What it took\n\n${first}\n\n${budgets.length === 0 ? '' : table}`;
}

function listOf(title: string, sentences: readonly string[]): string {
  return sentences.length === 0 ? '' : `== ${words(title)}\n\n#list(${sentences.map((one) => `[${words(one)}]`).join(', ')})`;
}
