/**
 * Consumables of which some stock could not be read: a purchase, a stock-take or the opening stock was left
 * out for a fault in it. What is then short of them may be there, so no shortage is reported that may only
 * echo the fault.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { beginsAt, beginsWithin } from '../diagnostics/place.ts';
import type { ConsumableId, Journal, Place } from '../model.ts';
import type { ReadJournal } from '../read/journal-source.ts';
import { fieldsHaving } from '../read/schema-at.ts';
import type { Tree, Value } from '../read/source/tree.ts';
import { sessionSchema } from '../schema/session.ts';

const STOCK_FIELDS = [...fieldsHaving(sessionSchema, 'stock').keys()];
/** It cannot be told which. */
const ANY = null;

/** @param diagnostics what reading and compiling had to say */
export function stockInDoubt(
  read: ReadJournal,
  { consumables }: Pick<Journal, 'consumables'>,
  diagnostics: readonly Diagnostic[],
): ReadonlySet<ConsumableId> {
  const notes = new Map(read.notes.filter(({ undated }) => !undated).map(({ file, tree }) => [file, tree]));
  const named = diagnostics
    .filter(({ severity }) => severity === 'error')
    .flatMap((each): (ConsumableId | typeof ANY)[] => {
      const { file } = each.place;
      if (file === 'consumables.yaml') return read.consumables ? cataloguedAt(read.consumables.tree, each.place) : [ANY];
      return file.startsWith('sessions/') ? namedAt(notes.get(file), each) : [];
    });
  const all = named.some((id) => id === ANY || !consumables.has(id));
  return new Set(all ? consumables.keys() : named.filter((id) => id !== ANY));
}

/** What the entry of a note speaks of in which something is wrong; any, where the entry or the note was not understood. */
function namedAt(tree: Tree | undefined, { code, place }: Diagnostic): (ConsumableId | typeof ANY)[] {
  if (!tree || /^A[12]/.test(code)) return [ANY];
  const start = tree.placeOf([]);
  const field = STOCK_FIELDS.find((name) => {
    const written = tree.placeOf([name]);
    return !beginsAt(written, start) && beginsWithin(place, written);
  });
  if (field === undefined) return [];
  const entries = listIn(tree.value, field);
  const entry = entries.find((_, n) => beginsWithin(place, tree.placeOf([field, n])));
  return entry === undefined ? [ANY] : [entry, ...listIn(entry, 'lines')].flatMap((each) => textIn(each, 'consumable'));
}

function cataloguedAt(tree: Tree, place: Place): ConsumableId[] {
  const ids = typeof tree.value === 'object' && !Array.isArray(tree.value) ? Object.keys(tree.value) : [];
  return ids.filter((id) => beginsWithin(place, tree.placeOf([id])) || beginsWithin(place, tree.keyPlaceOf([id])));
}

function listIn(value: Value, field: string): readonly Value[] {
  const list = typeof value === 'object' && !Array.isArray(value) ? value[field] : undefined;
  return Array.isArray(list) ? list : [];
}

function textIn(value: Value, field: string): string[] {
  const text = typeof value === 'object' && !Array.isArray(value) ? value[field] : undefined;
  return typeof text === 'string' ? [text] : [];
}
