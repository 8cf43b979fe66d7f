import { existsSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import { todayBy } from '../../site/today.ts';
import { counted } from '../../site/views/page/words.ts';
import { CONTENT, type Command, type OptionValues } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { ByContent } from '../intake/bring-in.ts';
import { type Dump, type Dumped, readDump } from '../intake/dumped.ts';
import { type Evenings, eveningsOf } from '../intake/evenings.ts';
import { moveIntoFolder, noteFolderOf } from '../intake/note-folder.ts';
import { apart, type Taken, takeIn } from '../intake/take-in.ts';
import { shellWord } from '../shell-word.ts';
import { journalFolder, openJournal, shownFrom } from '../the-journal.ts';

/** Pictures and clips of a phone to the evenings they were taken on. */
export const intake: Command = {
  name: 'intake',
  summary: 'copies the pictures and clips of a folder to the evenings they were taken on',
  takes: ['FOLDER'],
  options: {
    content: CONTENT,
    move: { type: 'boolean', help: 'takes each file out of FOLDER once its copy has been compared with it' },
    'dry-run': { type: 'boolean', help: 'says what would be copied where, and writes nothing' },
  },
  more: [
    'Each file goes by its own time: what the camera wrote into it, else the time in its name, by the clocks of the',
    "journal's time zone; until four in the night it belongs to the evening before. Nothing is copied twice, by its",
    'content, and nothing over another. Days without a note are listed, each with the command that makes one.',
  ].join('\n'),
  run: async (values, [named = ''], effects) => {
    const folder = journalFolder(values, effects);
    const from = resolve(effects.cwd, named);
    if (!existsSync(from)) throw new Refusal(EXIT.cannotReadOrWrite, `there is no folder ${from}.`);
    const { record, sources } = await openJournal(folder, effects);
    if (record === null) throw new Refusal(EXIT.journalHasErrors, 'journal.yaml cannot be understood; `asfound check` says why.');
    const { arrived, timeZone } = record.journal.settings;
    const dump = await readDump(from, folder, timeZone);
    const has = new ByContent(sources.assets, (path) => join(folder, path));
    const how = { dry: values['dry-run'] === true, move: values.move === true };
    const { fresh, known: had } = await apart(dump.files, has, how);
    const evenings = eveningsOf(fresh, record.journal.sessions, { arrived, today: todayBy(effects.env, effects.now()), timeZone });
    const taken: Taken[] = [];
    const stuck: Dumped[] = [];
    let known = had.length;
    for (const [session, files] of evenings.of) {
      const place = noteFolderOf(session);
      if (place === null) {
        stuck.push(...files);
        effects.err(
          `${shownFrom(effects.cwd, folder)(session.file)} names files beside it; make it sessions/${session.id}/index.md first.\n`,
        );
        continue;
      }
      if (!how.dry) moveIntoFolder(folder, place);
      const { brought, known: twice } = await takeIn(files, { journal: folder, folder: place.folder, has }, how, effects);
      taken.push(...brought);
      known += twice.length;
    }
    tellClips(taken, effects);
    tellLeft(evenings, dump, effects);
    tellNoNote(evenings, values, named, effects);
    const left = stuck.length + [...evenings.noNote.values()].flat().length + evenings.timeless.length + evenings.outside.length;
    const done = how.dry ? 'would be copied' : how.move ? 'moved' : 'copied';
    effects.err(`${filesIn(taken.map(({ file }) => file))} ${done}, ${known} there already, ${left + dump.faults.length} left.\n`);
    return EXIT.done;
  },
};

/** Clips are for somebody to look through: the entry to begin with, by the folder it belongs to. */
function tellClips(taken: readonly Taken[], effects: Effects): void {
  const clips = taken.filter(({ file }) => file.kind === 'clip');
  const byNote = Map.groupBy(clips, ({ path }) => path.slice(0, path.lastIndexOf('/')));
  for (const [folder, those] of byNote) {
    effects.err(`To mark under \`film\` in ${folder}/index.md:\n`);
    for (const { path } of those) effects.err(`  - { clip: ${JSON.stringify(basename(path))}, title: …, shows: { "0:00": … } }\n`);
  }
}

/** What stays where it is, and why. */
function tellLeft({ timeless, outside }: Evenings, { faults, others }: Dump, effects: Effects): void {
  const shown = (file: string): string => relative(effects.cwd, file) || file;
  for (const { file, message } of faults) effects.err(`${shown(file)} ${message}\n`);
  for (const { file } of timeless) effects.err(`${shown(file)} tells no time of its own; lay it beside its note by hand.\n`);
  for (const { file, clock } of outside) {
    effects.err(`${shown(file)} says it was taken on ${clock?.slice(0, 10)}, before the vehicle arrived or still to come.\n`);
  }
  if (others > 0) effects.err(`${counted(others, 'other file is', 'other files are')} neither a picture nor a clip.\n`);
}

/** Days without a note, each with the command that makes one and takes these files in. */
function tellNoNote({ noNote }: Evenings, { content }: OptionValues, named: string, effects: Effects): void {
  const where = typeof content === 'string' ? ` --content ${shellWord(content)}` : '';
  for (const [day, files] of noNote) {
    effects.err(`No note of ${day}, ${filesIn(files)}: asfound new${where} --date ${day} --from ${shellWord(named)}\n`);
  }
}

function filesIn(files: readonly Dumped[]): string {
  const clips = files.filter(({ kind }) => kind === 'clip').length;
  const pictures = files.length - clips;
  const words = [pictures > 0 || clips === 0 ? counted(pictures, 'picture') : '', clips > 0 ? counted(clips, 'clip') : ''];
  return words.filter((one) => one !== '').join(' and ');
}
