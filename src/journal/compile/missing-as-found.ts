import type { Part } from '../model.ts';
import type { PartFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { AS_FOUND, whichOf } from './which-of.ts';

type Missing = Pick<Part, 'missing' | 'missingWhich'>;

const NONE: Missing = { missing: 0, missingWhich: null };

/** How many of a lot were not there as found, and of a numbered one which. What cannot be is told, and then none were missing. */
export function missingAsFound({ says, placeOf }: WrittenEntry<PartFields>, out: Reporter): Missing {
  const { id, count, numbered, found, missing, missingWhich } = says;
  if (missing === null && missingWhich.length === 0) return NONE;
  const at = placeOf(missing === null ? 'missing-which' : 'missing');
  const against = cameLater(says);
  if (against !== null) {
    out.report('A301', at, `\`missing\` says how many of a lot were not there as found, and ${against}.`, { hint: 'Leave it out.' });
    return NONE;
  }
  if (found === 'missing') {
    const hint = `For some of them: \`count: ${count}\` and \`missing\`, without \`found\`.`;
    out.report('A303', at, `\`found: missing\` says that all of \`${id}\` were missing, and this that some were.`, { hint });
    return NONE;
  }
  if (missing !== null && missing > count) {
    const hint = `\`count\` is how many the vehicle has places for, those that were missing among them.`;
    out.report('A504', at, `${missing} of \`${id}\` were missing as found, and \`count\` says ${count}.`, { hint });
    return NONE;
  }
  const which = whichOf({ which: missingWhich, count: missing }, { id, count, numbered, place: placeOf('id') }, at, out, AS_FOUND);
  if (which === null && missing !== null && numbered !== null && missing < count) {
    const hint = `Say which: \`missing-which: [${missing === 1 ? '1' : '1, 2'}]\`.`;
    out.report('A517', at, `\`${id}\` is numbered, and nothing says which of the ${count} ${missing === 1 ? 'was' : 'were'} missing.`, {
      hint,
    });
    return NONE;
  }
  return { missing: which?.length ?? missing ?? 0, missingWhich: which };
}

/** Why a part cannot have been found at all; null where it can. */
function cameLater({ for: other, acquired }: PartFields): string | null {
  if (other !== null) return 'a candidate was never there';
  return acquired === null ? null : `this came on ${acquired}`;
}
