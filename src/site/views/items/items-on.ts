import type { PartId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { type ItemRow, openItemsAt } from '../../../journal/registers/open-items.ts';
import { byKey } from '../page/record-index.ts';
import type { Sheet } from '../page/sheet.ts';

const made = new WeakMap<JournalRecord['history'], ReadonlyMap<PartId, readonly ItemRow[]>>();

/** Items that are open on some parts, as they stand now. */
export function openItemsOn({ record }: Sheet, parts: readonly PartId[]): readonly ItemRow[] {
  let index = made.get(record.history);
  if (index === undefined) {
    index = byKey(openItemsAt(record, null), ({ on }) => (on?.part ? [on.part] : []));
    made.set(record.history, index);
  }
  return parts.flatMap((part) => index.get(part) ?? []);
}
