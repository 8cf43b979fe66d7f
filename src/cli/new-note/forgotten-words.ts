import type { JournalRecord } from '../../journal/record.ts';
import { forgottenAt, type Missed } from '../../journal/registers/forgotten/forgotten.ts';
import { FORGOTTEN_WORDS } from '../../site/views/forgotten/kinds.ts';
import { section } from './open-matters.ts';

/** Of each kind the newest stand in a note; the page has all. */
const NEWEST = 2;

/** What was left out, at the end of a new note: how much of each kind, and of the newest the place and what to write there. */
export function forgottenWords(record: JournalRecord): readonly string[] {
  const lines = forgottenAt(record, null).flatMap(({ kind, missed }) =>
    missed.length === 0
      ? []
      : [`${FORGOTTEN_WORDS[kind].head}, ${missed.length}:`, ...missed.slice(-NEWEST).map((one) => `  ${wordsOf(record, one)}`)],
  );
  return section('Forgotten so far', lines);
}

function wordsOf(record: JournalRecord, { about, lacks, place, write }: Missed): string {
  return `${place.file}:${place.line} ${nameOf(record, about)} ${lacks}. Write: ${write}`;
}

function nameOf({ journal, history }: JournalRecord, about: Missed['about']): string {
  if ('part' in about) return journal.parts.get(about.part)?.name ?? about.part;
  if ('bag' in about) return `Bag ${about.bag}`;
  return 'item' in about ? (history.items.get(about.item)?.opening.what ?? about.item) : about.name;
}
