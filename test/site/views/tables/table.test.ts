import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { keptIn } from '../../../../src/journal/values/once.ts';
import { html } from '../../../../src/site/views/page/html.ts';
import { type Column, rows, setTable, type TableOf } from '../../../../src/site/views/tables/table.ts';

interface Pipe {
  readonly name: string;
  readonly feet: number;
  readonly note: string | null;
}

const PIPES: readonly Pipe[] = [
  { name: 'Pipe to the tee', feet: 6, note: null },
  { name: 'Pipe <across> the axle', feet: 4, note: 'kinked' },
];

const COLUMNS: readonly Column<Pipe, number>[] = [
  { head: 'Pipe', names: true, cell: ({ name }) => name },
  { head: 'Noted', bare: true, cell: ({ note }) => note },
  { head: 'Feet', set: 'num', cell: ({ feet }) => feet, sum: (total) => html`<b>${total}</b>` },
  { head: 'Seen', cell: () => null },
];

function read(table: Partial<TableOf<Pipe, number>> = {}): Element {
  const { markup } = setTable<Pipe, number>({ label: 'Pipes', columns: COLUMNS, groups: rows<Pipe, number>(PIPES), ...table });
  return parseHTML(`<html><body>${markup}</body></html>`).document.querySelector('table') as unknown as Element;
}

const texts = (elements: Iterable<Element>): string[] => [...elements].map((each) => each.textContent ?? '');
const texted = (table: Element, cells: string): string[] => texts(table.querySelectorAll(cells));
/** How many columns a line takes, with what spans several. */
const widthOf = (line: Element): number => [...line.children].reduce((sum, cell) => sum + Number(cell.getAttribute('colspan') ?? 1), 0);

describe('a table', () => {
  it('has every cell under its own head, in the head’s class', () => {
    const table = read();
    expect(texted(table, 'thead th')).toEqual(['Pipe', 'Noted', 'Feet', 'Seen']);
    expect(texted(table, 'tbody tr:first-child > *')).toEqual(['Pipe to the tee', '', '6', '']);
    expect(texted(table, '.num')).toEqual(['Feet', '6', '4']);
  });

  it('names each row by its first cell, and escapes what a note says', () => {
    expect(texted(read(), 'tbody th[scope="row"]')).toEqual(['Pipe to the tee', 'Pipe <across> the axle']);
  });

  it('has no empty heading where a row has no name', () => {
    const table = read({ groups: rows<Pipe, number>([{ name: '', feet: 2, note: null }]) });
    expect([...table.querySelectorAll('tbody tr > *')].map((cell) => cell.localName)).toEqual(['td', 'td', 'td', 'td']);
  });

  it('says before each figure, for a phone, what stands over it; of an empty cell and of words that speak for themselves nothing', () => {
    expect([...read().querySelectorAll('[data-label]')].map((cell) => cell.getAttribute('data-label'))).toEqual(['Feet', 'Feet']);
  });

  it('has a block for each row on a phone, unless its rows stay rows', () => {
    expect(read({ set: 'pipes' }).className).toBe('pipes blocks');
    expect(read({ set: 'pipes', keepsRows: true }).className).toBe('pipes');
  });
});

describe('lines across a table', () => {
  const total = { words: 'Total', sum: 10 };

  it('run their words up to the first column that sums, and have a place for each column', () => {
    const foot = read({ foot: [total] }).querySelector('tfoot tr') as Element;
    expect(texts(foot.children)).toEqual(['Total', '10', '']);
    expect(widthOf(foot)).toBe(COLUMNS.length);
  });

  it('run across all of it where they sum nothing', () => {
    const table = read({ groups: [{ id: 'front', head: { words: 'Front', sum: null }, rows: PIPES }] });
    const head = table.querySelector('tbody#front > tr:first-child') as Element;
    expect(texts(head.children)).toEqual(['Front']);
    expect([widthOf(head), head.querySelector('th')?.getAttribute('scope')]).toEqual([COLUMNS.length, 'rowgroup']);
  });

  it('stand under the row that they follow', () => {
    const table = read({ under: ({ feet }) => (feet === 6 ? { ...total, words: 'So far', id: 'so-far' } : null) });
    expect(texted(table, 'tbody tr > :first-child')).toEqual(['Pipe to the tee', 'So far', 'Pipe <across> the axle']);
    expect(table.querySelector('tr#so-far')).not.toBeNull();
  });
});

it('sets a row once where pages share what was set', () => {
  const set: string[] = [];
  const counting: readonly Column<Pipe, number>[] = [{ head: 'Pipe', names: true, cell: ({ name }) => [name, set.push(name)] }];
  const known = new Map<Pipe, string>();
  const shared = (row: Pipe, make: () => string): string => keptIn(known, row, make);
  const first = texted(read({ columns: counting, shared }), 'th[scope="row"]');
  expect(texted(read({ columns: counting, shared }), 'th[scope="row"]')).toEqual(first);
  expect(set).toHaveLength(PIPES.length);
});

it('tells its rows apart for scripts and style, by what each has', () => {
  const table = read({ data: ({ name, note }) => ({ name, kinked: note === null ? null : '' }) });
  expect([...table.querySelectorAll('tbody tr')].map((row) => [row.getAttribute('data-name'), row.hasAttribute('data-kinked')])).toEqual([
    ['Pipe to the tee', false],
    ['Pipe <across> the axle', true],
  ]);
});
