import type { SubsystemId } from '../../../journal/model.ts';
import {
  type Gate,
  gatesAt,
  type ItemRow,
  itemsAt,
  openItemsBySubsystem,
  questionsAt,
  temporaryMeasuresAt,
  thingsToBuyAt,
  waitingAt,
} from '../../../journal/registers/open-items.ts';
import type { Sheet } from '../page/sheet.ts';

export interface ItemsPage {
  readonly items: readonly ItemRow[];
  readonly open: readonly ItemRow[];
  /** The last first. */
  readonly closed: readonly ItemRow[];
  readonly gates: readonly Gate[];
  /** Open, and due before no milestone. */
  readonly undated: readonly ItemRow[];
  readonly buy: readonly ItemRow[];
  readonly temporary: readonly ItemRow[];
  readonly questions: readonly ItemRow[];
  readonly waiting: ReturnType<typeof waitingAt>;
  readonly bySubsystem: ReadonlyMap<SubsystemId, readonly ItemRow[]>;
}

/** Items as they stand now, each list as the page has it. */
export function itemsPage({ record }: Sheet): ItemsPage {
  const items = itemsAt(record, null);
  const open = items.filter(({ closed }) => closed === null);
  return {
    items,
    open,
    closed: items.filter(({ closed }) => closed !== null).reverse(),
    gates: gatesAt(record, null),
    undated: open.filter(({ due }) => due === null),
    buy: thingsToBuyAt(record, null),
    temporary: temporaryMeasuresAt(record, null),
    questions: questionsAt(record, null),
    waiting: waitingAt(record, null),
    bySubsystem: openItemsBySubsystem(record, null),
  };
}
