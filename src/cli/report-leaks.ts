import type { JournalRecord } from '../journal/record.ts';
import type { Leak } from '../site/proof/prove.ts';
import type { Effects } from './effects.ts';

/** Tells what a copy would have given away, and where. */
export function reportLeaks(leaks: readonly Leak[], { copy }: JournalRecord, effects: Effects): void {
  for (const { file, withheld, there } of leaks) {
    effects.err(`${file}: “${withheld.text}” is withheld (${withheld.what}), and stands here: … ${there} …\n`);
  }
  effects.err(`This copy leaves out ${copy.leavesOut.join(', ')}. `);
}
