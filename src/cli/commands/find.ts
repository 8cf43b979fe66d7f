import { findThings } from '../../editor/find-things.ts';
import { keepThings, keptThings } from '../../editor/kept-things.ts';
import { type Thing, typedName } from '../../editor/things.ts';
import { compileJournal } from '../../journal/pipeline.ts';
import { reasonOf } from '../../load/problems.ts';
import { cacheFolder } from '../../site/cache-folder.ts';
import { todayBy } from '../../site/today.ts';
import { CONTENT, type Command } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder, loadFolder } from '../the-journal.ts';

/** More than a screen holds is no answer. */
const MOST = 40;

/** The ids to type, found by words. */
export const find: Command = {
  name: 'find',
  summary: 'finds parts, bags, items, places and consumables by words, with the id to type and where each is',
  takes: ['WORDS'],
  takesMore: true,
  options: { content: CONTENT, ids: { type: 'boolean', help: 'nothing but what to type, one a line' } },
  run: async (values, words, effects) => {
    const asked = words.join(' ').trim();
    if (asked === '') throw new Refusal(EXIT.notUnderstood, 'say what to find: `asfound find drum`.');
    const found = findThings(thingsIn(journalFolder(values, effects), effects), asked);
    const shown = found.slice(0, MOST);
    effects.out(values.ids ? shown.map((one) => `${typedName(one)}\n`).join('') : inColumns(shown.map(rowOf)));
    if (found.length === 0) effects.err('Nothing has all of these words. Fewer, or the beginning of one, may find it.\n');
    if (found.length > shown.length) effects.err(`${found.length} found, the nearest ${shown.length} shown.\n`);
    return EXIT.done;
  },
};

/** From the last check while no file has changed since; else the journal is read again. */
function thingsIn(folder: string, effects: Effects): readonly Thing[] {
  const cache = cacheFolder(effects.env);
  const kept = keptOf(folder, cache);
  if (kept !== null) return kept;
  const sources = loadFolder(folder);
  const { record } = compileJournal(sources, { today: todayBy(effects.env, effects.now()) });
  if (record === null) throw new Refusal(EXIT.journalHasErrors, 'journal.yaml cannot be understood; `asfound check` says why.');
  return keepThings(sources, record, cache);
}

function keptOf(folder: string, cache: string): readonly Thing[] | null {
  try {
    return keptThings(folder, cache);
  } catch (error) {
    throw new Refusal(EXIT.cannotReadOrWrite, `${folder} cannot be read: ${reasonOf(error)}.`);
  }
}

/** A name that is only the id again is not said twice. */
const rowOf = (thing: Thing): string[] => [thing.sort, typedName(thing), thing.name === thing.id ? '' : thing.name, thing.now];

function inColumns(rows: readonly string[][]): string {
  const widths = [0, 1, 2].map((column) => Math.max(0, ...rows.map((row) => Math.min(row[column]?.length ?? 0, 44))));
  return rows
    .map(
      (row) =>
        `${row
          .map((cell, column) => cell.padEnd(widths[column] ?? 0))
          .join('  ')
          .trimEnd()}\n`,
    )
    .join('');
}
