import { beforeArrival } from '../diagnostics/before-arrival.ts';
import type { IsoDate } from '../model.ts';
import type { NoteSource } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import { readDate } from '../values/date.ts';

/** Of a note from before the vehicle came whose name says a later day the name is believed: what was slipped is the year. */
export function datedByName(note: NoteSource, arrived: IsoDate, out: Reporter): NoteSource {
  const { source, tree, id } = note;
  const named = readDate(id.slice(0, 10));
  if (!named.ok || source.date >= arrived || named.value < arrived) return note;
  const hint = `Write \`date: ${named.value}\`, as the name of the note has it, or check \`arrived\` in journal.yaml.`;
  out.diagnostics.push(beforeArrival(tree.placeOf(['date']), source.date, arrived, hint));
  return { ...note, source: { ...source, date: named.value } };
}
