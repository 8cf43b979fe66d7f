import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { PartEntry, PartId } from '../model.ts';
import type { Replay } from './replay.ts';

/** The originals that go for good with the part they are in, as a warning; null where there are none. */
export function originalsGone({ journal, state, origins }: Replay, entry: PartEntry): Diagnostic | null {
  const isOriginal = (part: PartId) => (origins.get(part) ?? journal.parts.get(part)?.origin) === 'original';
  const originals = state.allInside(entry.part).filter(isOriginal);
  const [first] = originals;
  if (first === undefined) return null;
  const list = originals.map((part) => `\`${part}\``).join(', ');
  const message = `With \`${entry.part}\` ${originals.length === 1 ? 'an original that is in it goes' : 'originals that are in it go'}: ${list}.`;
  const hint = `If they were taken out first, say so before this entry: \`- { part: ${first}, did: removed }\`.`;
  const related = originals.flatMap((part) => {
    const place = state.pilesOf(part)[0]?.cause;
    return place ? [{ place, message: `This is why ${part} is in it.` }] : [];
  });
  return diagnostic('A519', entry.place, message, { hint, related });
}
