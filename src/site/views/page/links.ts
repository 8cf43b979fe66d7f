/** Names that lead to their pages, as markup for cells and lists. */
import type { ConsumableId, PartId, PositionId, SessionId } from '../../../journal/model.ts';
import type { Moment } from '../../../journal/record.ts';
import type { Whereat } from '../../../journal/registers/stays.ts';
import { html, joined, type Markup, type Piece } from './html.ts';
import type { Sheet } from './sheet.ts';

/** Words that open something; plain where there is nothing to open. */
export const linked = (words: Piece, to: string | null): Markup => (to === null ? html`${words}` : html`<a href="${to}">${words}</a>`);

export const partLink = (sheet: Sheet, id: PartId): Markup => linked(sheet.partName(id), sheet.toPart(id));

export const partLinks = (sheet: Sheet, ids: readonly PartId[]): Markup =>
  joined(
    ids.map((id) => partLink(sheet, id)),
    ', ',
  );

export const positionLink = (sheet: Sheet, id: PositionId): Markup => linked(sheet.positionName(id), sheet.toPosition(id));

export const positionLinks = (sheet: Sheet, ids: readonly PositionId[]): Markup =>
  joined(
    ids.map((id) => positionLink(sheet, id)),
    ', ',
  );

export const consumableLinks = (sheet: Sheet, ids: readonly ConsumableId[]): Markup =>
  joined(
    ids.map((id) => linked(sheet.consumableName(id), sheet.toConsumable(id))),
    ', ',
  );

/** Since when something is so: a day leading to its session, a day of the catalogue, or as found. */
export function dayLink(sheet: Sheet, { session, date }: Moment): Markup {
  return session === null ? html`${dayWords(sheet, { session, date })}` : sessionDay(sheet, session, date);
}

/** The same in words alone, where nothing can be opened. */
export function dayWords(sheet: Sheet, { session, date }: Moment): string {
  return session === null && date <= sheet.settings.arrived ? 'as found' : sheet.figures.shortDate(date);
}

/** Since when some lie where they do: the day of the first, and that of the last where they came at different times. */
export function sinceLinks(sheet: Sheet, { since, last }: Pick<Whereat, 'since' | 'last'>): Markup {
  return html`${dayLink(sheet, since)}${last.date !== since.date && html`, the last ${dayLink(sheet, last)}`}`;
}

export const sessionDay = (sheet: Sheet, session: SessionId, date: string): Markup =>
  linked(sheet.figures.shortDate(date), sheet.toSession(session));

/** What a line is charged to: a part, else a subsystem. */
export function chargeLink(sheet: Sheet, on: Parameters<Sheet['charge']>[0] | null): Markup | null {
  if (on === null) return null;
  const { name, href } = sheet.charge(on);
  return linked(name, href);
}

/** Words that stand under the first line of a cell; nothing for nothing. */
export const sub = (words: Piece, set = 'sub'): Markup | false =>
  words !== null && words !== false && words !== undefined && words !== '' && html`<span class="${set}">${words}</span>`;
