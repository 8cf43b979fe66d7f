import type { Entry } from '../../../journal/record.ts';
import { type Address, sessionAddress } from '../../addresses.ts';

/** The anchor of an entry on the page of its session: what follows the `#` of its id. */
export function entryAnchor({ id }: Entry): string {
  return `entry-${id.slice(id.indexOf('#') + 1).replaceAll('#', '-')}`;
}

/** Where an entry stands in the account of its session. */
export function entryAddress(entry: Entry): Address {
  return `${sessionAddress(entry.session)}#${entryAnchor(entry)}`;
}
