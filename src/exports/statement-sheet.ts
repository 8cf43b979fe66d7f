/** A client statement as Typst source, for a typeset PDF on A4. Pure. */
import type { DocumentColumn, DocumentTable, StatementDocument } from './statement-document.ts';

export function statementSheet({ locale, title, head, tables, notes }: StatementDocument): string {
  const [language = 'en', region] = locale.split('-');
  return `#set document(title: ${literal(title)}, date: none)
#set page(paper: "a4", margin: (x: 20mm, y: 22mm), footer: context align(right, text(8pt)[#counter(page).display() / #counter(page).final().at(0)]))
#set text(size: 9.5pt, lang: ${literal(language)}${region?.length === 2 ? `, region: ${literal(region)}` : ''}, number-width: "tabular")
#show heading.where(level: 2): set text(size: 10.5pt)
#show heading.where(level: 2): set block(above: 14pt, below: 6pt)
#heading(level: 1, ${literal(title)})
#grid(columns: (auto, 1fr), column-gutter: 10pt, row-gutter: 5pt, ${head.map(({ name, words }) => `text(fill: luma(90), ${literal(name)}), text(${literal(words)})`).join(', ')})
${tables.map(tableSource).join('\n')}
#v(10pt)
${notes.map((note) => `#text(8.5pt, ${literal(note)})\n`).join('\n')}
`;
}

const WIDTHS: Readonly<Record<DocumentColumn['side'], string>> = { text: '1fr', date: 'auto', figure: 'auto' };

function tableSource({ title, columns, rows, foot }: DocumentTable): string {
  const aligns = columns.map(({ side }) => (side === 'figure' ? 'right' : 'left'));
  const cells = (row: readonly string[], weight = '') => row.map((cell) => `text(${weight}${literal(cell)})`).join(', ');
  const lines = [
    `columns: (${columns.map(({ side }) => WIDTHS[side]).join(', ')},), align: (${aligns.join(', ')},), stroke: none, inset: (x: 4pt, y: 3pt)`,
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
