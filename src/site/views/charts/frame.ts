/** What the pages of a folder have in common, as markup made once for all of them. */
import { keptIn, once } from '../../../journal/values/once.ts';
import type { PageName } from '../../addresses.ts';
import type { SiteRecord } from '../../record.ts';
import { CONTENTS } from '../page/contents.ts';
import { html } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';

/** In the order in which they build on one another. */
const STYLES = [
  'type',
  'page',
  'navigation',
  'tables',
  'columns',
  'pictures',
  'full-size',
  'article',
  'home',
  'lists',
  'drawings',
  'charts',
  'narrow',
  'print',
];

/** The links to the style sheets and the icon. */
export function headLinks(sheet: Sheet): string {
  return inFolder(sheet, 'head', () => {
    const styles = STYLES.map((style) => html`<link rel="stylesheet" href="${sheet.link(`css/${style}.css`)}">`);
    return html`${styles}<link rel="icon" href="${sheet.link('icon.svg')}" type="image/svg+xml">`.markup;
  });
}

/** @param part the entry that the page belongs to */
export function contentsEntries(sheet: Sheet, part: PageName | null): string {
  return inFolder(sheet, `contents ${part}`, () => {
    const entry = ({ page, name }: (typeof CONTENTS)[number]) =>
      html`<li><a href="${sheet.toPage(page)}"${page === part && html` aria-current="page"`}>${name}</a></li>`;
    return html`${CONTENTS.map(entry)}`.markup;
  });
}

const markupOf = once((_: SiteRecord) => new Map<string, string>());

/** Markup that is alike on all pages of a folder. */
function inFolder({ record, address }: Sheet, what: string, make: () => string): string {
  return keptIn(markupOf(record), `${what} ${address.slice(0, address.lastIndexOf('/') + 1)}`, make);
}
