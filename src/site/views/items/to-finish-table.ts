import { type Ahead, type ToFinishRow, toFinish } from '../../../journal/registers/to-finish.ts';
import { html, type Piece } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { leavesHoursOut } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** What is ahead as it stands now, in the order of the journal. */
export function linesToFinish({ record }: RecordSheet): readonly ToFinishRow[] {
  return toFinish(record, null);
}

/** What is ahead, a subsystem a line, beside what is left of its budgets. A sum says how many items are not in it. */
export function toFinishTable(sheet: Sheet, list: readonly ToFinishRow[]): SetTable {
  const { hours, amount, hasMoney } = sheet.figures;
  const figure = ({ items, sum, unsaid }: Ahead, written: (n: number) => string, list: string): Piece => {
    const to = `${sheet.toPage('items')}#${list}`;
    const said = items.length === 0 && sum === 0 ? false : linked(written(sum), to);
    const more = `${items.length === 0 ? '' : 'and '}${unsaid.length} without a figure`;
    return html`${said}${unsaid.length > 0 && html`<span class="sub">${linked(more, to)}</span>`}`;
  };
  const timed = !leavesHoursOut(sheet.copy);
  const total = (of: (row: ToFinishRow) => number): number => list.reduce((all, row) => all + of(row), 0);
  return setTable<ToFinishRow, true>({
    label: 'To finish',
    caption: !timed
      ? 'What is open, with the prices that were written down. This copy leaves hours out, and labour is in no sum.'
      : hasMoney
        ? 'What is open, with the prices and hours that were written down. Labour ahead is at what an hour there has cost so far; where none was charged it is in no sum.'
        : 'What is open, with the hours that were written down.',
    set: 'account totals ahead',
    columns: [
      { head: 'Subsystem', names: true, cell: ({ subsystem }) => subsystem.name },
      hasMoney && {
        head: 'To pay for',
        set: 'num',
        cell: ({ toPay }) => figure(toPay, amount, 'by-subsystem'),
        sum: () => amount(total(({ toPay }) => toPay.sum)),
      },
      hasMoney && {
        head: 'Quoted',
        set: 'num',
        cell: ({ quoted }) => figure(quoted, amount, 'waiting'),
        sum: () => amount(total(({ quoted }) => quoted.sum)),
      },
      hasMoney && { head: 'Budget left', set: 'num', cell: ({ money }) => money && amount(money.left) },
      timed && {
        head: 'Hours ahead',
        set: 'num',
        cell: ({ work }) => figure(work, hours, 'by-subsystem'),
        sum: () => hours(total(({ work }) => work.sum)),
      },
      timed && { head: 'Hours left', set: 'num', cell: (row) => row.hours && hours(row.hours.left) },
      timed &&
        hasMoney && {
          head: 'Labour ahead',
          set: 'num',
          cell: ({ labourAhead }) => labourAhead !== null && amount(labourAhead),
          sum: () => amount(total(({ labourAhead }) => labourAhead ?? 0)),
        },
      hasMoney && {
        head: 'Will have cost',
        set: 'num',
        cell: ({ willHaveCost }) => amount(willHaveCost),
        sum: () => amount(total(({ willHaveCost }) => willHaveCost)),
      },
    ],
    groups: rows<ToFinishRow, true>(list),
    foot: [{ words: 'Total', sum: true }],
  });
}
