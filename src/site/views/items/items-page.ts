import type { Milestone, MilestoneId, SubsystemId } from '../../../journal/model.ts';
import { stillToDoAt } from '../../../journal/registers/at-milestone.ts';
import { type CameShort, cameShortAt } from '../../../journal/registers/came-short.ts';
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
import { countOf, forgottenOf } from '../forgotten/forgotten-page.ts';
import { hasPage } from '../frame/contents.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { shortWords } from '../stores/short-words.ts';
import { stillToDoWords } from './still-to-do.ts';

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
  /** What firms sent back short and still owe. */
  readonly short: readonly { readonly of: CameShort; readonly words: string }[];
  readonly bySubsystem: ReadonlyMap<SubsystemId, readonly ItemRow[]>;
  /** The first milestone that is not reached. */
  readonly next: Milestone | null;
  /** What was still to be done when a milestone was reached, for those where something was. */
  readonly stillToDo: ReadonlyMap<MilestoneId, string>;
  /** How many things the notes leave out; none are told where the copy has no page of them. */
  readonly forgotten: number;
}

/** Items as they stand now, each list as the page has it. */
export function itemsPage(sheet: RecordSheet): ItemsPage {
  const { record } = sheet;
  const items = itemsAt(record, null);
  const open = items.filter(({ closed }) => closed === null);
  const gates = gatesAt(record, null);
  return {
    items,
    open,
    closed: items.filter(({ closed }) => closed !== null).reverse(),
    gates,
    undated: open.filter(({ due }) => due === null),
    buy: thingsToBuyAt(record, null),
    temporary: temporaryMeasuresAt(record, null),
    questions: questionsAt(record, null),
    waiting: waitingAt(record, null),
    short: cameShortAt(record, null).map((of) => ({ of, words: shortWords(sheet, of) })),
    bySubsystem: openItemsBySubsystem(record, null),
    stillToDo: new Map(gates.flatMap((gate) => stillToDoWhen(record, gate))),
    next: gates.find(({ reached }) => reached === null)?.milestone ?? null,
    forgotten: hasPage(record, 'forgotten') ? countOf(forgottenOf(record)) : 0,
  };
}

function stillToDoWhen(record: RecordSheet['record'], { milestone, reached }: Gate): [MilestoneId, string][] {
  const words = reached && stillToDoWords(stillToDoAt(record, reached.date));
  return words === null ? [] : [[milestone.id, words]];
}
