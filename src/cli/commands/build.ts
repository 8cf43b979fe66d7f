import { createHash } from 'node:crypto';
import { join, relative, resolve, sep } from 'node:path';
import type { IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { FOLDERS, type LoadedSources } from '../../load/load.ts';
import { cacheFolder } from '../../site/cache-folder.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { leaksOfSite } from '../../site/proof/prove-site.ts';
import { InTheWay } from '../../site/swap/carry-over.ts';
import { placeOf, realOf } from '../../site/swap/place.ts';
import { isWhole, manifestOf, mayReplace } from '../../site/swap/site-folder.ts';
import { recover, type Staging, stage } from '../../site/swap/swap.ts';
import { toolDigest } from '../../site/tool-digest.ts';
import { CONTENT, type Command, OUT } from '../command.ts';
import { COPY, copyAsked } from '../copy-option.ts';
import { dayOption, TO } from '../day-option.ts';
import type { Effects } from '../effects.ts';
import { EXIT, type Exit, Refusal } from '../exit-codes.ts';
import { progressLine } from '../progress.ts';
import { reportProblems } from '../report.ts';
import { reportLeaks } from '../report-leaks.ts';
import { checkLoaded, journalFolder, loadFolder, type OpenedJournal } from '../the-journal.ts';

/** The site. It is built beside the last one and put in its place when it is whole. */
export const build: Command = {
  name: 'build',
  summary: 'checks the journal and makes the site; with errors the last good site stays as it was',
  takes: [],
  options: {
    content: CONTENT,
    out: OUT,
    to: TO,
    copy: COPY,
    force: { type: 'boolean', help: 'build even when nothing has changed' },
  },
  run: async (values, _takes, effects) => {
    const out = resolve(effects.cwd, (values.out as string | undefined) ?? 'dist');
    const sources = loadFolder(journalFolder(values, effects));
    const place = placeOf(out);
    const within = FOLDERS.find((name) => `${place.site}${sep}`.startsWith(realOf(join(sources.folder, name)) + sep));
    if (within !== undefined) {
      throw new Refusal(
        EXIT.notUnderstood,
        `${out} lies in ${within}/ of the journal, where notes and papers are read. Name another --out.`,
      );
    }
    const swapping = { onWait: (whose: string) => effects.err(`This site is being made by ${whose}; waiting for it to end.\n`) };
    await recover(place, swapping);
    if (!mayReplace(place.site)) {
      throw new Refusal(
        EXIT.cannotReadOrWrite,
        `${out} holds something that is no site of asfound's; it was left alone. Name another --out.`,
      );
    }
    const to = dayOption(values, 'to');
    const made = digestOf(sources, to, values.copy);
    const last = manifestOf(place.site);
    if (values.force !== true && last?.made === made && isWhole(place.site, last)) {
      effects.err(`Nothing has changed; the site in ${relative(effects.cwd, out) || '.'} stands.\n`);
      return EXIT.done;
    }
    const opened = await checkLoaded(sources, effects, to);
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('Nothing was published.\n');
      return EXIT.journalHasErrors;
    }
    const copy = copyAsked(opened.record, values);
    return publish(opened, opened.record, copy, () => stage(place, swapping), { out, made }, effects);
  },
};

async function publish(
  opened: OpenedJournal,
  whole: JournalRecord,
  copy: JournalRecord,
  begin: () => Promise<Staging>,
  { out, made }: { readonly out: string; readonly made: string },
  effects: Effects,
): Promise<Exit> {
  const progress = progressLine(effects);
  const cache = cacheFolder(effects.env);
  let staging: Staging | null = null;
  // Before anything is there to be left behind.
  const uninterrupted = effects.onInterrupt(() => {
    progress.clear();
    staging?.discard();
  });
  try {
    staging = await begin();
    const { buildSite } = await import('../../site/build-site.ts');
    const problems = await buildSite({
      record: copy,
      // What is amiss is told in the words of the notes.
      warnings: isUsual(copy) ? opened.diagnostics : [],
      folder: opened.folder,
      cache,
      into: staging.folder,
      aside: staging.aside,
      progress: progress.show,
    });
    progress.clear();
    if (hasErrors(problems)) {
      reportProblems({ ...opened, diagnostics: [...opened.diagnostics, ...problems] }, effects);
      effects.err('Nothing was published.\n');
      return EXIT.journalHasErrors;
    }
    const leaks = await leaksOfSite(whole, copy, {
      folder: staging.folder,
      of: opened.folder,
      cache,
      progress: (done, total) => progress.show(`Proof: ${done} of ${total}`),
    });
    progress.clear();
    if (reportLeaks(leaks, copy, effects)) {
      effects.err('Nothing was published.\n');
      return EXIT.journalHasErrors;
    }
    if (staging.swap(made) === 'file by file') {
      effects.err(`${out} cannot be replaced as a whole, so its files were replaced one by one.\n`);
    }
    await staging.clear();
  } catch (error) {
    if (!(error instanceof InTheWay)) throw error;
    throw new Refusal(
      EXIT.cannotReadOrWrite,
      `${error.file} is not of the last site, and the new one has something else of that name. Move it, then build again.`,
    );
  } finally {
    progress.clear();
    staging?.discard();
    uninterrupted();
  }
  reportProblems(opened, effects);
  effects.err(`The site is in ${relative(effects.cwd, out) || '.'}: open index.html.\n`);
  return EXIT.done;
}

/** The owner's own copy may say what is amiss. */
function isUsual({ copy }: JournalRecord): boolean {
  return copy.leavesOut.every((kind) => kind === 'private' || kind === 'former-private');
}

/** Changes with whatever the site is made from: the notes, the files beside them, the day and the copy asked for, and the program. */
function digestOf(loaded: LoadedSources, to: IsoDate | null, copy: unknown): string {
  const hash = createHash('sha256').update(`${toolDigest()}\0${to ?? ''}\0${typeof copy === 'string' ? copy : ''}\0`);
  for (const file of loaded.files) hash.update(`${file.path}\0`).update(file.bytes).update('\0');
  for (const asset of loaded.assets) hash.update(`${asset.path}\0${asset.size}\0${asset.mtimeMs}\0`);
  return hash.digest('hex');
}
