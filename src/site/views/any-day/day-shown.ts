/** The record as it stood at the end of any day, as markup: what the pages of past days show, by the same functions. */
import { ledgerAt } from '../../../journal/ledger/ledger-at.ts';
import type { IsoDate } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { originalityAt } from '../../../journal/registers/originality.ts';
import { NO_PICTURES } from '../../../photos/plan.ts';
import { PAGES } from '../../addresses.ts';
import { bookTable, kindRows, personRows, subsystemRows } from '../books/book-table.ts';
import { drawingKey } from '../drawings/drawing-key.ts';
import { mapOf } from '../drawings/in-words.ts';
import { itemList } from '../items/item-list.ts';
import { keepingWords } from '../keepers/keepers.ts';
import { budgetTable } from '../ledger/budget-table.ts';
import { ledgerOfDay } from '../ledger/ledger-of-day.ts';
import { reconcileTable } from '../ledger/reconcile-table.ts';
import { html, type Markup } from '../page/html.ts';
import { type RecordSheet, sheetOf } from '../page/sheet.ts';
import { accountName, capital, nothingBooked, whyNoAccount } from '../page/words.ts';
import { registerThen } from '../register/register-page.ts';
import { registerTable } from '../register/register-table.ts';
import { shelfTable } from '../stock/stock-tables.ts';
import { bagList } from '../stores/bag-entry.ts';
import { storeTable } from '../stores/store-table.ts';
import { storesThen } from '../stores/stores-page.ts';
import { outWords, unplacedWords } from '../stores/where.ts';
import type { SetTable } from '../tables/table.ts';
import { openOn } from './open-on.ts';

export interface DayShown {
  /** `As it stood on 5 April 2031` */
  readonly title: string;
  readonly markup: string;
}

/** Sets days of one record. */
export function daySetter(record: JournalRecord): (date: IsoDate) => DayShown {
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
  const sheet = sheetOf(site, PAGES.anyDay);
  return (date) => {
    const parts = [standfirst(sheet, date), drawings(sheet, date), register(sheet, date), stores(sheet, date), ledger(sheet, date)];
    return { title: `As it stood on ${sheet.date(date)}`, markup: html`${parts}`.markup };
  };
}

const SECTIONS = [
  ['register', 'The register'],
  ['stores', 'Stores'],
  ['bags', 'Bags that were filled'],
  ['items', 'Open items'],
  ['ledger', 'The ledger'],
] as const;

function standfirst(sheet: RecordSheet, date: IsoDate): Markup {
  const { share } = originalityAt(sheet.record, date).overall;
  const original = share !== null && ` Originality ${sheet.figures.share(share.valueOf(), 1)}.`;
  const ways = SECTIONS.map(([id, words]) => html`<li><a href="#${id}">${words}</a></li>`);
  return html`<p>At the end of that day, from the notes up to then.${original} ${keepingWords(sheet, date)}</p><ul class="running on-screen" aria-label="Of that day">${ways}</ul>`;
}

function drawings(sheet: RecordSheet, date: IsoDate): Markup {
  const { drawings: drawn, states } = mapOf(sheet, date, true);
  return html`${drawn.map(({ title, markup }) => html`<figure class="drawing">${{ markup }}${title !== null && html`<figcaption>${title}</figcaption>`}</figure>`)}${drawn.length > 0 && drawingKey(states)}`;
}

function register(sheet: RecordSheet, date: IsoDate): Markup {
  const { rows } = registerThen(sheet, date, null);
  const table = registerTable(sheet, rows, originalityAt(sheet.record, date), `Register as at ${sheet.date(date)}`, PAGES.anyDay);
  return html`<h2 id="register">The register</h2>${scrolling(table)}`;
}

function stores(sheet: RecordSheet, date: IsoDate): Markup {
  const { stores: lying, out, bags, items } = storesThen(sheet, date);
  const lists = [
    ...lying.map(({ store, things }) => ({ name: capital(store ?? unplacedWords(sheet)), things })),
    ...out.map(({ firm, things }) => ({ name: outWords(sheet, firm), things })),
  ].map(({ name, things }) => html`<h3>${name}</h3>${scrolling(storeTable(sheet, things, name, { at: date }))}`);
  return html`<h2 id="stores">Stores</h2>${lists.length === 0 ? nothing('Nothing lay in the stores.') : lists}
<h2 id="bags">Bags that were filled</h2>${bags.length === 0 ? nothing('No bag was filled.') : bagList(sheet, bags, date)}
<h2 id="items">Open items</h2>${items.length === 0 ? nothing('No item was open.') : itemList(sheet, items, { at: date, anchored: false })}`;
}

function ledger(sheet: RecordSheet, date: IsoDate): Markup {
  const { at, line, budgets } = ledgerOfDay(sheet, ledgerAt(sheet.record, date));
  const open = openOn(sheet, date);
  const people = personRows(sheet, at);
  const hasMoney = sheet.figures.hasMoney;
  const budgeted = budgets.some(({ hours, money }) => hours !== null || money !== null);
  const booked = at.bySubsystem.size > 0;
  const keeps = accountName(sheet) !== null;
  return html`<h2 id="ledger">The ledger</h2>${!keeps && nothing(whyNoAccount(sheet.copy))}${keeps && !booked && nothing(nothingBooked(sheet.copy))}
${hasMoney && scrolling(reconcileTable(sheet, at, line, open, '#shelf'))}
${keeps && booked && headed('subsystems', 'By subsystem', bookTable(sheet, subsystemRows(sheet, at), 'Subsystem', open, at.whole))}
${budgeted && headed('budgets', 'Budgets', budgetTable(sheet, budgets, open))}
${hasMoney && at.byKind.size > 0 && headed('kinds', 'By kind', bookTable(sheet, kindRows(at), 'Kind', open, at.whole))}
${people.length > 0 && headed('people', 'By person', bookTable(sheet, people, 'Person', open))}
${at.shelf.some(({ movements }) => movements > 0) && headed('shelf', 'Consumables on the shelf', shelfTable(sheet, at.shelf))}`;
}

const headed = (id: string, words: string, table: SetTable): Markup => html`<h3 id="${id}">${words}</h3>${scrolling(table)}`;

const nothing = (words: string): Markup => html`<p class="nothing">${words}</p>`;

function scrolling({ label, markup }: SetTable): Markup {
  return html`<div class="scroll" role="region" aria-label="${label}" tabindex="0">${{ markup }}</div>`;
}
