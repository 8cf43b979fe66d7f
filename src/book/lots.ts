import type { OffVehicle } from '../journal/registers/stores.ts';
import { someInWords } from '../journal/replay/words.ts';
import type { BookSetting } from './setting.ts';

/** What lies somewhere, by name and how many: `Hub caps × 2` where that is all of a lot, `Road wheels (1 of 4)` where it is some. */
export function lotWords({ sheet, record }: BookSetting, { part, count, which }: Pick<OffVehicle, 'part' | 'count' | 'which'>): string {
  const some = someInWords(count, record.journal.parts.get(part)?.count ?? 1, which);
  if (some !== '') return `${sheet.partName(part)} (${some})`;
  return `${sheet.partName(part)}${count > 1 ? ` × ${count}` : ''}`;
}
