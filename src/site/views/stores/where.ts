import type { Destination, PartId, Whereabouts } from '../../../journal/model.ts';
import { type Whereat, whereaboutsAt } from '../../../journal/registers/stays.ts';
import { inBrackets, stayedInWords } from '../../../journal/registers/where-now.ts';
import { someInWords } from '../../../journal/replay/words.ts';
import type { Custody } from '../../../journal/timelines/timelines.ts';
import { PAGES } from '../../addresses.ts';
import { partFacts } from '../page/facts.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { GONE_WORDS } from '../page/words.ts';

/** A place in words, split where a link goes: `in stores, ` and `shelf B2` with its link. */
export interface NamedPlace {
  readonly before: string;
  readonly name: string;
  readonly href: string | null;
  /** For what is in another part, where that is: its words follow. */
  readonly within: Whereabouts | null;
}

/** What lies in the stores and nobody says where; where a copy leaves out where things lie, a place may well have been noted. */
export const unplacedWords = ({ copy: { leavesOut } }: Pick<Sheet, 'copy'>): string =>
  leavesOut.includes('stores') ? 'in stores' : 'no place noted';

/** What is out, by firm; in a copy without names all firms are as one, and what is with several is not with one. */
export const outWords = ({ copy: { leavesOut } }: Pick<Sheet, 'copy'>, firm: string): string =>
  leavesOut.includes('people') ? 'Out with others' : `Out with ${firm}`;

/** The anchor of a store on the page of the stores. */
export function storeAnchor(store: string | null): string {
  return store === null ? 'unplaced' : `store-${store.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}`;
}

/** Where something is; what is in another part is named by that. */
export function namedPlace(sheet: Sheet, where: Whereabouts): NamedPlace {
  const place = (before: string, name: string, href: string | null, within: Whereabouts | null = null) => ({ before, name, href, within });
  const inStores = (anchor: string): string => sheet.link(`${PAGES.stores}#${anchor}`);
  switch (where.at) {
    case 'fitted':
      return place('on the vehicle: ', sheet.positionName(where.position), sheet.toPosition(where.position));
    case 'in':
      return place('in ', sheet.partName(where.part), sheet.toPart(where.part), where.where);
    case 'stores':
      if (where.store === null && sheet.copy.leavesOut.includes('stores')) return place('in ', 'stores', inStores(storeAnchor(null)));
      return place('in stores: ', where.store ?? unplacedWords(sheet), inStores(storeAnchor(where.store)));
    case 'bag':
      return place('', `bag ${where.bag}`, sheet.toBag(where.bag));
    case 'out':
      return place('out with ', where.firm, inStores('out'));
    case 'gone':
      return place('gone: ', GONE_WORDS[where.how], inStores('gone'));
    case 'missing':
      return place('', 'missing', inStores('missing'));
    case 'not-yet':
      return place('', 'not yet here', null);
    case 'considered':
      return place('', 'considered, not here', null);
  }
}

/**
 * Where something is, in words with links, what is in another part as a chain: `in Engine, in stores: trestles`. At the
 * position it belongs to it is simply on the vehicle.
 */
export function whereLink(sheet: Sheet, where: Whereabouts, home: string | null = null): Markup {
  if (where.at === 'fitted' && where.position === home) return html`on the vehicle`;
  const { before, name, href, within } = namedPlace(sheet, where);
  return html`${before}${linked(name, href)}${within !== null && html`, ${whereLink(sheet, within)}`}`;
}

/** The same for whoever has the vehicle now: `with Ruth, where it stayed behind (shelf A1)`. `stayed` is null for what is with them. */
export function whereNowLink(sheet: Sheet, where: Whereabouts, stayed: string | null, home: string | null = null): Markup {
  return stayed === null ? whereLink(sheet, where, home) : html`${stayedWords(sheet, where, stayed)}`;
}

function stayedWords(sheet: Sheet, where: Whereabouts, stayed: string): string {
  if (where.at === 'stores') return stayed + inBrackets(where.store ?? '');
  return stayed + inBrackets(placeWords(sheet, where));
}

/** Every place of a part, of a lot with how many: `14 of 24 on the vehicle, 3 of 24 in stores: tin box`. */
export function placeLinks(sheet: Sheet, id: PartId, places: readonly PlaceNow[], between = ', '): Markup {
  const part = partFacts(sheet, id);
  const many = part?.count ?? 1;
  return joined(
    places.map(
      ({ where, count, which, stayed = null }) =>
        html`${count < many && `${someInWords(count, many, which)} `}${whereNowLink(sheet, where, stayed, part?.position ?? null)}`,
    ),
    between,
  );
}

/** A place of some of a part; `stayed` says with whom, where that is not whoever has the vehicle. */
export type PlaceNow = Pick<Whereat, 'where' | 'count' | 'which'> & { readonly stayed?: string | null };

/** Where a part is on the record's day, for whoever has the vehicle then. */
export function placesNow({ record }: RecordSheet, part: PartId): readonly PlaceNow[] {
  return whereaboutsAt(record, part, record.day).map((place) => ({ ...place, stayed: stayedInWords(record, part, place.where, null) }));
}

/** Where something is, in one run of words: `in stores: shelf B2`. */
export function placeWords(sheet: Sheet, where: Whereabouts): string {
  const { before, name, within } = namedPlace(sheet, where);
  return `${before}${name}${within === null ? '' : `, ${placeWords(sheet, within)}`}`;
}

/** The same for whoever has the vehicle now. */
export function placeNowWords(sheet: Sheet, where: Whereabouts, stayed: string | null): string {
  return stayed === null ? placeWords(sheet, where) : stayedWords(sheet, where, stayed);
}

/** A destination as a note names it: `bag 14`, `shelf B2`. */
export function destinationWords(to: Destination | null): string {
  if (to === null) return '';
  return to.bag === null ? (to.name ?? 'the stores') : `bag ${to.bag}`;
}

/** Who has a part: `the workshop`, the name of a firm or of a former keeper, how it went, or nobody knows. */
export function custodyWords(custody: Custody): string {
  switch (custody.by) {
    case 'firm':
      return custody.firm;
    case 'former-keeper':
      return `${custody.who}, with whom it stayed behind`;
    case 'gone':
      return `gone, ${GONE_WORDS[custody.how]}`;
    case 'unknown':
      return 'nobody knows';
    default:
      return 'the workshop';
  }
}
