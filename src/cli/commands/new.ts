import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { writeNewFolder } from '../../disk/write-new.ts';
import { forgottenAt } from '../../journal/registers/forgotten/forgotten.ts';
import { countOf } from '../../site/views/forgotten/forgotten-page.ts';
import { counted } from '../../site/views/page/words.ts';
import { CONTENT, type Command } from '../command.ts';
import { DATE, noteDate } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { takeIn } from '../intake/take-in.ts';
import { freeId } from '../new-note/free-id.ts';
import { slugOf } from '../new-note/note-name.ts';
import { type Brought, noteSkeleton } from '../new-note/note-skeleton.ts';
import { filesOfEvening, type OfEvening } from '../new-note/pictures-of-evening.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { refusing } from '../write-new.ts';

/** Tonight's note: its date, every group of the format, what is open and what was left out as comments. */
export const newNote: Command = {
  name: 'new',
  summary: "writes tonight's note, with all that is open as comments; it never overwrites one",
  takes: [],
  options: {
    content: CONTENT,
    date: DATE,
    title: { type: 'string', value: 'TEXT', help: 'what was done; it names the folder too' },
    from: { type: 'string', value: 'FOLDER', help: 'takes in the pictures and clips of that evening (else from ASFOUND_PHOTOS)' },
  },
  run: async (values, _takes, effects) => {
    const folder = journalFolder(values, effects);
    if (!existsSync(join(folder, 'journal.yaml'))) {
      const hint = 'Name the journal with --content DIR, or make one with `asfound init DIR`.';
      throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is no journal: it has no journal.yaml. ${hint}`);
    }
    const date = noteDate(values, effects);
    const title = (values.title as string | undefined)?.trim() || 'Evening in the workshop';
    const opened = await openJournal(folder, effects);
    const { record } = opened;
    const arrived = record?.journal.settings.arrived;
    if (arrived !== undefined && date < arrived) {
      throw new Refusal(EXIT.notUnderstood, `${date} is before the vehicle arrived, on ${arrived}.`);
    }
    const id = freeId(folder, `${date}-${slugOf(title)}`);
    const found = await filesOfEvening(date, opened, values, effects);
    const path = join(folder, 'sessions', id);
    const text = noteSkeleton(date, title, record, found ? mediaOf(found) : []);
    refusing(path, () => writeNewFolder(path, new Map([['index.md', text]])));
    effects.out(`${relative(effects.cwd, join(path, 'index.md'))}\n`);
    if (found)
      await takeIn(found.files, { journal: folder, folder: `sessions/${id}`, has: found.has }, { dry: false, move: false }, effects);
    const left = record === null ? 0 : countOf(forgottenAt(record, null));
    if (left > 0)
      effects.err(`${counted(left, 'thing')} left out so far; the newest are at the end of the note, all on the page What I forgot.\n`);
    return EXIT.done;
  },
};

function mediaOf({ files, names }: OfEvening): Brought[] {
  return files.map(({ kind, clock }, n) => ({ kind, name: names[n] ?? '', clock: clock?.slice(11, 16) ?? null }));
}
