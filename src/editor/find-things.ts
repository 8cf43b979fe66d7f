import { nearestFirst } from '../site/views/search/finder.ts';
import { type Thing, typedName } from './things.ts';

/** What a note names often, before what it seldom does. */
const SORTS: readonly Thing['sort'][] = ['part', 'bag', 'item', 'store', 'consumable', 'subsystem', 'person', 'milestone'];

/**
 * The things that have every word asked for, the nearest first: in the name and the id before marks and kind. What has
 * been typed in full as a name stands at the top.
 *
 * @param things of a journal; its notes are not among what is found
 */
export function findThings(things: readonly Thing[], asked: string): readonly Thing[] {
  const among = things.filter(({ sort }) => SORTS.includes(sort));
  const found = nearestFirst(among, (one) => ({ t: `${typedName(one)} ${one.name}`, x: `${one.sort} ${one.more} ${one.now}` }))(asked);
  const wanted = asked.trim().toLowerCase();
  const named = found.filter((one) => typedName(one).toLowerCase() === wanted || one.id.toLowerCase() === wanted);
  return [...named, ...found.filter((one) => !named.includes(one))];
}
