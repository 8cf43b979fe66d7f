import type { IsoDate } from '../../../journal/model.ts';
import type { ItemRow } from '../../../journal/registers/open-items.ts';
import { html, type Markup } from '../page/html.ts';
import { chargeLink, linked, sessionDay } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, counted, ITEM_KIND_WORDS, sentence } from '../page/words.ts';

export interface ItemListing {
  /** The day as of which they are told; else the record's day. */
  readonly at?: IsoDate;
  /** False where an item is not at home: it has no anchor there, and leads to the page of the open items. */
  readonly anchored?: boolean;
}

/** Items one an entry: what, its kind and part, its age, and its history. */
export function itemList(sheet: Sheet, items: readonly ItemRow[], { at = sheet.day, anchored = true }: ItemListing = {}): Markup {
  const entries = items.map((item) => {
    const { id, kind, what, closed } = item;
    const set = kind === 'temporary' && closed === null ? 'what attention' : 'what';
    const named = anchored ? what : linked(what, sheet.toItem(id));
    return html`<li${anchored && html` id="${id}"`}><p class="${set}">${named}</p><p class="note">${factsOf(sheet, item, at)}</p></li>`;
  });
  return html`<ul class="items">${entries}</ul>`;
}

function factsOf(sheet: Sheet, item: ItemRow, at: IsoDate): Markup {
  const { kind, on, from, opened } = item;
  const facts = [
    html`${capital(ITEM_KIND_WORDS[kind])}`,
    on !== null && html`, ${chargeLink(sheet, on)}`,
    from !== null && `, from ${from}`,
    promise(sheet, item, at),
    figuresOf(sheet, item),
  ];
  return html`${facts}. Opened ${sessionDay(sheet, opened.session, opened.date)}${ending(sheet, item)}${putOff(sheet, item)}`;
}

/** What it is likely to cost and to take, of whatever kind it is: `, about £120.00, 12 h`; '' where neither was written down. */
export function figuresOf({ figures }: Sheet, { price, hours }: ItemRow): string {
  const said = [price === null ? null : figures.money(price), hours === null ? null : figures.time(hours)].filter((one) => one !== null);
  return said.length === 0 ? '' : `, about ${said.join(' and ')}`;
}

function promise({ figures }: Sheet, { promised, closed }: ItemRow, at: IsoDate): string | false {
  if (promised === null) return false;
  return `, promised for ${figures.shortDate(promised)}${closed === null && promised < at ? ', which is past' : ''}`;
}

function ending(sheet: Sheet, { closed, days }: ItemRow): Markup {
  if (closed === null) return html`, open ${counted(days, 'day')}.`;
  return html`, closed ${sessionDay(sheet, closed.session, closed.date)} after ${counted(days, 'day')}. ${sentence(capital(closed.how ?? ''))}`;
}

function putOff(sheet: Sheet, { deferred }: ItemRow): Markup[] {
  return deferred.map(
    ({ session, date, to, because }) =>
      html` Put off to ${sheet.milestoneName(to)} on ${sessionDay(sheet, session, date)}: ${sentence(because)}`,
  );
}
