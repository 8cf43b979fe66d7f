import type { Destination, PartId, Whereabouts } from '../../../journal/model.ts';
import type { Whereat } from '../../../journal/registers/stays.ts';
import type { Custody } from '../../../journal/timelines/timelines.ts';
import { PAGES } from '../../addresses.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { GONE_WORDS } from '../page/words.ts';

/** A place in words, split where a link goes: `in stores, ` and `shelf B2` with its link. */
export interface NamedPlace {
  readonly before: string;
  readonly name: string;
  readonly href: string | null;
}

/** The anchor of a store on the page of the stores. */
export function storeAnchor(store: string | null): string {
  return store === null ? 'unplaced' : `store-${store.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}`;
}

/** Where something is. */
export function namedPlace(sheet: Sheet, where: Whereabouts): NamedPlace {
  switch (where.at) {
    case 'fitted':
      return { before: 'on the vehicle: ', name: sheet.positionName(where.position), href: sheet.toPosition(where.position) };
    case 'in':
      return { before: `${placeWords(sheet, where.where)}, in `, name: sheet.partName(where.part), href: sheet.toPart(where.part) };
    case 'stores':
      return {
        before: 'in stores: ',
        name: where.store ?? 'no place noted',
        href: sheet.link(`${PAGES.stores}#${storeAnchor(where.store)}`),
      };
    case 'bag':
      return { before: '', name: `bag ${where.bag}`, href: sheet.toBag(where.bag) };
    case 'out':
      return { before: 'out with ', name: where.firm, href: sheet.link(`${PAGES.stores}#out`) };
    case 'gone':
      return { before: 'gone: ', name: GONE_WORDS[where.how], href: sheet.link(`${PAGES.stores}#gone`) };
    case 'missing':
      return { before: '', name: 'missing', href: sheet.link(`${PAGES.stores}#missing`) };
    case 'not-yet':
      return { before: '', name: 'not yet here', href: null };
    case 'considered':
      return { before: '', name: 'considered, not here', href: null };
  }
}

/** Where something is, in words with the link to that place; at the position it belongs to it is simply on the vehicle. */
export function whereLink(sheet: Sheet, where: Whereabouts, home: string | null = null): Markup {
  if (where.at === 'fitted' && where.position === home) return html`on the vehicle`;
  const { before, name, href } = namedPlace(sheet, where);
  return html`${before}${linked(name, href)}`;
}

/** Every place of a part, of a lot with how many: `14 of 24 on the vehicle, 3 of 24 in stores: tin box`. */
export function placeLinks(sheet: Sheet, id: PartId, places: readonly Whereat[], between = ', '): Markup {
  const part = sheet.record.journal.parts.get(id);
  const many = part?.count ?? 1;
  return joined(
    places.map(({ where, count }) => html`${count < many && `${count} of ${many} `}${whereLink(sheet, where, part?.position ?? null)}`),
    between,
  );
}

/** Where something is, in one run of words: `in stores: shelf B2`. */
export function placeWords(sheet: Sheet, where: Whereabouts): string {
  const { before, name } = namedPlace(sheet, where);
  return before + name;
}

/** A destination as a note names it: `bag 14`, `shelf B2`. */
export function destinationWords(to: Destination | null): string {
  if (to === null) return '';
  return to.bag === null ? to.name : `bag ${to.bag}`;
}

/** Who has a part: `the workshop`, the name of a firm, how it went, or nobody knows. */
export function custodyWords(custody: Custody): string {
  switch (custody.by) {
    case 'firm':
      return custody.firm;
    case 'gone':
      return `gone, ${GONE_WORDS[custody.how]}`;
    case 'unknown':
      return 'nobody knows';
    default:
      return 'the workshop';
  }
}
