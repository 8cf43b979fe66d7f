import type { Decision } from '../journal/model.ts';
import { someInWords } from '../journal/replay/words.ts';
import { sentence, VERDICT_WORDS } from '../site/views/page/words.ts';
import type { BookSetting } from './setting.ts';
import { words } from './typst-text.ts';

/** `Spokes: replace (2 of 6, numbers 3 and 4) with New spokes. Split.` */
export function decidedText(
  { sheet, record }: BookSetting,
  { part, position, verdict, count, which, with: other, because }: Decision,
): string {
  const some = someInWords(count, record.journal.positions.get(position)?.count ?? 1, which);
  const instead = other === null ? '' : ` with ${sheet.partName(other)}`;
  const what = `${sheet.partName(part)}: ${VERDICT_WORDS[verdict]}${some === '' ? '' : ` (${some})`}${instead}`;
  return `#strong[${words(sentence(what))}] ${words(sentence(because))}`;
}
