/** What the pages of a folder have in common, as markup made once for all of them. */
import type { Settings } from '../../../journal/model.ts';
import { keptIn, once } from '../../../journal/values/once.ts';
import { PAGES, type PageName } from '../../addresses.ts';
import { FEED } from '../../feed.ts';
import { type AnyQuestion, lookup } from '../../kept/question.ts';
import { ONE_STYLE, STYLES } from '../../styles.ts';
import { html, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { type ContentsEntry, contentsOf, groupOf } from './contents.ts';

/**
 * The links to the style sheets and the icon.
 *
 * @param apart as `dev` serves them, each as it is written
 */
export function headLinks(sheet: Sheet, apart: boolean): string {
  return inFolder(sheet, 'head', () => {
    const styles = (apart ? STYLES : [ONE_STYLE]).map((style) => html`<link rel="stylesheet" href="${sheet.link(`css/${style}.css`)}">`);
    const { address, title } = sheet.settings;
    const feed = address !== null && html`<link rel="alternate" type="application/atom+xml" title="${title}" href="${sheet.link(FEED)}">`;
    return html`${styles}${feed}<link rel="icon" href="${sheet.link('icon.svg')}" type="image/svg+xml">`.markup;
  });
}

const CONTENTS = lookup('contents', ({ record }) => contentsOf(record));

export const FRAME_QUESTIONS: readonly AnyQuestion[] = [CONTENTS];

/**
 * Where one is: the four groups, and under them the pages of the group that the page belongs to, itself among them.
 *
 * @param part what the page belongs to
 */
export function whereOneIs(sheet: Sheet, part: PageName | null): string {
  const itself = part !== null && PAGES[part] === sheet.address;
  const all = sheet.ask(CONTENTS);
  return inFolder(sheet, `where ${part} ${itself}`, () => {
    const group = groupOf(all, part);
    const groups = all.map(
      (one) => html`<li><a href="${sheet.toPage(one.entries[0].page)}"${one === group && html` aria-current="true"`}>${one.name}</a></li>`,
    );
    const pages = group && html`<ul class="pages">${entriesOf(sheet, group.entries, part, itself)}</ul>`;
    return html`<ul class="groups">${groups}</ul>${pages}`.markup;
  });
}

/** All pages under the names of their groups. */
export function allContents(sheet: Sheet, part: PageName | null): string {
  const itself = part !== null && PAGES[part] === sheet.address;
  const all = sheet.ask(CONTENTS);
  return inFolder(sheet, `all ${part} ${itself}`, () => {
    const groups = all.map(({ name, entries }) => html`<div><h2>${name}</h2><ul>${entriesOf(sheet, entries, part, itself)}</ul></div>`);
    return html`${groups}`.markup;
  });
}

function entriesOf(sheet: Sheet, entries: readonly ContentsEntry[], part: PageName | null, itself: boolean): Markup[] {
  const current = html` aria-current="${itself ? 'page' : 'true'}"`;
  return entries.map(({ page, name }) => html`<li><a href="${sheet.toPage(page)}"${page === part && current}>${name}</a></li>`);
}

const markupOf = once((_: Settings) => new Map<string, string>());

/** Markup that is alike on all pages of a folder. */
function inFolder({ settings, address }: Sheet, what: string, make: () => string): string {
  return keptIn(markupOf(settings), `${what} ${address.slice(0, address.lastIndexOf('/') + 1)}`, make);
}
