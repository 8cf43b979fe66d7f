import { wayWords } from '../../../exports/tax-words.ts';
import type { Bill, BillWay } from '../../../journal/model.ts';
import type { Entry } from '../../../journal/record.ts';
import { sessionAddress } from '../../addresses.ts';
import { entryAddress } from '../ledger/entry-place.ts';
import { html, joined, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { paperFacts } from './papers.ts';

/**
 * A bill as a row: date, seller, what with a link to each line of the note, tax, gross, and its paper.
 *
 * @param papered false in a table of bills that all lack one
 */
export function billRow(sheet: Sheet, bill: Bill, papered: boolean): Markup {
  const { figures } = sheet;
  const { date, session, from, lines, gross, paper } = bill;
  const way = bill.way !== null && !isUsual(bill.way) ? bill.way : null;
  const tax = lines.reduce((sum, line) => sum + line.tax, 0);
  const account = sheet.link(`${sessionAddress(session)}#account`);
  return html`<tr><td class="date"><a href="${account}">${figures.shortDate(date)}</a></td><td>${from ?? 'not said'}</td><td class="what">${whatOf(sheet, bill)}</td><td class="num" data-label="Tax">${figures.amount(tax)}${way && html`<span class="sub">${wayWords(way)}</span>`}</td><td class="num" data-label="Gross"><a href="${account}">${figures.amount(gross)}</a></td>${papered && html`<td>${paper === null ? 'no paper' : paperLink(sheet, paper)}</td>`}</tr>`;
}

/** As most sellers reckon, which needs no words. */
const isUsual = ({ tax, sharedFirst }: BillWay): boolean => tax === 'line' && !sharedFirst;

/** What each line of the bill is, leading to its entry in the account of the session: the first, where a line is split. */
function whatOf(sheet: Sheet, bill: Bill): Markup {
  const entries = (sheet.index.entriesOf.get(bill.session) ?? []).filter((entry) => entry.bill === bill.id);
  const byLine = new Map(entries.toReversed().map((entry) => [lineOf(entry), entry]));
  return joined(
    bill.lines.map(({ what, place }) => {
      const entry = byLine.get(`${place.line}:${place.column}`);
      return entry ? html`<a href="${sheet.link(entryAddress(entry))}">${what}</a>` : html`${what}`;
    }),
    '; ',
  );
}

const lineOf = ({ place }: Entry): string => `${place.line}:${place.column}`;

function paperLink(sheet: Sheet, path: string): Markup | string {
  const facts = paperFacts(sheet, path);
  return facts === null ? path : html`<a href="${facts.href}">Paper</a> (${facts.words})`;
}
