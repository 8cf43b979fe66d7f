import type { Gate } from '../../../journal/registers/open-items.ts';
import { counted } from '../page/words.ts';

/** `held up by 2 open items`: those due before a milestone, and those due before an earlier one. */
export function heldUp({ items, temporary, earlier }: Pick<Gate, 'items' | 'temporary' | 'earlier'>): string {
  return `held up by ${counted(items.length + temporary.length + earlier.length, 'open item')}`;
}
