/** A client statement as one HTML file that needs nothing beside it and prints well. Pure. */
import type { DocumentTable, StatementDocument } from './statement-document.ts';

const STYLE = `:root{color-scheme:light}body{font:11pt/1.45 Georgia,serif;color:#1b1d1f;background:#fff;max-width:58rem;margin:2rem auto;padding:0 1rem}
h1{font-weight:400;font-size:1.9rem;margin:0}h2{font-size:1.05rem;margin:2rem 0 .3rem}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.1rem 1rem;margin:1rem 0}dt{color:#555}dd{margin:0}
div{overflow-x:auto}table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums lining-nums}
th{text-align:left;font-weight:400;color:#555;border-bottom:1px solid #1b1d1f}td,th{padding:.2rem .8rem .2rem 0;vertical-align:top}
td{border-bottom:1px solid #ddd}.d{white-space:nowrap;width:6.4rem}.n{text-align:right;white-space:nowrap;padding-right:0;padding-left:.6rem;width:5.6rem}
tfoot td{border-top:1px solid #1b1d1f;border-bottom:0;font-weight:700}
@media print{body{margin:0;max-width:none;font-size:9.5pt}div{overflow:visible}thead{display:table-header-group}tfoot{display:table-row-group}tr{break-inside:avoid}h2{break-after:avoid}}`;

/** @returns a whole HTML document; every text of the journal in it is escaped */
export function statementPage({ locale, title, head, tables, notes }: StatementDocument): string {
  return `<!doctype html>
<html lang="${escapeHtml(locale)}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title><style>${STYLE}</style></head>
<body><main>
<h1>${escapeHtml(title)}</h1>
<dl>${head.map(({ name, words }) => `<dt>${escapeHtml(name)}</dt><dd>${escapeHtml(words)}</dd>`).join('')}</dl>
${tables.map(tableHtml).join('\n')}
${notes.map((note) => `<p>${escapeHtml(note)}</p>`).join('\n')}
</main></body></html>
`;
}

const CLASSES = { text: '', date: ' class="d"', figure: ' class="n"' } as const;

function tableHtml({ title, columns, rows, foot }: DocumentTable): string {
  const classes = columns.map(({ side }) => CLASSES[side]);
  const cells = (row: readonly string[]) => row.map((cell, i) => `<td${classes[i] ?? ''}>${escapeHtml(cell)}</td>`).join('');
  const headRow = columns.map(({ name }, i) => `<th scope="col"${classes[i] ?? ''}>${escapeHtml(name)}</th>`).join('');
  const body = rows.map((row) => `<tr>${cells(row)}</tr>`).join('');
  const footRow = foot === null ? '' : `<tfoot><tr>${cells(foot)}</tr></tfoot>`;
  return `<h2>${escapeHtml(title)}</h2><div tabindex="0"><table><thead><tr>${headRow}</tr></thead><tbody>${body}</tbody>${footRow}</table></div>`;
}

function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}
