import type { PartId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { type ItemRow, openItemsAt } from '../../../journal/registers/open-items.ts';
import { once } from '../../../journal/values/once.ts';
import { byKey } from '../page/record-index.ts';
import type { RecordSheet } from '../page/sheet.ts';

const itemsByPart = once(
  (record: JournalRecord): ReadonlyMap<PartId, readonly ItemRow[]> =>
    byKey(openItemsAt(record, null), ({ on }) => (on?.part ? [on.part] : [])),
  ({ history }) => history,
);

/** Items that are open on some parts, as they stand now. */
export function openItemsOn({ record }: RecordSheet, parts: readonly PartId[]): readonly ItemRow[] {
  return parts.flatMap((part) => itemsByPart(record).get(part) ?? []);
}
