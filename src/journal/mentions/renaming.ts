/** Gives a thing another name, wherever it is named. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import type { Repair } from '../diagnostics/repair.ts';
import { destinationOf, readNewId } from '../schema/fields.ts';
import type { Mention, Mentions } from './mentions.ts';
import type { Around, NamedSort } from './written-name.ts';

/** Sorts of things that can be given another name. A session is named by its file, and is moved with its pictures. */
export const RENAMED_SORTS = ['part', 'store', 'bag', 'item', 'person', 'subsystem', 'milestone', 'consumable'] as const;
export type RenamedSort = (typeof RENAMED_SORTS)[number];

export interface Renaming {
  /** In the order of the files; each place is the name alone, without the marks around it. */
  readonly mentions: readonly Mention[];
  /** The same places and what to write there, for `repaired`, file by file. */
  readonly edits: readonly Repair[];
  /** A catalogue that is named for what is renamed: to be moved when the edits are written. */
  readonly moved: { readonly from: string; readonly to: string } | null;
}

export interface Refused {
  readonly problem: string;
  readonly hint: string | null;
}

/**
 * @param files their paths, where a file may be named for the thing
 * @param from the name it has, and `to` the one it gets, as they are typed
 * @returns what to write where; or why it cannot be renamed, and then nothing is to be written
 */
export function renaming(
  { all, known }: Mentions,
  files: readonly string[],
  sort: RenamedSort,
  from: string,
  to: string,
): Renaming | Refused {
  const names = known.get(sort) ?? new Set();
  if (!names.has(from)) return { problem: `There is no ${sort} \`${from}\`.`, hint: unknownName(sort, from, names).hint };
  const refused = nameTaken({ known }, sort, to);
  if (refused) return refused;
  const mentions = all.filter((one) => one.sort === sort && one.name === from);
  const edits = mentions.map(({ place, around }) => ({ place, text: writtenIn(around, to) }));
  const path = `parts/${from}.yaml`;
  const moved = sort === 'subsystem' && files.includes(path) ? { from: path, to: `parts/${to}.yaml` } : null;
  return { mentions, edits, moved };
}

/** Why a thing cannot have a name: it is none, or something has it; null when it can. */
export function nameTaken({ known }: Pick<Mentions, 'known'>, sort: RenamedSort, name: string): Refused | null {
  return notAName(sort, name) ?? taken(sort, name, known);
}

function notAName(sort: RenamedSort, name: string): Refused | null {
  if (sort === 'bag') {
    const isNumber = /^[1-9]\d{0,4}$/.test(name);
    return isNumber ? null : { problem: `\`${name}\` is not a bag number.`, hint: 'A bag has a whole number from 1.' };
  }
  if (sort === 'store') return notAStore(name);
  const reading = readNewId(name);
  return reading.ok ? null : { problem: reading.problem, hint: reading.hint };
}

function notAStore(name: string): Refused | null {
  if (destinationOf(name).bag !== null || /^bags?\b/i.test(name)) {
    return { problem: `\`${name}\` is the name of a bag.`, hint: 'Name a store for what it is: `shelf B2`.' };
  }
  if (name.trim() === name && /^[^\n\r]+$/.test(name)) return null;
  return { problem: 'The name of a store is one line of text without spaces around it.', hint: null };
}

/** Ids of parts and of subsystems are one set: `on:` takes either. */
const WITH: Readonly<Partial<Record<RenamedSort, NamedSort>>> = { part: 'subsystem', subsystem: 'part' };

function taken(sort: RenamedSort, name: string, known: Mentions['known']): Refused | null {
  const other = [sort, WITH[sort]].find((each) => each !== undefined && known.get(each)?.has(name));
  if (other === undefined) return null;
  const hint = sort === 'bag' ? 'Choose a number that no bag has had.' : 'Choose a name that nothing has.';
  return { problem: `There is a ${other} \`${name}\` already.`, hint };
}

/** Text that means itself wherever YAML takes a value, in braces and lists too. */
const PLAIN = /^[\p{L}\p{N}](?:[\p{L}\p{N} ._/()+-]*[\p{L}\p{N}.)])?$/u;

function writtenIn(around: Around, name: string): string {
  if (around === 'single quotes') return name.replaceAll("'", "''");
  if (around === 'double quotes') return JSON.stringify(name).slice(1, -1);
  return around !== 'nothing' || PLAIN.test(name) ? name : JSON.stringify(name);
}
