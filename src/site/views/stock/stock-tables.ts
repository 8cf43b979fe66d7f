/** Consumables in tables: all of them with what came and went, what lay on the shelf at a past day, the movements of one. */
import type Fraction from 'fraction.js';
import type { LedgerAt } from '../../../journal/ledger/ledger-at.ts';
import { type Holding, type StockRow, stockAt, stockOf } from '../../../journal/ledger/stock-at.ts';
import type { StockAccount, StockMovement } from '../../../journal/record.ts';
import { type Address, sessionAddress } from '../../addresses.ts';
import { entryAddress } from '../books/entry-place.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, sub } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { unitWords } from '../page/words.ts';
import { type Column, type Line, rows, type SetTable, setTable } from '../tables/table.ts';
import { shownHoldings, shownMovements } from './adding-up.ts';
import { movementAnchor, stockAddress } from './stock-pages.ts';

/** What came and went of a consumable, in the order in which it adds up. */
const SIDES = [
  { of: 'opening', head: 'Opening' },
  { of: 'bought', head: 'Bought' },
  { of: 'used', head: 'Used' },
  { of: 'left', head: 'Left' },
] as const;

/** Every consumable as it stands now, in the order of the catalogue. */
export function stockNow({ record }: RecordSheet): readonly StockRow[] {
  return stockAt(record, null);
}

/** Every consumable: opening, bought, used and left in quantity and in money, with its hazard statements. */
export function stockTable(sheet: RecordSheet, stock: readonly StockRow[]): SetTable {
  const { figures, record } = sheet;
  const { currency } = record.journal.settings;
  const { hasMoney } = figures;
  const page = ({ consumable }: StockRow): string => sheet.link(stockAddress(consumable.id));
  const quantities = SIDES.map(
    ({ of, head }): Column<StockRow, readonly StockRow[]> => ({
      head,
      set: `num quantity ${of}`,
      cell: (row) => {
        const amount = shownHoldings(row)[of];
        return amount.n !== 0n && linked(figures.quantity(amount), `${page(row)}#${of}`);
      },
    }),
  );
  const money = SIDES.map(
    ({ of, head }): Column<StockRow, readonly StockRow[]> => ({
      head: `${head} ${currency}`,
      set: `num money ${of}`,
      cell: (row) => row[of].value !== 0 && linked(figures.amount(row[of].value), `${page(row)}#${of}`),
      sum: (all) => figures.amount(all.reduce((sum, row) => sum + row[of].value, 0)),
    }),
  );
  return setTable<StockRow, readonly StockRow[]>({
    label: 'Stock of consumables',
    caption: `Quantities in the unit of each${currency === null ? '' : `; money in ${currency}`}`,
    set: 'account stock',
    columns: [
      { head: 'Consumable', names: true, cell: (row) => linked(row.consumable.name, page(row)) },
      { head: 'Unit', set: 'unit', cell: ({ consumable }) => unitWords(consumable.unit) },
      ...quantities,
      ...(hasMoney ? money : []),
      { head: 'Hazard statements', set: 'hazards', cell: ({ consumable }) => hazardLinks(sheet, consumable.statements) },
    ],
    groups: rows<StockRow, readonly StockRow[]>(stock),
    anchor: ({ consumable }) => consumable.id,
    foot: hasMoney ? [{ words: 'Total', sum: stock }] : [],
  });
}

const hazardLinks = (sheet: Sheet, codes: readonly string[]): Markup =>
  joined(
    codes.map((code) => linked(code, sheet.link(`cautions.html#${code}`))),
    ', ',
  );

/** On the shelf at a past day: each figure opens the movement that left it so. */
export function shelfTable(sheet: Sheet, shelf: LedgerAt['shelf']): SetTable {
  type Lying = LedgerAt['shelf'][number];
  const { figures } = sheet;
  const { hasMoney } = figures;
  const { currency } = sheet.settings;
  const lying = shelf.filter(({ movements }) => movements > 0);
  const movement = ({ consumable }: Lying, nth: number): string => sheet.link(`${stockAddress(consumable.id)}#${movementAnchor(nth)}`);
  const total = (all: readonly Lying[], of: (row: Lying) => number): string => figures.amount(all.reduce((sum, row) => sum + of(row), 0));
  return setTable<Lying, readonly Lying[]>({
    label: 'Consumables on the shelf',
    caption: `Quantities in the unit of each${currency === null ? '' : `; money in ${currency}`}`,
    set: 'account shelf',
    columns: [
      { head: 'Consumable', names: true, cell: ({ consumable }) => consumable.name },
      { head: 'Unit', cell: ({ consumable }) => unitWords(consumable.unit) },
      { head: 'Left', set: 'num', cell: (row) => linked(figures.quantity(row.left.amount), movement(row, row.movements)) },
      hasMoney && {
        head: `Left ${currency}`,
        set: 'num',
        cell: (row) => linked(figures.amount(row.left.value), movement(row, row.movements)),
        sum: (all) => total(all, ({ left }) => left.value),
      },
      hasMoney && {
        head: `Opening ${currency}`,
        set: 'num',
        cell: (row) => row.opening !== 0 && linked(figures.amount(row.opening), movement(row, 1)),
        sum: (all) => total(all, ({ opening }) => opening),
      },
    ],
    groups: rows<Lying, readonly Lying[]>(lying),
    foot: hasMoney ? [{ words: 'Total', sum: lying }] : [],
  });
}

const MOVEMENT_WORDS: Readonly<Record<StockMovement['kind'], string>> = {
  opening: 'opening stock',
  bought: 'bought',
  used: 'used',
  counted: 'counted',
  returned: 'given back',
};

/** A movement as it is shown: its place in the order, and what adds up down the page. */
interface ShownMovement {
  readonly movement: StockMovement;
  readonly source: Address | null;
  readonly amount: Fraction;
  readonly left: Fraction;
}

/**
 * The movements of a consumable, in order, with what each left on the shelf; opening and bought add up to used and left.
 *
 * @param sources what each was made by
 */
export function movementTable(sheet: Sheet, account: StockAccount, sources: readonly (Address | null)[], caption: string): SetTable {
  const { movements } = account;
  const stock = stockOf(account, null);
  const { figures } = sheet;
  const shown = shownMovements(movements);
  const amounts = shownHoldings(stock);
  const total = (id: keyof typeof amounts, words: string): Line<Holding> => ({
    id,
    words,
    sum: { amount: amounts[id], value: stock[id].value },
  });
  return setTable<ShownMovement, Holding>({
    label: 'Movements of stock',
    caption,
    set: 'movements',
    columns: [
      {
        head: 'Date',
        set: 'date',
        bare: true,
        cell: ({ movement, source }) => linked(figures.shortDate(movement.date), source && sheet.link(source)),
      },
      { head: 'Movement', bare: true, cell: ({ movement: { kind, because } }) => html`${MOVEMENT_WORDS[kind]}${sub(because)}` },
      { head: 'Quantity', set: 'num', cell: ({ amount }) => figures.quantity(amount), sum: ({ amount }) => figures.quantity(amount) },
      figures.hasMoney && {
        head: 'Money',
        set: 'num',
        cell: ({ movement }) => figures.amount(movement.value),
        sum: ({ value }) => figures.amount(value),
      },
      { head: 'Left', set: 'num', cell: ({ left }) => figures.quantity(left) },
      figures.hasMoney && { head: 'Left, money', set: 'num', cell: ({ movement }) => figures.amount(movement.left.value) },
    ],
    groups: rows<ShownMovement, Holding>(
      shown.map((one, n) => ({ ...one, movement: movements[n] as StockMovement, source: sources[n] ?? null })),
    ),
    anchor: (_, nth) => movementAnchor(nth + 1),
    foot: [
      total('opening', 'Opening stock'),
      total('bought', 'Bought, less what was given back'),
      total('used', 'Used, with what stock-takes found missing'),
      total('left', 'Left'),
    ],
  });
}

/** The entry a movement was made by; its session, where a stock-take changed nothing in the books. */
export function sourceOf({ index }: RecordSheet, { session, entry: id }: StockMovement): Address | null {
  if (session === null) return null;
  const entry = index.entriesOf.get(session)?.find((one) => one.id === id || one.id.startsWith(`${id}-`));
  return entry ? entryAddress(entry) : sessionAddress(session);
}
