import type { CameShort } from '../../../journal/registers/came-short.ts';
import { numbersInWords } from '../../../journal/replay/words.ts';
import type { Sheet } from '../page/sheet.ts';

/** `11 of 12 came back on 3 May 2031, 1 is still with a plater` */
export function shortWords(sheet: Sheet, { back, sentCount, lastBack, owed, which, firm }: CameShort): string {
  const rest = which === null ? String(owed) : `${owed} (${numbersInWords(which)})`;
  return `${back} of ${sentCount} came back on ${sheet.date(lastBack.date)}, ${rest} ${owed === 1 ? 'is' : 'are'} still with ${firm}`;
}
