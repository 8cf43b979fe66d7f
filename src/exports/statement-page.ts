/** A client statement as one HTML file that needs nothing beside it and prints well. Pure. */
import type { HoursAtRate, Statement, StatementGroup } from '../journal/ledger/statement.ts';
import type { EntryKind, Settings } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import { formatMinutes, formatMoney } from '../journal/values/money.ts';

const KIND_WORDS: Readonly<Record<EntryKind, string>> = {
  labour: 'Labour',
  part: 'Parts',
  consumable: 'Consumables, as used',
  'outside-work': 'Outside work',
  tool: 'Tools',
  carriage: 'Carriage',
  fee: 'Fees',
  sale: 'Sold, set against the cost',
};

const STYLE = `body{font:11pt/1.45 Georgia,serif;color:#1b1d1f;background:#fff;max-width:52rem;margin:2rem auto;padding:0 1rem}
h1{font-weight:400;font-size:1.9rem;margin:0}h2{font-size:1.05rem;margin:2rem 0 .3rem}
table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums lining-nums}
th{text-align:left;font-weight:400;color:#555;border-bottom:1px solid #1b1d1f}td,th{padding:.2rem .6rem .2rem 0;vertical-align:top}
td{border-bottom:1px solid #ddd}td:first-child{white-space:nowrap}.n{text-align:right;white-space:nowrap;padding-right:0;padding-left:.6rem}
tfoot td{border-top:1px solid #1b1d1f;border-bottom:0;font-weight:700}
@media print{body{margin:0;max-width:none;font-size:9.5pt}thead{display:table-header-group}tr{break-inside:avoid}}`;

/** @returns a whole HTML document; every text of the journal in it is escaped */
export function statementPage(statement: Statement, settings: Settings): string {
  const money = (minor: number): string => formatMoney(minor, settings);
  const { vehicle } = settings;
  const what = [vehicle.year, vehicle.make, vehicle.model].filter((each) => each !== null).join(' ');
  const title = `Statement, ${statement.from} to ${statement.to}`;
  return `<!doctype html>
<html lang="${escapeHtml(settings.locale)}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(`${title}: ${settings.title}`)}</title><style>${STYLE}</style></head>
<body><main>
<h1>${escapeHtml(title)}</h1>
<p>${escapeHtml([settings.title, what].filter((each) => each !== '').join('. '))}.</p>
${statement.groups.length === 0 ? '<p>No entry of the ledger is of these days.</p>' : ''}
${statement.hours.length === 0 ? '' : hoursTable(statement.hours, money)}
${statement.groups.map((group) => groupTable(group, money)).join('\n')}
${taxTable(statement, money)}
<h2>Together</h2>
${table(
  ['', 'Amount'],
  [
    ['Cost, tax included', money(statement.cost.gross)],
    ['Mark-up', money(statement.markUp)],
  ],
  ['To pay', money(statement.charged)],
)}
<p>Each line is an entry of the ledger and says the day of its note. This is a statement of account, no tax invoice.</p>
</main></body></html>
`;
}

function hoursTable(hours: readonly HoursAtRate[], money: (minor: number) => string): string {
  const rows = hours.map(({ person, perHour, sum }) => [
    person.name,
    perHour === null ? 'not charged' : `${money(perHour)} an hour`,
    formatMinutes(sum.minutes),
    money(sum.gross),
  ]);
  return `<h2>Hours</h2>${table(['Person', 'Rate', 'Time', 'Amount'], rows)}`;
}

function groupTable(group: StatementGroup, money: (minor: number) => string): string {
  const rows = group.lines.map(({ entry, markUp, charged }) => [
    entry.date,
    entry.what,
    entry.subsystem,
    money(entry.gross),
    money(markUp),
    money(charged),
  ]);
  const foot = ['', 'Sum', '', money(group.sum.gross), money(group.markUp), money(group.charged)];
  return `<h2>${KIND_WORDS[group.kind]}</h2>${table(['Day', 'What', 'Subsystem', 'Cost', 'Mark-up', 'Charged'], rows, foot)}`;
}

function taxTable(statement: Statement, money: (minor: number) => string): string {
  if (statement.taxes.length === 0) return '';
  const rows = statement.taxes.map(({ rate, sum }) => [
    rate === null ? 'Inside consumables used' : `At ${toDecimal(rate.mul(100), 4)} %`,
    money(sum.net),
    money(sum.tax),
    money(sum.gross),
  ]);
  return `<h2>Tax, inside the amounts above</h2>${table(['Rate', 'Net', 'Tax', 'Gross'], rows)}`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[], foot: readonly string[] | null = null): string {
  const figures = new Set(['Amount', 'Cost', 'Mark-up', 'Charged', 'Net', 'Tax', 'Gross', 'Time']);
  const side = head.map((name) => (figures.has(name) ? ' class="n"' : ''));
  const cells = (row: readonly string[], tag: string) =>
    row.map((cell, i) => `<${tag}${tag === 'th' ? ' scope="col"' : ''}${side[i] ?? ''}>${escapeHtml(cell)}</${tag}>`).join('');
  const footRow = foot === null ? '' : `<tfoot><tr>${cells(foot, 'td')}</tr></tfoot>`;
  return `<table><thead><tr>${cells(head, 'th')}</tr></thead><tbody>${rows.map((row) => `<tr>${cells(row, 'td')}</tr>`).join('')}</tbody>${footRow}</table>`;
}

function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}
