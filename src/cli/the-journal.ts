/** Finding, loading and compiling the journal a command is about. */
import { existsSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { Busy, finishChange } from '../disk/write-together.ts';
import type { IsoDate } from '../journal/model.ts';
import type { MadeBefore } from '../journal/pipeline.ts';
import { type LoadedSources, loadJournal } from '../load/load.ts';
import { reasonOf } from '../load/problems.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import { type CheckedJournal, checkSources } from '../site/check-journal.ts';
import { todayBy } from '../site/today.ts';
import type { OptionValues } from './command.ts';
import type { Effects } from './effects.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/**
 * The journal folder that is meant: `--content`, else ASFOUND_CONTENT, else ./content, else the folder one stands in.
 *
 * @throws Refusal when it is not there
 */
export function journalFolder(values: OptionValues, effects: Effects): string {
  const { cwd, env } = effects;
  const named = (values.content as string | undefined) ?? env.ASFOUND_CONTENT;
  const beside = existsSync(join(cwd, 'content', 'journal.yaml')) ? 'content' : '.';
  const folder = resolve(cwd, named !== undefined && named !== '' ? named : beside);
  if (!existsSync(folder)) throw new Refusal(EXIT.cannotReadOrWrite, `there is no folder ${folder}.`);
  if (!statSync(folder).isDirectory()) throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is not a folder.`);
  finishInterrupted(folder, effects);
  return folder;
}

/** A change of several files that was killed half way is made whole before anything is read. */
function finishInterrupted(folder: string, { err }: Effects): void {
  try {
    if (finishChange(folder)) err('A change of several files that had been interrupted was finished first.\n');
  } catch (error) {
    const reason = error instanceof Busy ? 'another run is changing several of its files' : reasonOf(error);
    throw new Refusal(EXIT.cannotReadOrWrite, `${folder} cannot be used now: ${reason}.`);
  }
}

export interface OpenedJournal extends CheckedJournal {
  readonly folder: string;
}

/**
 * Reads a journal folder; of one read before, only what has changed.
 *
 * @throws Refusal when the folder cannot be read
 */
export function loadFolder(folder: string, before: LoadedSources | null = null): LoadedSources {
  try {
    return loadJournal(folder, before);
  } catch (error) {
    throw new Refusal(EXIT.cannotReadOrWrite, `${folder} cannot be read: ${reasonOf(error)}.`);
  }
}

/**
 * Compiles and checks what has been read.
 *
 * @param to the day the record is asked for; null for that of its newest note
 * @param made for whoever does so again and again: what was made of it before
 * @throws Refusal when that day is before the vehicle arrived
 */
export async function checkLoaded(
  sources: LoadedSources,
  effects: Effects,
  to: IsoDate | null = null,
  made?: MadeBefore,
): Promise<OpenedJournal> {
  const today = todayBy(effects.env, effects.now());
  const checked = await checkSources(sources, { today, to, cache: cacheFolder(effects.env), made });
  const arrived = checked.record?.journal.settings.arrived;
  if (to !== null && arrived !== undefined && to < arrived) {
    throw new Refusal(EXIT.notUnderstood, `--to ${to} is before the vehicle arrived, on ${arrived}.`);
  }
  return { ...checked, folder: sources.folder };
}

/** Loads, compiles and checks, as `checkLoaded` does. */
export async function openJournal(folder: string, effects: Effects, to: IsoDate | null = null): Promise<OpenedJournal> {
  return checkLoaded(loadFolder(folder), effects, to);
}

/** How a file of the journal is shown: from where the user stands. */
export function shownFrom(cwd: string, folder: string): (file: string) => string {
  return (file) => relative(cwd, join(folder, file)) || file;
}
