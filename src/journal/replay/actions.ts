import type { ActionWord, Whereabouts } from '../model.ts';
import { endOf } from './seat.ts';

type Where = Whereabouts['at'];

const HERE_OFF: readonly Where[] = ['stores', 'bag'];
/** Work may be done by the firm a part is out with. */
const WORKABLE: readonly Where[] = ['fitted', 'stores', 'bag', 'out'];

const NEEDS: Partial<Record<ActionWord, readonly Where[]>> = {
  removed: ['fitted'],
  fitted: HERE_OFF,
  stored: HERE_OFF,
  'sent-out': HERE_OFF,
  returned: ['out'],
  acquired: ['not-yet', 'considered', 'missing'],
  made: ['not-yet', 'considered'],
  gone: ['stores', 'bag', 'out'],
};

/** True when the action takes the part from one place to another; all others are work in place. */
export function moves(word: ActionWord): boolean {
  return NEEDS[word] !== undefined;
}

/**
 * True when a part at that place can be acted on so: the column "needs" of the table of actions. What is in another
 * part is fitted there: it comes off while the two are here, and can be worked on wherever the whole is.
 */
export function suits(word: ActionWord, where: Whereabouts): boolean {
  const needs = NEEDS[word] ?? WORKABLE;
  if (where.at !== 'in') return needs.includes(where.at);
  return word === 'removed' ? HERE_OFF.includes(endOf(where).at) : !moves(word) && needs.includes(endOf(where).at);
}

/** True when what is there may come back: it was sold, given away, given back, lost or stolen. What was scrapped or made into another thing does not. */
export function mayComeBack(where: Whereabouts): boolean {
  return where.at === 'gone' && ['sold', 'given', 'returned', 'lost', 'stolen'].includes(where.how);
}
