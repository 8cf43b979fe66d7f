import type { JournalRecord } from '../journal/record.ts';
import { ENOUGH, type Leak } from '../site/proof/prove.ts';
import type { Effects } from './effects.ts';

/**
 * Tells what a copy would have given away, and where.
 *
 * @returns whether anything surely would; what only may be something that is left out is told and keeps nothing back
 */
export function reportLeaks(leaks: readonly Leak[], { copy }: JournalRecord, effects: Effects): boolean {
  for (const { file, withheld, there, perhaps } of leaks) {
    const stands = perhaps ? 'may be what stands here' : 'stands here';
    effects.err(`${file}: “${withheld.text}” is withheld (${withheld.what}), and ${stands}: … ${there} …\n`);
  }
  if (leaks.some(({ perhaps }) => perhaps)) {
    effects.err(
      'What may be another word, number or measurement is published: look at it, and mend the note or let the text stand with `may-say`.\n',
    );
  }
  const sure = [...new Set(leaks.flatMap(({ perhaps, withheld }) => (perhaps ? [] : [withheld.text])))];
  if (sure.length === 0) return false;
  const stand = `\`may-say: [${sure.map((text) => JSON.stringify(text)).join(', ')}]\``;
  const places = leaks.filter(({ perhaps }) => !perhaps);
  if (places.length >= ENOUGH) effects.err(`The search ends after ${places.length} places: there may be more.\n`);
  const without = places.some(({ file }) => file.startsWith('papers/')) ? ', leave the paper out,' : '';
  effects.err(`Mend what the notes say${without} or let these stand: ${stand}, beside \`leave-out\` of this copy in journal.yaml.\n`);
  effects.err(`This copy leaves out ${copy.leavesOut.join(', ')}. `);
  return true;
}
