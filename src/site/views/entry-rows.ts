import type { Entry } from '../../journal/record.ts';
import { entryAddress } from './entry-place.ts';
import { html, type Markup } from './html.ts';
import type { Sheet } from './sheet.ts';
import { capital, ENTRY_KIND_WORDS } from './words.ts';

/** An entry as a row of an account: date, what, kind, laid to, hours, paid, job cost. */
export function entryRow(sheet: Sheet, entry: Entry): Markup {
  const { figures } = sheet;
  const on = sheet.charge(entry);
  const person = entry.person === null ? null : html`<span class="sub">${sheet.personName(entry.person)}</span>`;
  return html`<tr><td class="date">${figures.shortDate(entry.date)}</td><td><a href="${sheet.link(entryAddress(entry))}">${entry.what}</a>${person}</td><td>${capital(ENTRY_KIND_WORDS[entry.kind])}</td><td><a href="${on.href}">${on.name}</a></td><td class="num">${entry.minutes !== null && figures.time(entry.minutes)}</td><td class="num">${entry.paid && figures.amount(entry.gross)}</td><td class="num">${entry.cost && figures.amount(entry.gross)}</td></tr>`;
}

/** The rows of many entries as one piece of markup. */
export function entryRows(sheet: Sheet, entries: readonly Entry[]): string {
  return entries.map((entry) => entryRow(sheet, entry).markup).join('');
}
