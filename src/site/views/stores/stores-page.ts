/** What lies off the vehicle: now, and as it lay at the end of a past day. */
import type { Hazard, IsoDate } from '../../../journal/model.ts';
import { type BagRow, bagsAt, inBag } from '../../../journal/registers/bags.ts';
import { hazardsOfLying } from '../../../journal/registers/hazards.ts';
import { type ItemRow, openItemsAt } from '../../../journal/registers/open-items.ts';
import {
  goesWithVehicleAt,
  goneAt,
  missingAt,
  type OffVehicle,
  outAt,
  type StoreRows,
  storesAt,
} from '../../../journal/registers/stores.ts';
import { whereKey } from '../../../journal/replay/words.ts';
import type { AnyQuestion } from '../../kept/question.ts';
import { shownThen } from '../../kept/shown-then.ts';
import { hazardsOn } from '../page/facts.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';

export interface StoresPage {
  /** What has no place comes last, and keeps its heading when there is nothing of it: pages of the past lead there. */
  readonly stores: readonly StoreRows[];
  readonly bags: readonly BagRow[];
  readonly out: ReturnType<typeof outAt>;
  readonly goes: readonly OffVehicle[];
  readonly gone: ReturnType<typeof goneAt>;
  readonly missing: readonly OffVehicle[];
  /** Of everything that lies here or is out. */
  readonly hazards: readonly Hazard[];
  /** Named stores in which nothing lies. */
  readonly empty: readonly string[];
}

export function storesPage({ record }: RecordSheet): StoresPage {
  const placed = storesAt(record, null);
  const out = outAt(record, null);
  const bags = filledAt(record, null);
  const lying = [...placed, ...out].flatMap(({ things }) => things.map(({ part, where }) => ({ part, place: whereKey(where) })));
  return {
    stores: placed.some(({ store }) => store === null) ? placed : [...placed, { store: null, things: [] }],
    bags,
    out,
    goes: goesWithVehicleAt(record, null),
    gone: goneAt(record, null),
    missing: missingAt(record, null),
    hazards: hazardsOfLying(record, [...lying, ...bags.flatMap(inBag)], record.day),
    empty: placed.flatMap(({ store, things }) => (things.length === 0 && store !== null ? [store] : [])),
  };
}

export interface StoresThen {
  readonly stores: readonly StoreRows[];
  readonly out: ReturnType<typeof outAt>;
  readonly bags: readonly BagRow[];
  readonly items: readonly ItemRow[];
}

/** Stores in which something lay, bags that were filled and items that were open at the end of a day. */
export function storesThen({ record }: RecordSheet, date: IsoDate): StoresThen {
  return {
    stores: storesAt(record, date).filter(({ things }) => things.length > 0),
    out: outAt(record, date),
    bags: filledAt(record, date),
    items: openItemsAt(record, date),
  };
}

const THEN = shownThen('stores then', storesThen);

export const STORES_QUESTIONS: readonly AnyQuestion[] = [THEN];

export const storesOfDay = (sheet: Sheet, date: IsoDate): StoresThen => sheet.ask(THEN, date);

function filledAt(record: RecordSheet['record'], at: IsoDate | null): BagRow[] {
  return bagsAt(record, at).filter(({ emptied }) => emptied === null);
}

export interface BagsPage {
  readonly filled: readonly BagRow[];
  readonly emptied: readonly BagRow[];
  /** Of what the filled ones hold. */
  readonly hazards: readonly Hazard[];
}

export function bagsPage(sheet: RecordSheet): BagsPage {
  const [filled = [], emptied = []] = [true, false].map((full) =>
    bagsAt(sheet.record, null).filter((bag) => (bag.emptied === null) === full),
  );
  return { filled, emptied, hazards: filled.length === 0 ? [] : hazardsIn(sheet, filled) };
}

/** The hazards of what some bags hold, as they are on a day; else on the record's. */
export function hazardsIn(sheet: Sheet, bags: readonly BagRow[], at: IsoDate | null = null): readonly Hazard[] {
  return hazardsOn(sheet, bags.flatMap(inBag), at ?? sheet.day);
}

/** How many lines of what is off the vehicle go with it, as a sentence. */
export function goesWords(lines: number): string {
  if (lines === 0) return 'No line of it is an original that goes with the vehicle.';
  return `${counted(lines, 'line')} of it ${lines === 1 ? 'is an original and goes' : 'are originals and go'} with the vehicle.`;
}
