import type { IsoDate } from '../../../journal/model.ts';
import { type BagRow, isLeftEmpty, leftBag } from '../../../journal/registers/bags.ts';
import { inARow, numbersInWords, someInWords } from '../../../journal/replay/words.ts';
import { hazardMark } from '../cautions/hazard-mark.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, partLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, counted, sentence } from '../page/words.ts';
import { hazardsIn } from './stores-page.ts';

/**
 * What is told of a bag beside its number and its picture: what it holds, what it came off, how it goes back, since when.
 *
 * @param at the day as of which it is told
 */
export function bagWords(sheet: Sheet, bag: BagRow, at: IsoDate = sheet.day): Markup {
  const { holds, off, goesBack } = bag.filling;
  const mark = hazardMark(sheet, hazardsIn(sheet, [bag], at));
  return html`<p>${inARow(holds)}${off !== null && html`, off ${partLink(sheet, off)}`}.</p>${mark && html`<p>${mark}</p>`}${
    goesBack !== null && html`<p><b>Goes back:</b> ${sentence(goesBack)}</p>`
  }${inside(sheet, bag)}${goneFrom(sheet, bag)}<p class="note">${since(sheet, bag)}.</p>${bag.earlier.map((before) => earlier(sheet, before))}`;
}

/** `2 bags filled, 1 lies emptied`: as they are, for one that was emptied may be full again. */
export function bagsCounted(filled: number, emptied: number): string {
  const empty = emptied === 0 ? 'none lies emptied' : `${emptied} ${emptied === 1 ? 'lies' : 'lie'} emptied`;
  return capital(`${counted(filled, 'bag')} filled, ${empty}`);
}

/** Bags where they are not at home: each by its number, which leads to its page, with what is told of it. */
export function bagList(sheet: Sheet, bags: readonly BagRow[], at: IsoDate): Markup {
  const entries = bags.map(
    (bag) =>
      html`<li><p class="bag-number"><a href="${sheet.toBag(bag.bag)}"><span class="seen-by-readers-only">Bag </span>${bag.bag}</a></p><div>${bagWords(sheet, bag, at)}</div></li>`,
  );
  return html`<ul class="bags">${entries}</ul>`;
}

/** What went elsewhere from a bag that no note says was emptied; false where nothing did. */
export function goneFrom(sheet: Sheet, bag: BagRow): Markup | false {
  const gone = leftBag(bag).map(({ part, count, of, which }) => html`${partLink(sheet, part)}${bracketed(someInWords(count, of, which))}`);
  if (gone.length === 0) return false;
  return html`<p class="note">${joined(gone, ', ')}: gone elsewhere since${isLeftEmpty(bag) && '; no note says that the bag was emptied'}.</p>`;
}

function inside(sheet: Sheet, bag: BagRow): Markup | false {
  const held = together(bag.held);
  const split = new Set(held.filter(({ part }, n) => held.findIndex((one) => one.part === part) !== n).map(({ part }) => part));
  const parts = held.map(
    ({ part, count, which, to }) =>
      html`${partLink(sheet, part)}${bracketed(split.has(part) ? (which ? numbersInWords(which) : String(count)) : count > 1 && String(count))}${
        to !== null && ' until taken out'
      }`,
  );
  return parts.length > 0 && html`<p class="note">With these parts of the catalogue: ${joined(parts, ', ')}.</p>`;
}

/** Of one part that is there still, or was taken out, as one. */
function together(held: BagRow['held']): BagRow['held'] {
  const alike = Map.groupBy(held, ({ part, to }) => `${part} ${to === null}`);
  return [...alike.values()].flatMap((some) =>
    some.slice(0, 1).map((first) => ({
      ...first,
      count: some.reduce((sum, { count }) => sum + count, 0),
      which: some.some(({ which }) => which === null) ? null : some.flatMap(({ which }) => which ?? []).toSorted((a, b) => a - b),
    })),
  );
}

const bracketed = (words: string | false): string | false => words !== false && words !== '' && ` (${words})`;

function since(sheet: Sheet, { filled, emptied }: BagRow): Markup {
  const day = (session: string, date: IsoDate): Markup => linked(sheet.date(date), sheet.toSession(session));
  const full = filled.session === null ? 'Full when the record began' : html`Filled ${day(filled.session, filled.date)}`;
  return html`${full}${emptied !== null && html`, emptied ${day(emptied.session, emptied.date)}`}`;
}

function earlier(sheet: Sheet, { filling, filled, emptied }: BagRow): Markup {
  const way = filling.goesBack !== null && ` (goes back: ${filling.goesBack})`;
  const from = filled.session === null ? 'as found' : `from ${sheet.date(filled.date)}`;
  const to = emptied !== null && ` to ${sheet.date(emptied.date)}`;
  return html`<p class="note">Before that the same number held ${inARow(filling.holds)}${way}, ${from}${to}.</p>`;
}
