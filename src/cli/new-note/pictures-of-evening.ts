import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { IsoDate } from '../../journal/model.ts';
import { digestOf } from '../../photos/inspect-file.ts';
import type { OptionValues } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { ByContent } from '../intake/bring-in.ts';
import { type Dumped, readDump } from '../intake/dumped.ts';
import { daysOf, freeNames } from '../intake/evenings.ts';
import type { OpenedJournal } from '../the-journal.ts';

/** Files of an evening that the journal does not have yet, each with its name in the folder of the note. */
export interface OfEvening {
  readonly files: readonly Dumped[];
  readonly names: readonly string[];
  readonly has: ByContent;
}

/**
 * Looks for what was taken on an evening in the folder that `--from` names, or else ASFOUND_PHOTOS.
 *
 * @returns null where no folder is named
 * @throws Refusal when the folder is not there, or the journal does not say whose clocks count
 */
export async function filesOfEvening(
  date: IsoDate,
  opened: OpenedJournal,
  values: OptionValues,
  effects: Effects,
): Promise<OfEvening | null> {
  const named = (values.from as string | undefined) ?? effects.env.ASFOUND_PHOTOS;
  if (named === undefined || named === '') return null;
  const from = resolve(effects.cwd, named);
  if (!existsSync(from)) throw new Refusal(EXIT.cannotReadOrWrite, `there is no folder ${from}.`);
  if (opened.record === null) {
    throw new Refusal(
      EXIT.journalHasErrors,
      'journal.yaml cannot be understood, so nobody knows whose clocks count; `asfound check` says why.',
    );
  }
  const dump = await readDump(from, opened.folder, opened.record.journal.settings.timeZone);
  const has = new ByContent(opened.sources.assets, (path) => join(opened.folder, path));
  const files = new Map<string, Dumped>();
  for (const file of dump.files) {
    if (file.clock === null || daysOf(file.clock)[0] !== date) continue;
    const digest = await digestOf(file.file);
    if (!files.has(digest) && (await has.find(digest, file.bytes)) === null) files.set(digest, file);
  }
  if (files.size === 0) effects.err(`${named} has no picture of ${date} that the journal does not have.${othersWords(dump.files)}\n`);
  return { files: [...files.values()], names: freeNames([...files.values()], ['index.md']), has };
}

/** The days that the folder has pictures of, the last few. */
function othersWords(files: readonly Dumped[]): string {
  const days = [...new Set(files.flatMap(({ clock }) => (clock === null ? [] : (daysOf(clock)[0] ?? []))))].sort().slice(-5);
  return days.length === 0 ? '' : ` It has some of ${days.join(', ')}.`;
}
