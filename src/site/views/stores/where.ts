import type { Destination, Whereabouts } from '../../../journal/model.ts';
import type { Custody } from '../../../journal/timelines/timelines.ts';
import { PAGES } from '../../addresses.ts';
import type { Sheet } from '../page/sheet.ts';
import { GONE_WORDS } from '../page/words.ts';

/** A place in words, split where a link goes: `in stores, ` and `shelf B2` with its link. */
export interface Spot {
  readonly before: string;
  readonly name: string;
  readonly href: string | null;
}

/** The anchor of a store on the page of the stores. */
export function storeAnchor(store: string | null): string {
  return store === null ? 'unplaced' : `store-${store.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}`;
}

/** Where something is. */
export function spotOf(sheet: Sheet, where: Whereabouts): Spot {
  switch (where.at) {
    case 'fitted':
      return { before: 'on the vehicle: ', name: sheet.positionName(where.position), href: sheet.toPosition(where.position) };
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
