import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { makeRoom } from '../../disk/room.ts';
import { hiddenBeside } from '../../disk/write-new.ts';
import { removeLeftOvers } from '../../disk/write-whole.ts';
import { type ArchiveContents, archiveWords } from '../../exports/archive-words.ts';
import { type BagFile, folderSink, writeBag, zipSink } from '../../exports/bag/write-bag.ts';
import { dataFilesOf } from '../../exports/data-files.ts';
import type { NoteFile } from '../../exports/keepers-notes.ts';
import { recordJson, schemaOf } from '../../exports/record-json.ts';
import { withheldTexts } from '../../journal/copy/withheld.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { loadJournal } from '../../load/load.ts';
import { reasonOf } from '../../load/problems.ts';
import { walk } from '../../load/walk.ts';
import { cacheFolder } from '../../site/cache-folder.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { programScripts } from '../../site/client-scripts.ts';
import { editionStore } from '../../site/edition-store.ts';
import { leaksIn, leaksOfFile } from '../../site/proof/prove.ts';
import { attachmentsOf } from '../book-attachments.ts';
import { CONTENT, type Command } from '../command.ts';
import { COPY, copyAsked } from '../copy-option.ts';
import { dayOption, TO } from '../day-option.ts';
import type { Effects } from '../effects.ts';
import { EXIT, type Exit, Refusal } from '../exit-codes.ts';
import { notesKind, notesOf } from '../notes-of-copy.ts';
import { volumeFile } from '../print-paper.ts';
import { progressLine } from '../progress.ts';
import { reportProblems } from '../report.ts';
import { reportLeaks } from '../report-leaks.ts';
import { journalFolder, type OpenedJournal, openJournal } from '../the-journal.ts';

/** Everything there is, for keeping: notes, pages, book, tables, sums. */
export const archive: Command = {
  name: 'archive',
  summary: 'lays down the whole record for keeping: notes, pages, book, tables and their sums, as a bag by RFC 8493',
  takes: [],
  options: {
    content: CONTENT,
    out: { type: 'string', value: 'FOLDER|FILE.zip', help: 'the folder or ZIP file to make; it must not be there yet' },
    copy: { ...COPY, help: 'which copy (else workshop: everything, the notes themselves too)' },
    to: TO,
  },
  more: 'The workshop copy holds the notes as they are, the keeper copy without what was private to former keepers; they\nsay what other copies leave out, which hold none.\n`asfound verify` holds an archive against its sums.',
  run: async (values, _takes, effects) => {
    if (typeof values.out !== 'string' || values.out === '')
      throw new Refusal(EXIT.notUnderstood, '`archive` needs --out FOLDER or --out FILE.zip.');
    const out = resolve(effects.cwd, values.out);
    if (existsSync(out)) throw new Refusal(EXIT.cannotReadOrWrite, `${values.out} is there already; it was left as it is.`);
    const opened = await openJournal(journalFolder(values, effects), effects, dayOption(values, 'to'));
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('Nothing was archived.\n');
      return EXIT.journalHasErrors;
    }
    const copy = copyAsked(opened.record, { copy: values.copy ?? 'workshop' });
    const room = makeRoom('archive');
    const stop = effects.onInterrupt(() => rmSync(room, { recursive: true, force: true }));
    try {
      return await layDown(opened, opened.record, copy, { out, room, all: values.to === undefined }, effects);
    } finally {
      stop();
      rmSync(room, { recursive: true, force: true });
    }
  },
};

interface Places {
  /** Where the archive goes. */
  readonly out: string;
  /** An empty folder that is removed in the end. */
  readonly room: string;
  /** The record is of every note, and not of a past day. */
  readonly all: boolean;
}

async function layDown(
  opened: OpenedJournal,
  whole: JournalRecord,
  copy: JournalRecord,
  { out, room, all }: Places,
  effects: Effects,
): Promise<Exit> {
  const progress = progressLine(effects);
  const made = join(room, 'made');
  const kind = notesKind(copy, all);
  const notes = notesOf(opened.folder, whole, copy, all);
  try {
    await makeAll(opened, copy, { made, room, kind, notes, cache: cacheFolder(effects.env) }, progress.show);
    const assets = kind === 'without former private' ? layCleaned(opened.folder, notes, made) : [];
    const withheld = withheldTexts(whole, copy);
    const own = Object.values(await programScripts(editionStore(cacheFolder(effects.env))));
    const proved = (done: number, total: number): void => progress.show(`Proof: ${done} of ${total}`);
    const leaks = [...(await leaksIn(made, withheld, { progress: proved, own }))];
    for (const { path, from } of assets) leaks.push(...(await leaksOfFile(path, readFileSync(from), withheld)));
    progress.clear();
    if (reportLeaks(leaks, copy, effects)) {
      effects.err('Nothing was archived.\n');
      return EXIT.journalHasErrors;
    }
    const files = [...filesOf(made, ''), ...assets, ...(kind === 'as written' ? filesOf(opened.folder, 'journal/') : [])];
    const { octets, streams } = await written(files, copy, out, progress.show);
    progress.clear();
    effects.out(`${relative(effects.cwd, out)}: ${streams} files, ${octets} octets\n`);
    return EXIT.done;
  } finally {
    progress.clear();
  }
}

/** Makes everything that is not there yet: pages, book, tables, the record as data, and the words on top. */
async function makeAll(
  opened: OpenedJournal,
  copy: JournalRecord,
  {
    made,
    room,
    kind,
    notes,
    cache,
  }: {
    readonly made: string;
    readonly room: string;
    readonly kind: NotesKind;
    readonly notes: readonly NoteFile[];
    readonly cache: string;
  },
  progress: (text: string) => void,
): Promise<void> {
  const [into, aside, workspace] = [join(made, 'site'), join(room, 'aside'), join(room, 'book')];
  for (const folder of [into, aside, workspace, join(made, 'tables')]) mkdirSync(folder, { recursive: true });
  const { buildSite } = await import('../../site/build-site.ts');
  const problems = await buildSite({ record: copy, warnings: [], folder: opened.folder, cache, into, aside, progress });
  if (hasErrors(problems)) throw new Refusal(EXIT.journalHasErrors, problems[0]?.message ?? 'a picture cannot be used.');
  const { renderForBook } = await import('../../book/render-for-book.ts');
  const { makeBook } = await import('../../book/make-book.ts');
  const record = await renderForBook(copy, { folder: opened.folder, cache, workspace, progress });
  const tables = await Promise.all(
    dataFilesOf(copy).map(async ({ path, holds, make }) => ({ name: basename(path), holds, content: await make(copy) })),
  );
  const attached = await attachmentsOf(copy, notes);
  const volumes = await makeBook(record, { paper: 'a4', workspace, attached, progress });
  for (const [n, file] of volumes.entries()) renameSync(file, join(made, volumeFile('book.pdf', n, volumes.length)));
  for (const { name, content } of tables) writeFileSync(join(made, 'tables', name), content);
  const document = recordJson(copy);
  writeFileSync(join(made, 'record.json'), `${JSON.stringify(document, null, 1)}\n`);
  writeFileSync(join(made, 'record.schema.json'), `${JSON.stringify(schemaOf(document, copy.journal.settings.title), null, 1)}\n`);
  writeFileSync(join(made, 'README.txt'), archiveWords(copy, { notes: kind }));
}

type NotesKind = ArchiveContents['notes'];

/** Lays cleaned notes beside what is made. @returns pictures, papers and clips, as they are */
function layCleaned(folder: string, notes: readonly NoteFile[], made: string): readonly { readonly path: string; readonly from: string }[] {
  for (const { path, text } of notes) {
    const file = join(made, 'journal', path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return loadJournal(folder).assets.map(({ path }) => ({ path: `journal/${path}`, from: join(folder, path) }));
}

/** Every file below a folder that does not begin with a dot. A link that leads out is passed over, as in reading. */
function filesOf(folder: string, under: string): BagFile[] {
  return walk(folder, () => true).found.map(({ path }) => ({ path: under + path, from: join(folder, path) }));
}

/** Written beside and renamed, so that there is a whole archive or none. */
async function written(files: readonly BagFile[], { journal, day, copy }: JournalRecord, out: string, progress: (text: string) => void) {
  const beside = hiddenBeside(out);
  mkdirSync(dirname(out), { recursive: true });
  removeLeftOvers(dirname(out));
  const about = [
    ['External-Description', `${journal.settings.title}: the record of its restoration, ${copy.name} copy`],
    ['Bag-Software-Agent', 'asfound'],
  ] as const;
  try {
    const sink = /\.zip$/i.test(out) ? zipSink(beside, basename(out).replace(/\.zip$/i, ''), day) : folderSink(beside);
    const result = await writeBag(files, { day, about }, sink, (done) => progress(`Archive: ${done} of ${files.length} files`));
    renameSync(beside, out);
    return result;
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    throw new Refusal(EXIT.cannotReadOrWrite, `${out} cannot be written: ${reasonOf(error)}.`);
  }
}
