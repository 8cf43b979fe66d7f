/** Gives a thing another name, wherever it is named. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
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
  /** What it is about, where that stands in files. */
  readonly places?: readonly Place[];
}

/**
 * @param files their paths, where a file may be named for the thing
 * @param from the name it has, and `to` the one it gets, as they are typed
 * @param either what a name means that could be of this sort and of another; without it such a name is not decided on
 * @returns what to write where; or why it cannot be renamed, and then nothing is to be written
 */
export function renaming(
  { all, known }: Mentions,
  files: readonly string[],
  sort: RenamedSort,
  from: string,
  to: string,
  either: NamedSort | null = null,
): Renaming | Refused {
  const names = known.get(sort) ?? new Set();
  if (!names.has(from)) return { problem: `There is no ${sort} \`${from}\`.`, hint: unknownName(sort, from, names).hint };
  const same = all.filter((one) => one.name === from && (one.sort === sort || one.either.includes(sort)));
  const refused = nameTaken({ known }, sort, to) ?? twoOfOneName(same, sort) ?? undecided(same, sort, either);
  if (refused) return refused;
  const mentions = same.filter((one) => one.either.length === 0 || either === sort);
  const edits = mentions.map(({ place, around }) => ({ place, text: writtenIn(around, to) }));
  const path = `parts/${from}.yaml`;
  const moved = sort === 'subsystem' && files.includes(path) ? { from: path, to: `parts/${to}.yaml` } : null;
  return { mentions, edits, moved };
}

/** Two entries of the catalogue with one id: what is said of it is said of one of them, and nobody knows of which. */
function twoOfOneName(mentions: readonly Mention[], sort: RenamedSort): Refused | null {
  const entries = mentions.filter(({ brings }) => brings);
  const [first] = entries;
  if (sort !== 'part' || first === undefined || entries.length < 2) return null;
  const hint = 'Give one of them another id where it stands, and then write that wherever it is meant.';
  return { problem: `\`${first.name}\` is the id of ${entries.length} entries.`, hint, places: entries.map(({ place }) => place) };
}

function undecided(mentions: readonly Mention[], sort: RenamedSort, said: NamedSort | null): Refused | null {
  const doubtful = mentions.filter(({ either }) => either.length > 0 && (said === null || !either.includes(said)));
  const [first] = doubtful;
  if (first === undefined) return null;
  const other = first.either.find((each) => each !== sort) ?? sort;
  const problem = `\`${first.name}\` is a ${sort} and a ${other}, and in ${doubtful.length === 1 ? 'one place' : `${doubtful.length} places`} either may be meant.`;
  const hint =
    `Say \`asfound rename … --either ${sort}\` if the ${sort} is meant there, \`--either ${other}\` if the ${other} is. ` +
    `Where it is now the one and now the other, say \`--either ${other}\`, and write the new name where the ${sort} is meant.`;
  return { problem, hint, places: doubtful.map(({ place }) => place) };
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
