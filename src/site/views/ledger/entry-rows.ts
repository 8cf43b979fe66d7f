import type { Entry } from '../../../journal/record.ts';
import { html, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, ENTRY_KIND_WORDS } from '../page/words.ts';
import { entryAddress } from './entry-place.ts';
import { foreignWords } from './foreign.ts';
import { type RunningTotal, runningAnchor } from './running-totals.ts';

/** An entry as a row of an account: date, what, kind, laid to, hours, paid, job cost. */
export function entryRow(sheet: Sheet, entry: Entry): Markup {
  const { figures } = sheet;
  const on = sheet.charge(entry);
  return html`<tr><td class="date">${figures.shortDate(entry.date)}</td><td>${whatOf(sheet, entry)}</td><td>${capital(ENTRY_KIND_WORDS[entry.kind])}</td><td><a href="${on.href}">${on.name}</a></td><td class="num">${entry.minutes !== null && figures.time(entry.minutes)}</td><td class="num">${entry.paid && figures.amount(entry.gross)}</td><td class="num">${entry.cost && figures.amount(entry.gross)}</td></tr>`;
}

/** An entry as a row of what one position took: date, what, kind, hours, job cost. */
export function costRow(sheet: Sheet, entry: Entry): Markup {
  const { figures } = sheet;
  return html`<tr><td class="date">${figures.shortDate(entry.date)}</td><td>${whatOf(sheet, entry)}</td><td>${capital(ENTRY_KIND_WORDS[entry.kind])}</td><td class="num">${entry.minutes !== null && figures.time(entry.minutes)}</td><td class="num">${figures.amount(entry.gross)}</td></tr>`;
}

/** What an entry is, leading to it in the account of its session; who worked, or what the bill has in its own currency. */
function whatOf(sheet: Sheet, entry: Entry): Markup {
  const person = entry.person === null ? null : html`<span class="sub">${sheet.personName(entry.person)}</span>`;
  const foreign = entry.foreign === null ? null : html`<span class="sub">${foreignWords(sheet, entry.foreign)}</span>`;
  return html`<a href="${sheet.link(entryAddress(entry))}">${entry.what}</a>${person}${foreign}`;
}

/** The rows of many entries as one piece of markup, each running total under the last entry it sums. */
export function entryRows(sheet: Sheet, entries: readonly Entry[], running: readonly RunningTotal[] = []): string {
  const under = new Map(running.map((total) => [total.last, total]));
  return entries
    .map((entry) => {
      const total = under.get(entry);
      return `${entryRow(sheet, entry).markup}${total ? runningRow(sheet, total).markup : ''}`;
    })
    .join('');
}

function runningRow({ figures }: Sheet, total: RunningTotal): Markup {
  const { minutes, paid, cost, costWithoutLabour } = total.totals;
  return html`<tr class="running-total by-the-way" id="${runningAnchor(total)}"><th scope="row" colspan="4" class="by-the-way">All up to ${figures.date(total.last.date)}; without labour ${figures.amount(costWithoutLabour)}</th><td class="num">${minutes > 0 && figures.time(minutes)}</td><td class="num">${figures.amount(paid)}</td><td class="num">${figures.amount(cost)}</td></tr>`;
}
