/** A client statement as Typst source, for a typeset PDF on A4. Pure. */
import type { DocumentColumn, DocumentTable, StatementDocument } from './statement-document.ts';

export function statementSheet({ locale, title, head, tables, notes }: StatementDocument): string {
  const [language = 'en', region] = locale.split('-');
  return `#set document(title: ${literal(title)}, date: none)
#set page(paper: "a4", margin: (x: 18mm, top: 16mm, bottom: 18mm), footer: context align(right, text(8pt)[#counter(page).display() / #counter(page).final().at(0)]))
#set text(size: 9pt, lang: ${literal(language)}${region?.length === 2 ? `, region: ${literal(region)}` : ''}, number-width: "tabular")
#show heading.where(level: 2): set text(size: 10pt)
#show heading.where(level: 2): set block(above: 10pt, below: 4pt, sticky: true)
#heading(level: 1, ${literal(title)})
#grid(columns: (auto, 1fr), column-gutter: 10pt, row-gutter: 4pt, ${head.map(({ name, words }) => `text(fill: luma(90), ${literal(name)}), text(${literal(words)})`).join(', ')})
${tables.slice(0, -1).map(tableSource).join('\n')}
#block(breakable: false)[
${tables.slice(-1).map(tableSource).join('\n')}
#v(4pt)
#text(8pt, ${literal(notes.join(' '))})
]
`;
}

/** A table of more columns is set smaller, so that words beside figures have room. */
const MANY_COLUMNS = 8;

/** What a line of a day says takes most of the room that figures leave. */
function widthsOf(columns: readonly DocumentColumn[]): string {
  const first = columns[0]?.side === 'date' ? 1 : -1;
  return columns.map(({ side }, n) => (side !== 'text' ? 'auto' : n === first ? '2fr' : '1fr')).join(', ');
}

function tableSource({ title, columns, rows, foot }: DocumentTable): string {
  const aligns = columns.map(({ side }) => (side === 'figure' ? 'right' : 'left'));
  const isWide = columns.length >= MANY_COLUMNS;
  const cells = (row: readonly string[], weight = '') =>
    row.map((cell) => `text(${isWide ? '7.2pt, ' : ''}${weight}${literal(cell)})`).join(', ');
  const lines = [
    `columns: (${widthsOf(columns)},), align: (${aligns.join(', ')},), stroke: none, inset: (x: ${isWide ? 2.5 : 4}pt, y: 2.6pt)`,
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
