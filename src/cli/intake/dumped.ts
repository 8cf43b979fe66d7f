/** What a camera or a phone left in a folder: pictures and clips, each with its own time. */
import { readdirSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { IsoDate } from '../../journal/model.ts';
import { readDate } from '../../journal/values/date.ts';
import { reasonOf } from '../../load/problems.ts';
import { isFilmName } from '../../photos/clips.ts';
import { kindByName, type TakenAt } from '../../photos/facts.ts';
import { filmTakenAt } from '../../photos/film-taken.ts';
import { inspectFile } from '../../photos/inspect-file.ts';
import { clockThere } from '../../photos/taken.ts';
import { EXIT, Refusal } from '../exit-codes.ts';

export interface Dumped {
  /** Where it lies. */
  readonly file: string;
  readonly name: string;
  readonly kind: 'picture' | 'clip';
  readonly bytes: number;
  /** `YYYY-MM-DDTHH:MM:SS` by the clocks of the journal; null for one that tells no time. */
  readonly clock: string | null;
}

export interface Dump {
  /** By their clocks, then by their names. */
  readonly files: readonly Dumped[];
  /** Files that cannot be used, and why, in words that go on from the name. */
  readonly faults: readonly { readonly file: string; readonly message: string }[];
  /** Files of other kinds. */
  readonly others: number;
}

/**
 * @param folder looked through with all folders in it; names that begin with a dot, and links, are passed over
 * @param journal the journal folder, which nothing is taken from
 * @throws Refusal when the folder cannot be read, or lies in the journal
 */
export async function readDump(folder: string, journal: string, timeZone: string): Promise<Dump> {
  if (`${folder}${sep}`.startsWith(`${journal}${sep}`)) {
    throw new Refusal(EXIT.notUnderstood, `${folder} lies in the journal: what is there is there already.`);
  }
  const paths = filesUnder(folder, journal).sort();
  const files: Dumped[] = [];
  const faults: { file: string; message: string }[] = [];
  for (const file of paths.filter(isWanted)) {
    const looked = await lookAt(file, timeZone);
    if ('message' in looked) faults.push({ file, message: looked.message });
    else files.push(looked);
  }
  const order = ({ clock, file }: Dumped) => `${clock ?? '9999'} ${file}`;
  files.sort((a, b) => (order(a) < order(b) ? -1 : 1));
  return { files, faults, others: paths.length - files.length - faults.length };
}

function isWanted(file: string): boolean {
  const kind = kindByName(file);
  return (kind !== null && kind !== 'pdf') || isFilmName(file);
}

function filesUnder(folder: string, journal: string): string[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.name.startsWith('.') || path === journal) return [];
      if (entry.isDirectory()) return filesUnder(path, journal);
      return entry.isFile() ? [path] : [];
    });
  } catch (error) {
    throw new Refusal(EXIT.cannotReadOrWrite, `${folder} cannot be read: ${reasonOf(error)}.`);
  }
}

async function lookAt(file: string, timeZone: string): Promise<Dumped | { readonly message: string }> {
  try {
    const name = relative(join(file, '..'), file);
    const bytes = statSync(file).size;
    if (isFilmName(file)) return { file, name, kind: 'clip', bytes, clock: clockOf(filmTakenAt(file), name, timeZone) };
    const { facts, problem } = await inspectFile(file, file);
    if (problem) return { message: `${problem.message}. ${problem.hint}` };
    return { file, name, kind: 'picture', bytes, clock: clockOf(facts.takenAt, name, timeZone) };
  } catch (error) {
    return { message: `cannot be read: ${reasonOf(error)}.` };
  }
}

/** Its own time; where the camera wrote none, that in its name, `20310312_193000` or the day alone. */
function clockOf(taken: TakenAt | null, name: string, timeZone: string): string | null {
  if (taken !== null) return clockThere(taken, timeZone);
  const [, year, month, day, hour = '12', minute = '00', second = '00'] =
    /(?<!\d)(\d{4})[-_.]?(\d\d)[-_.]?(\d\d)(?:[-_ T.]?([01]\d|2[0-3])[-_.:h]?([0-5]\d)[-_.:m]?([0-5]\d)\d{0,3})?(?!\d{2})/.exec(name) ?? [];
  const date: IsoDate = `${year}-${month}-${day}`;
  return year !== undefined && year > '1990' && readDate(date).ok ? `${date}T${hour}:${minute}:${second}` : null;
}
