/**
 * Where every page of the site is, and how one page links to another. The only module that knows.
 *
 * An address is a path from the root of the site that names a file (`parts/front-drum-near.html`),
 * with a fragment where one is needed. What goes into an `href` is made from two addresses by
 * `hrefBetween`, always relative, so that the site opens from a disk and from under any web path.
 */
import type { ConsumableId, IsoDate, ItemId, PartId, PositionId, SessionId, SubsystemId } from '../journal/model.ts';

/** A path from the root of the site, naming a file, perhaps with a fragment: `bags.html#bag-14`. */
export type Address = string;

/** Pages of which there is one. */
export const PAGES = {
  home: 'index.html',
  sessions: 'sessions.html',
  parts: 'parts.html',
  drawings: 'drawings.html',
  register: 'register.html',
  anyDay: 'any-day.html',
  ledger: 'ledger.html',
  client: 'client.html',
  entries: 'ledger/entries.html',
  costByPosition: 'ledger/by-position.html',
  consumables: 'consumables.html',
  stores: 'stores.html',
  bags: 'bags.html',
  letters: 'letters.html',
  items: 'items.html',
  workOrders: 'work-orders.html',
  methods: 'methods.html',
  measurements: 'measurements.html',
  unrecorded: 'unrecorded.html',
  forgotten: 'forgotten.html',
  identity: 'identity.html',
  pictures: 'pictures.html',
  plates: 'before-and-after.html',
  film: 'film.html',
  papers: 'papers.html',
  cautions: 'cautions.html',
  search: 'search.html',
  about: 'about.html',
} as const satisfies Record<string, Address>;

/** What scripts of pages work on, itself made from the record as a script. */
export const RECORD_SCRIPTS = {
  documents: 'search/documents.js',
  journal: 'any-day/record.js',
  states: 'states/positions.js',
} as const satisfies Record<string, Address>;

export type PageName = keyof typeof PAGES;

export const sessionAddress = (id: SessionId): Address => `sessions/${id}.html`;
export const positionAddress = (id: PositionId): Address => `parts/${id}.html`;
/** The sessions of one year as one continuous reading. */
export const yearAddress = (year: string): Address => `years/${year}.html`;
/** The letter of one month to the client. */
export const letterAddress = (month: string): Address => `letters/${month}.html`;
export const threadAddress = (id: string): Address => `threads/${id}.html`;
/** A part stands on the page of its position; the part that made the position is the page itself. */
export const partAddress = (part: { readonly id: PartId; readonly position: PositionId }): Address =>
  `${positionAddress(part.position)}#${part.id}`;
export const subsystemAddress = (id: SubsystemId): Address => `${PAGES.parts}#${id}`;
export const bagAddress = (bag: number): Address => `${PAGES.bags}#bag-${bag}`;
export const itemAddress = (id: ItemId): Address => `${PAGES.items}#${id}`;
export const consumableAddress = (id: ConsumableId): Address => `${PAGES.consumables}#${id}`;
/** The register as it stood on a past date. */
export const registerAtAddress = (at: IsoDate): Address => `register/${at}.html`;
/** The stores, bags and open items as they stood on a past date. */
export const stateAtAddress = (at: IsoDate): Address => `as-at/${at}.html`;
/** The ledger as it stood on a past date. */
export const ledgerAtAddress = (at: IsoDate): Address => `ledger/as-at/${at}.html`;
/** The account of one year by month, where the ledger is too long for one page. */
export const ledgerYearAddress = (year: string): Address => `ledger/year/${year}.html`;
/** What is charged and on no statement to the client yet. */
export const CLIENT_SINCE: Address = 'client/since.html';
/** A statement that was sent to the client. */
export const clientStatementAddress = (number: number): Address => `client/statement-${number}.html`;
/** What the positions of one subsystem took, where there are too many for one page. */
export const costBySubsystemAddress = (id: SubsystemId): Address => `ledger/by-position/${id}.html`;
/** The bills of one year, where there are too many for the page of papers. */
export const billsOfYearAddress = (year: string): Address => `ledger/bills/${year}.html`;
/** A file of the journal that is published as it is: a paper, a small picture, a clip. */
export const fileAddress = (path: string): Address => `files/${path}`;
/** A table or workbook to download: `register.csv`. */
export const dataAddress = (name: string): Address => `data/${name}`;

/** The path of the page, without its fragment. */
export function pageOf(address: Address): Address {
  const hash = address.indexOf('#');
  return hash < 0 ? address : address.slice(0, hash);
}

/**
 * The relative link from one page to another, percent-encoded where a path needs it.
 *
 * @param from the address of the page that the link stands on
 * @param to the address it leads to; on the same page only the fragment is left
 * @returns `../bags.html#bag-14`; never empty, never beginning with `/`
 */
export function hrefBetween(from: Address, to: Address): string {
  const page = pageOf(to);
  const fragment = to.slice(page.length);
  if (page === pageOf(from) && fragment !== '') return encodeFragment(fragment);
  const here = pageOf(from).split('/').slice(0, -1);
  const there = page.split('/');
  const shared = sharedLength(here, there.slice(0, -1));
  const steps = [...here.slice(shared).map(() => '..'), ...there.slice(shared).map(encodeURIComponent)];
  return steps.join('/') + encodeFragment(fragment);
}

/**
 * The links of one page: `const link = linksFrom(sessionAddress(id)); link(PAGES.home)` is `../index.html`.
 */
export function linksFrom(from: Address): (to: Address) => string {
  return (to) => hrefBetween(from, to);
}

/** The address without its `.html`, as Astro's dynamic routes take it: `sessions/2031-03-12-front-brakes`. */
export function routeOf(address: Address): string {
  return pageOf(address).replace(/\.html$/, '');
}

function sharedLength(a: readonly string[], b: readonly string[]): number {
  let n = 0;
  while (n < a.length && n < b.length && a[n] === b[n]) n += 1;
  return n;
}

function encodeFragment(fragment: string): string {
  return fragment === '' ? '' : `#${encodeURIComponent(fragment.slice(1))}`;
}
