/** A client statement as one HTML file that needs nothing beside it and prints well. Pure. */
import type { HoursAtRate, Statement, StatementGroup } from '../journal/ledger/statement.ts';
import type { EntryKind, IsoDate, Journal, Minor, PersonId, SubsystemId } from '../journal/model.ts';
import { formatMinutes, formatMoney } from '../journal/values/money.ts';
import { standingWords } from './tax-words.ts';

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

const STYLE = `:root{color-scheme:light}body{font:11pt/1.45 Georgia,serif;color:#1b1d1f;background:#fff;max-width:58rem;margin:2rem auto;padding:0 1rem}
h1{font-weight:400;font-size:1.9rem;margin:0}h2{font-size:1.05rem;margin:2rem 0 .3rem}
div{overflow-x:auto}table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums lining-nums}
th{text-align:left;font-weight:400;color:#555;border-bottom:1px solid #1b1d1f}td,th{padding:.2rem .8rem .2rem 0;vertical-align:top}
td{border-bottom:1px solid #ddd}.d{white-space:nowrap;width:6.4rem}.s{width:8.5rem}.n{text-align:right;white-space:nowrap;padding-right:0;padding-left:.6rem;width:5.6rem}
tfoot td{border-top:1px solid #1b1d1f;border-bottom:0;font-weight:700}
@media print{body{margin:0;max-width:none;font-size:9.5pt}div{overflow:visible}thead{display:table-header-group}tfoot{display:table-row-group}tr{break-inside:avoid}h2{break-after:avoid}}`;

/** What the page names: subsystems and people by their names, days as the journal's locale writes them. */
export type StatementNames = Pick<Journal, 'settings' | 'subsystems' | 'people'>;

/** How one statement writes its figures and names. */
interface Words {
  money(minor: Minor): string;
  day(date: IsoDate): string;
  subsystem(id: SubsystemId): string;
  person(id: PersonId | null): string;
}

/** @returns a whole HTML document; every text of the journal in it is escaped */
export function statementPage(statement: Statement, journal: StatementNames): string {
  const { settings } = journal;
  const { vehicle } = settings;
  const words = wordsOf(journal);
  const what = [vehicle.year, vehicle.make, vehicle.model].filter((each) => each !== null).join(' ');
  const title = `Statement, ${words.day(statement.from)} to ${words.day(statement.to)}`;
  return `<!doctype html>
<html lang="${escapeHtml(settings.locale)}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(`${title}: ${settings.title}`)}</title><style>${STYLE}</style></head>
<body><main>
<h1>${escapeHtml(title)}</h1>
<p>${escapeHtml([settings.title, what].filter((each) => each !== '').join('. '))}.</p>
${statement.groups.length === 0 ? '<p>No entry of the ledger is of these days.</p>' : ''}
${statement.hours.length === 0 ? '' : hoursTable(statement.hours, words)}
${statement.groups.map((group) => groupTable(group, words)).join('\n')}
${taxTable(statement, words)}
<h2>Together</h2>
${table(
  [WIDE, amountOf('Amount')],
  [
    ['Cost, tax included', words.money(statement.cost.gross)],
    ['Mark-up', words.money(statement.markUp)],
  ],
  ['To pay', words.money(statement.charged)],
)}
<p>Each line is an entry of the ledger and says the day of its note. This is a statement of account, no tax invoice.</p>
</main></body></html>
`;
}

function wordsOf({ settings, subsystems, people }: StatementNames): Words {
  const dates = new Intl.DateTimeFormat(settings.locale, { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
  return {
    money: (minor) => formatMoney(minor, settings),
    day: (date) => dates.format(new Date(`${date}T00:00Z`)),
    subsystem: (id) => subsystems.get(id)?.name ?? id,
    person: (id) => people.get(id ?? '')?.name ?? '',
  };
}

function hoursTable(hours: readonly HoursAtRate[], { money }: Words): string {
  const rows = hours.map(({ person, perHour, sum }) => [
    person.name,
    perHour === null ? 'not charged' : `${money(perHour)} an hour`,
    formatMinutes(sum.minutes),
    money(sum.gross),
  ]);
  const all = hours.reduce((sum, one) => ({ minutes: sum.minutes + one.sum.minutes, gross: sum.gross + one.sum.gross }), {
    minutes: 0,
    gross: 0,
  });
  const foot = ['Sum', '', formatMinutes(all.minutes), money(all.gross)];
  return `<h2>Hours</h2>${table([{ name: 'Person' }, { name: 'Rate' }, amountOf('Time'), amountOf('Amount')], rows, foot)}`;
}

function groupTable({ kind, lines, sum, markUp, charged }: StatementGroup, words: Words): string {
  const { money } = words;
  const labour = kind === 'labour';
  const time = (minutes: number): string[] => (labour ? [formatMinutes(minutes)] : []);
  const rows = lines.map(({ entry, markUp: on, charged: asked }) => [
    words.day(entry.date),
    labour ? `${words.person(entry.person)}: ${entry.what}` : entry.what,
    words.subsystem(entry.subsystem),
    ...time(entry.minutes ?? 0),
    money(entry.gross),
    money(on),
    money(asked),
  ]);
  const head = [
    { name: 'Day', class: 'd' },
    { name: 'What' },
    { name: 'Subsystem', class: 's' },
    ...(labour ? [amountOf('Time')] : []),
    ...['Cost', 'Mark-up', 'Charged'].map(amountOf),
  ];
  const foot = ['', 'Sum', '', ...time(sum.minutes), money(sum.gross), money(markUp), money(charged)];
  return `<h2>${KIND_WORDS[kind]}</h2>${table(head, rows, foot)}`;
}

function taxTable({ taxes }: Statement, { money }: Words): string {
  if (taxes.every(({ standing, sum }) => standing === 'unsaid' || (standing === 'several' && sum.tax === 0))) return '';
  const rows = taxes.map(({ sum, ...row }) => [standingWords(row), money(sum.net), money(sum.tax), money(sum.gross)]);
  return `<h2>Tax, inside the amounts above</h2>${table([{ name: 'Rate' }, ...['Net', 'Tax', 'Gross'].map(amountOf)], rows)}`;
}

interface Column {
  readonly name: string;
  readonly class?: string;
}

const WIDE: Column = { name: '' };
const amountOf = (name: string): Column => ({ name, class: 'n' });

function table(head: readonly Column[], rows: readonly (readonly string[])[], foot: readonly string[] | null = null): string {
  const side = head.map((column) => (column.class === undefined ? '' : ` class="${column.class}"`));
  const cells = (row: readonly string[]) => row.map((cell, i) => `<td${side[i] ?? ''}>${escapeHtml(cell)}</td>`).join('');
  const headRow = head.map(({ name }, i) => `<th scope="col"${side[i] ?? ''}>${escapeHtml(name)}</th>`).join('');
  const body = rows.map((row) => `<tr>${cells(row)}</tr>`).join('');
  const footRow = foot === null ? '' : `<tfoot><tr>${cells(foot)}</tr></tfoot>`;
  return `<div tabindex="0"><table><thead><tr>${headRow}</tr></thead><tbody>${body}</tbody>${footRow}</table></div>`;
}

function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}
