import { cameShortAt } from '../../journal/registers/came-short.ts';
import { shortWords } from '../../site/views/stores/short-words.ts';
import type { BookSetting } from '../setting.ts';

/** What firms sent back short and still owe, a line each. */
export function cameShort({ record, sheet }: BookSetting): readonly string[] {
  return cameShortAt(record, null).map((short) => `${sheet.partName(short.part)}: ${shortWords(sheet, short)}`);
}
