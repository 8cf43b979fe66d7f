/** What was done to a part of an evening, and what was noted of it, in the book's words. */
import type { PartEntry } from '../journal/model.ts';
import { seenIn } from '../journal/registers/observed.ts';
import { sentence } from '../site/views/page/words.ts';
import { relationsOf } from '../site/views/session/entry-relations.ts';
import { deedWords } from '../site/views/session/session-facts.ts';
import { type BookSetting, mention } from './setting.ts';
import { words } from './typst-text.ts';

/** `Front drum: removed, to shelf B2. Scored. Condition: 2, …`, the part noted for the index. */
export function deedText(setting: BookSetting, entry: PartEntry): string {
  const done = [setting.sheet.partName(entry.part), deedWords(setting.sheet, entry)].filter((piece) => piece !== '').join(': ');
  const seen = seenIn(entry).map(({ label, words: said }) => sentence(label === null ? said : `${label}: ${said}`));
  const besides = relationsOf(setting.sheet, entry).map((one) =>
    sentence(`${one.words}${one.parts.map(setting.sheet.partName).join(', ')}`),
  );
  return `${mention(setting, entry.part)}${words([sentence(done), ...besides, ...seen].join(' '))}`;
}
