/** A client statement as Typst source, for a typeset PDF on A4. Pure. */
import type { DocumentColumn, DocumentTable, StatementDocument } from './statement-document.ts';

/** How a sheet is set: `tight` where that saves a page. */
export type Setting = 'loose' | 'tight';

const SIZES = {
  loose: { text: 9, many: 7.2, leading: 0.65, heading: 10, above: 10, row: 2.6, margins: 'x: 18mm, top: 16mm, bottom: 18mm' },
  tight: { text: 8, many: 7, leading: 0.5, heading: 8.6, above: 6.5, row: 1.7, margins: 'x: 14mm, top: 12mm, bottom: 15mm' },
} as const;
type Sizes = (typeof SIZES)[Setting];

/** Small tables that close a statement stand beside each other, and together with what is to be paid. */
const CLOSING: ReadonlySet<string> = new Set(['tax-charged', 'tax-paid', 'together', 'received', 'account']);
/** More rows than this may not fit on what is left of a page, and are set one table under the other. */
const MOST_BESIDE = 18;

/** @returns Typst source that notes on how many pages it is set */
export function statementSheet({ locale, title, head, tables, notes }: StatementDocument, setting: Setting = 'loose'): string {
  const [language = 'en', region] = locale.split('-');
  const sizes = SIZES[setting];
  const closing = tables.filter(({ id }) => CLOSING.has(id));
  const isShort = closing.reduce((sum, { rows }) => sum + rows.length, 0) <= MOST_BESIDE;
  const last = isShort ? closing : tables.slice(-1);
  const set = (some: readonly DocumentTable[]) => some.map((table) => tableSource(table, sizes)).join('\n');
  return `#set document(title: ${literal(title)}, date: none)
#set page(paper: "a4", margin: (${sizes.margins}), footer: context align(right, text(8pt)[#counter(page).display() / #counter(page).final().at(0)]))
#set text(size: ${sizes.text}pt, lang: ${literal(language)}${region?.length === 2 ? `, region: ${literal(region)}` : ''}, number-width: "tabular")
#set par(leading: ${sizes.leading}em)
#show heading.where(level: 2): set text(size: ${sizes.heading}pt)
#show heading.where(level: 2): set block(above: ${sizes.above}pt, below: 4pt, sticky: true)
#heading(level: 1, ${literal(title)})
#grid(columns: (auto, 1fr), column-gutter: 10pt, row-gutter: 4pt, ${head.map(({ name, words }) => `text(fill: luma(90), ${literal(name)}), text(${literal(words)})`).join(', ')})
${set(tables.filter((table) => !last.includes(table)))}
#block(breakable: false)[
${isShort ? besideEachOther(last, set) : set(last)}
#v(4pt)
#text(8pt, ${literal(notes.join(' '))})
#context [#metadata(counter(page).final().at(0)) <cut>]
]
`;
}

/** Read down the left and then down the right, where what is to be paid comes last. */
function besideEachOther(tables: readonly DocumentTable[], set: (some: readonly DocumentTable[]) => string): string {
  const left = tables.filter(({ id }) => id !== 'received' && id !== 'account');
  const right = tables.filter((table) => !left.includes(table));
  return `#grid(columns: (1fr, 1fr), column-gutter: 16pt, [\n${set(left)}\n], [\n${set(right)}\n])`;
}

/** A table of more columns is set smaller, so that words beside figures have room. */
const MANY_COLUMNS = 8;

/** What a line of a day says takes most of the room that figures leave. */
function widthsOf(columns: readonly DocumentColumn[]): string {
  const first = columns[0]?.side === 'date' ? 1 : -1;
  return columns.map(({ side }, n) => (side !== 'text' ? 'auto' : n === first ? '2fr' : '1fr')).join(', ');
}

function tableSource({ title, columns, rows, foot }: DocumentTable, sizes: Sizes): string {
  const aligns = columns.map(({ side }) => (side === 'figure' ? 'right' : 'left'));
  const isWide = columns.length >= MANY_COLUMNS;
  const cells = (row: readonly string[], weight = '') =>
    row.map((cell) => `text(${isWide ? `${sizes.many}pt, ` : ''}${weight}${literal(cell)})`).join(', ');
  const lines = [
    `columns: (${widthsOf(columns)},), align: (${aligns.join(', ')},), stroke: none, inset: (x: ${isWide ? 2.5 : 4}pt, y: ${sizes.row}pt)`,
    `table.header(${cells(
      columns.map(({ name }) => name),
      'fill: luma(90), ',
    )})`,
    'table.hline(stroke: 0.6pt)',
    ...rows.map((row) => cells(row)),
    ...(foot === null ? [] : ['table.hline(stroke: 0.6pt)', cells(foot, 'weight: "bold", ')]),
  ];
  return `#heading(level: 2, ${literal(title)})\n#table(${lines.join(',\n  ')})`;
}

/** A text as a string of Typst. */
function literal(text: string): string {
  return `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n')}"`;
}
