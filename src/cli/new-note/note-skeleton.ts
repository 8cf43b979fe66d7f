/** The text of a new note: every group of the format as a comment, with ids that exist, and below it what is open and what was left out. */
import type { IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { forgottenWords } from './forgotten-words.ts';
import { exampleGroups } from './groups.ts';
import { openMatters } from './open-matters.ts';

/** A picture that the note begins with. */
export interface BroughtPicture {
  /** Its name in the folder of the note. */
  readonly name: string;
  /** When it was taken, by the clocks of the journal: `19:32`. */
  readonly clock: string | null;
}

/**
 * @param record the journal so far; null when it cannot be understood
 * @param pictures those that lie by the note, in the order taken
 */
export function noteSkeleton(date: IsoDate, title: string, record: JournalRecord | null, pictures: readonly BroughtPicture[] = []): string {
  const lines = [
    ...exampleGroups(record, date),
    ...picturesGroup(pictures),
    ...(record === null ? [] : [...openMatters(record), ...forgottenWords(record)]),
  ];
  return `---\ndate: ${date}\ntitle: ${JSON.stringify(title)}\n${lines.map((line) => `${line}\n`).join('')}---\n\n`;
}

/** A picture that lies by the note shows without an entry; what it shows and its words are for the writer to say. */
function picturesGroup(pictures: readonly BroughtPicture[]): string[] {
  const rest = 'shows: [an-id], view: as-found, caption: what it shows';
  if (pictures.length === 0) return [`# pictures: [{ file: a-picture.jpg, ${rest} }]`];
  const entry = ({ name, clock }: BroughtPicture) =>
    `  # - { file: ${JSON.stringify(name)}, ${rest} }${clock === null ? '' : ` # ${clock}`}`;
  return ['pictures:', ...pictures.map(entry)];
}
