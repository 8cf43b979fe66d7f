import Fraction from 'fraction.js';
import { type StockRow, stockAt } from '../journal/ledger/stock-at.ts';
import type { LedgerSource } from '../journal/ledger/sums.ts';
import type { IsoDate } from '../journal/model.ts';
import { type Cell, money, number, type Table } from './table.ts';

const COLUMNS = ['consumable', 'unit', 'opening-and-bought', 'used', 'left', 'value-used', 'value-left'];

/**
 * The stock of every consumable at a date, in its unit. `opening-and-bought` is less what was
 * given back, so that it is used + left.
 */
export function stockTable({ journal, ledger }: LedgerSource, at: IsoDate | null): Table {
  const rowOf = ({ consumable, opening, bought, used, left }: StockRow): Cell[] => [
    consumable.id,
    consumable.unit,
    ...adding(opening.amount.add(bought.amount), used.amount),
    money(used.value, journal.settings),
    money(left.value, journal.settings),
  ];
  return {
    name: 'stock',
    columns: COLUMNS,
    rows: stockAt({ ledger }, at).map(rowOf),
    totals: [{ words: 'Together', of: ['value-used', 'value-left'] }],
  };
}

/** Bought, used and left; what is left is told by the other two, so that the column adds up where decimals do not end. */
function adding(bought: Fraction, used: Fraction): Cell[] {
  const [all, gone] = [number(bought), number(used)];
  return [all, gone, number(new Fraction(all.decimal).sub(gone.decimal))];
}
