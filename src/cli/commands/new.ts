import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { writeNewFolder } from '../../disk/write-new.ts';
import { readDate } from '../../journal/values/date.ts';
import { todayBy } from '../../site/today.ts';
import { CONTENT, type Command, type OptionValues } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { slugOf } from '../new-note/note-name.ts';
import { noteSkeleton } from '../new-note/note-skeleton.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { refusing } from '../write-new.ts';

/** Tonight's note: its date, a skeleton, and what is open as comments. */
export const newNote: Command = {
  name: 'new',
  summary: "writes tonight's note, with what is open as comments; it never overwrites one",
  takes: [],
  options: {
    content: CONTENT,
    date: { type: 'string', value: 'DATE', help: 'the day of the work (else today)' },
    title: { type: 'string', value: 'TEXT', help: 'what was done; it names the folder too' },
  },
  run: async (values, _takes, effects) => {
    const folder = journalFolder(values, effects);
    if (!existsSync(join(folder, 'journal.yaml'))) {
      const hint = 'Name the journal with --content DIR, or make one with `asfound init DIR`.';
      throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is no journal: it has no journal.yaml. ${hint}`);
    }
    const date = dateFrom(values, effects);
    const title = (values.title as string | undefined)?.trim() || 'Evening in the workshop';
    const { record } = await openJournal(folder, effects);
    const arrived = record?.journal.settings.arrived;
    if (arrived !== undefined && date < arrived) {
      throw new Refusal(EXIT.notUnderstood, `${date} is before the vehicle arrived, on ${arrived}.`);
    }
    const path = freePath(folder, `${date}-${slugOf(title)}`);
    const text = noteSkeleton(date, title, record);
    refusing(path, () => writeNewFolder(path, new Map([['index.md', text]])));
    effects.out(`${relative(effects.cwd, join(path, 'index.md'))}\n`);
    return EXIT.done;
  },
};

function dateFrom(values: OptionValues, effects: Effects): string {
  const today = todayBy(effects.env, effects.now());
  const written = values.date;
  if (typeof written !== 'string') return today;
  const read = readDate(written);
  if (!read.ok) throw new Refusal(EXIT.notUnderstood, [read.problem, read.hint].filter(Boolean).join(' '));
  if (read.value > today) throw new Refusal(EXIT.notUnderstood, `${read.value} is in the future; today is ${today}.`);
  return read.value;
}

/** The folder of the note; a second one of the same name gets a number. */
function freePath(folder: string, name: string): string {
  const taken = (id: string) => existsSync(join(folder, 'sessions', id)) || existsSync(join(folder, 'sessions', `${id}.md`));
  let id = name;
  for (let n = 2; taken(id); n++) id = `${name}-${n}`;
  return join(folder, 'sessions', id);
}
