/** `within` of the catalogue: the part in which another was at the start. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import type { Part } from '../model.ts';
import type { PartFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { WrittenEntry } from '../read/written-entry.ts';

type PartEntry = WrittenEntry<PartFields>;

/** Leaves `within` to parts that can be in what they name; of the others it is told why not, and they are as if it were not said. */
export function settleWithin(entries: Iterable<PartEntry>, parts: Map<string, Part>, out: Reporter): void {
  for (const entry of entries) {
    const part = parts.get(entry.says.id);
    if (!part || part.within === null || isWithin(entry, part, parts, out)) continue;
    parts.set(part.id, { ...part, within: null });
  }
}

function isWithin({ says, placeOf }: PartEntry, part: Part, parts: ReadonlyMap<string, Part>, out: Reporter): boolean {
  const at = placeOf('within');
  const name = says.within ?? '';
  const against = (['found', 'at', 'acquired'] as const).find((field) => says[field] !== null);
  if (against) {
    const message = `\`within\` says where \`${part.id}\` was, and so does \`${against}\`.`;
    out.report('A301', at, message, { hint: `Leave \`${against}\` out: it is where \`${name}\` is, and comes with it.` });
    return false;
  }
  const carrier = parts.get(name);
  if (!carrier) {
    out.report('A401', at, `No part has the id \`${name}\`.`, unknownName('part', name, parts.keys()));
    return false;
  }
  const outer = parts.get(part.position)?.inside ?? null;
  if (outer !== null && carrier.position === outer && carrier.count === 1) return true;
  const related = [{ place: carrier.place, message: `This is \`${carrier.id}\`.` }];
  out.report('A515', at, `\`${part.id}\` cannot be within \`${carrier.id}\`: ${why(part, carrier, outer)}.`, {
    hint: outer === null ? `Say \`in:\` in the catalogue entry of \`${part.position}\`.` : 'Leave it out, or name another part.',
    related,
  });
  return false;
}

function why({ position }: Part, { position: other, count }: Part, outer: string | null): string {
  if (outer === null) return `\`${position}\` is a place on the vehicle itself`;
  if (other !== outer) return `\`${position}\` is a place in what belongs at \`${outer}\`, and that belongs at \`${other}\``;
  return `that is a lot of ${count}, and nobody knows in which`;
}
