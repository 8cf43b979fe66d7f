/** The text of a new note: every group of the format as a comment, with ids that exist, and below it what is open and what was left out. */
import type { IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { forgottenWords } from './forgotten-words.ts';
import { exampleGroups } from './groups.ts';
import { openMatters } from './open-matters.ts';

/** A picture or a clip that the note begins with. */
export interface Brought {
  readonly kind: 'picture' | 'clip';
  /** Its name in the folder of the note. */
  readonly name: string;
  /** When it was taken, by the clocks of the journal: `19:32`. */
  readonly clock: string | null;
}

/**
 * @param record the journal so far; null when it cannot be understood
 * @param media what lies by the note, in the order taken
 */
export function noteSkeleton(date: IsoDate, title: string, record: JournalRecord | null, media: readonly Brought[] = []): string {
  const lines = [
    ...exampleGroups(record, date),
    ...picturesGroup(media.filter(({ kind }) => kind === 'picture')),
    ...filmGroup(media.filter(({ kind }) => kind === 'clip')),
    ...(record === null ? [] : [...openMatters(record), ...forgottenWords(record)]),
  ];
  return `---\ndate: ${date}\ntitle: ${JSON.stringify(title)}\n${lines.map((line) => `${line}\n`).join('')}---\n\n`;
}

/** A picture that lies by the note shows without an entry; what it shows and its words are for the writer to say. */
function picturesGroup(pictures: readonly Brought[]): string[] {
  const rest = 'shows: [an-id], view: as-found, caption: what it shows';
  if (pictures.length === 0) return [`# pictures: [{ file: a-picture.jpg, ${rest} }]`];
  const entry = ({ name, clock }: Brought) => `  # - { file: ${JSON.stringify(name)}, ${rest} }${clock === null ? '' : ` # ${clock}`}`;
  return ['pictures:', ...pictures.map(entry)];
}

function filmGroup(clips: readonly Brought[]): string[] {
  const entry = ({ name, clock }: Brought) =>
    `  # - { clip: ${JSON.stringify(name)}, title: what is going on, shows: { "0:00": an-id } }${clock === null ? '' : ` # ${clock}`}`;
  return clips.length === 0 ? [] : ['film:', ...clips.map(entry)];
}
