/**
 * What a fault leaves in doubt: names that its entry, list or file would have brought, and where the parts are that it
 * speaks of. What is then not known, or not where it should be, may only echo the fault.
 */
import type { Diagnostic, Sort } from '../diagnostics/diagnostic.ts';
import { beginsAt, beginsWithin } from '../diagnostics/place.ts';
import type { PartId, PositionId } from '../model.ts';
import type { ReadJournal } from '../read/journal-source.ts';
import { fieldsHaving } from '../read/schema-at.ts';
import type { Tree } from '../read/source/tree.ts';
import { journalSchema } from '../schema/journal.ts';
import { sessionSchema } from '../schema/session.ts';

export interface Doubts {
  readonly sorts: ReadonlySet<Sort>;
  /** From which fault on nobody knows where a part is; '' stands for every part. */
  readonly parts: ReadonlyMap<PartId | '', Diagnostic>;
}

const OF_JOURNAL = fieldsHaving(journalSchema, 'brings');
const OF_NOTE = fieldsHaving(sessionSchema, 'brings');
/** What replaying says of where a part is; anything else that is said of it comes first. */
const WHEREABOUTS = /^A50[1-9]|^A511/;

/** @param diagnostics all that was found */
export function doubtsOf(read: ReadJournal, diagnostics: readonly Diagnostic[]): Doubts {
  const sorts = new Set<Sort>();
  const parts = new Map<PartId | '', Diagnostic>();
  const trees = new Map([...read.parts, ...read.notes.filter(({ undated }) => !undated)].map(({ file, tree }) => [file, tree]));
  const faults = diagnostics.filter(({ code, severity }) => severity === 'error' && !WHEREABOUTS.test(code));
  for (const fault of faults) {
    const { file } = fault.place;
    if (file === 'journal.yaml') addAll(sorts, fieldsAt(read.journal?.tree, fault, OF_JOURNAL));
    else if (file === 'consumables.yaml') sorts.add('consumable');
    else if (file.startsWith('parts/')) doubtCatalogue(fault, trees.get(file), sorts, parts);
    else if (file.startsWith('sessions/') && /\.md$/i.test(file)) doubtNote(fault, trees.get(file), sorts, parts);
  }
  if (sorts.has('subsystem')) sorts.add('part');
  if (sorts.has('part')) sorts.add('position');
  return { sorts, parts };
}

function addAll(sorts: Set<Sort>, more: readonly Sort[]): void {
  for (const sort of more) sorts.add(sort);
}

/** Which of the fields a fault is in; all of them where nothing could be told apart. */
function fieldsAt(tree: Tree | undefined, { place }: Diagnostic, sorts: ReadonlyMap<string, Sort>): Sort[] {
  if (!tree) return [...sorts.values()];
  return [...sorts].flatMap(([field, sort]) => {
    const written = tree.placeOf([field]);
    const there = !beginsAt(written, tree.placeOf([])) && beginsWithin(place, written);
    return there || beginsAt(place, tree.keyPlaceOf([field])) ? [sort] : [];
  });
}

/** A fault in an id, or in what holds the entries together, leaves every part in doubt that nobody knows. */
function doubtCatalogue(fault: Diagnostic, tree: Tree | undefined, sorts: Set<Sort>, parts: Map<PartId | '', Diagnostic>): void {
  if (!tree || /^A1|^A20|^A311|^A403/.test(fault.code)) sorts.add('part');
  const part = tree && entryAt(tree, [], fault)?.id;
  if (part !== undefined) firstOf(parts, part, fault);
}

function doubtNote(fault: Diagnostic, tree: Tree | undefined, sorts: Set<Sort>, parts: Map<PartId | '', Diagnostic>): void {
  if (!tree) {
    addAll(sorts, ['item', 'bag', 'session']);
    firstOf(parts, '', fault);
    return;
  }
  if (/^A[23]/.test(fault.code)) addAll(sorts, fieldsAt(tree, fault, OF_NOTE));
  const part = entryAt(tree, ['parts'], fault)?.part;
  if (part !== undefined) firstOf(parts, part, fault);
}

/** The texts of the list's entry that a fault is in. */
function entryAt(tree: Tree, path: readonly string[], { place }: Diagnostic): Readonly<Record<string, string | undefined>> | undefined {
  const list = path.reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], tree.value);
  if (!Array.isArray(list)) return undefined;
  const n = list.findIndex((_, at) => beginsWithin(place, tree.placeOf([...path, at])));
  return list[n] as Readonly<Record<string, string | undefined>> | undefined;
}

function firstOf(parts: Map<PartId | '', Diagnostic>, part: PartId | '', fault: Diagnostic): void {
  const known = parts.get(part);
  if (!known || isBefore(fault, known)) parts.set(part, fault);
}

/** Notes are named for their days, and catalogues come before them all. */
function isBefore({ place: a }: Diagnostic, { place: b }: Diagnostic): boolean {
  return a.file < b.file || (a.file === b.file && a.line < b.line);
}

/** What is said of a date that is in the calendar. */
const OF_A_DATE = new Set(['A317', 'A801', 'A802']);

/** What came off, and whether the same note takes it off. */
const OF_A_BAG = 'A618';

/** What a statement charged that was sent, and the notes do not tell. */
const OF_WHAT_WAS_SENT = 'A818';

function isOfNote(fault: Diagnostic | undefined, { place }: Diagnostic): boolean {
  return fault?.place.file === place.file;
}

/** Leaves out what may only echo another fault, which itself is always told. */
export function withoutEchoes(
  all: readonly Diagnostic[],
  read: ReadJournal,
  { sorts, parts }: Doubts,
  positionOf: (part: PartId) => PositionId,
): Diagnostic[] {
  // Where a date cannot be read the day in the note's name stands in for it.
  const unread = all.filter(({ code }) => code === 'A305');
  const misread = all.some(({ code, severity }) => severity === 'error' && !WHEREABOUTS.test(code));
  const diagnostics = all.filter(
    (each) =>
      !(OF_A_DATE.has(each.code) && unread.some(({ place }) => beginsAt(place, each.place))) &&
      !(each.code === OF_WHAT_WAS_SENT && misread),
  );
  if (sorts.size === 0 && parts.size === 0) return diagnostics;
  const trees = new Map(read.notes.map(({ file, tree }) => [file, tree]));
  const told = diagnostics.filter((each) => {
    if (each.unknown?.sorts.some((sort) => sorts.has(sort))) return false;
    const tree = trees.get(each.place.file);
    if (each.code === OF_A_BAG) return !isOfNote(parts.get((tree && entryAt(tree, ['bags'], each)?.off) ?? ''), each);
    if (!WHEREABOUTS.test(each.code)) return true;
    const entry = tree && entryAt(tree, ['parts'], each);
    const position = entry?.at ?? positionOf(entry?.part ?? '');
    return ![...parts].some(
      ([part, fault]) => isBefore(fault, each) && (part === '' || part === entry?.part || positionOf(part) === position),
    );
  });
  return told.some(({ severity }) => severity === 'error') ? told : diagnostics;
}
