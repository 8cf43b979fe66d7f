/** parts/<subsystem>.yaml → parts, and the positions they make. */
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Part, PartId, Place, Position, SubsystemId } from '../model.ts';
import type { Entry } from '../read/entry.ts';
import type { PartFields, PartsFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import { given } from './believed.ts';
import type { Catalogues } from './context.ts';
import { componentWords } from './identity.ts';

type PartEntry = Entry<PartFields>;

/** Fills the catalogues' parts and positions from every catalogue file, in file order. */
export function compileParts(files: readonly PartsFile[], catalogues: Catalogues, out: Reporter): void {
  const written = onePerId(files, out);
  const words = componentWords(catalogues.identityTables);
  const makes = new Set([...written.values()].filter(({ entry }) => entry.says.for === null).map(({ entry }) => entry.says.id));
  for (const { entry, subsystem } of written.values()) {
    const { says, placeOf } = entry;
    if (catalogues.subsystems.has(says.id)) {
      out.report('A410', placeOf('id'), `\`${says.id}\` is a subsystem already, and \`on:\` could mean either.`);
    }
    const position = positionOf(entry, makes, out);
    const store = given(says.at, (name) => storeNamed(name, catalogues, placeOf('at'), out));
    checkComponents(entry, words, out);
    catalogues.parts.set(says.id, partOf(entry, subsystem, position, store));
  }
  addPositions([...catalogues.parts.values()], catalogues.positions);
}

interface Written {
  readonly entry: PartEntry;
  readonly subsystem: SubsystemId;
}

function onePerId(files: readonly PartsFile[], out: Reporter): ReadonlyMap<PartId, Written> {
  const written = new Map<PartId, Written>();
  for (const { parts, subsystem } of files) {
    for (const entry of parts) {
      const { id } = entry.says;
      const first = written.get(id)?.entry;
      if (first) {
        const related = [{ place: first.placeOf('id'), message: 'It is first used here.' }];
        const hint = 'Give each part an id of its own.';
        out.report('A410', entry.placeOf('id'), `A part \`${id}\` is already in the catalogue.`, { related, hint });
      } else written.set(id, { entry, subsystem });
    }
  }
  return written;
}

function checkComponents({ says, placeOf }: PartEntry, words: ReadonlySet<string>, out: Reporter): void {
  says.component.forEach((word, n) => {
    if (words.has(word)) return;
    const hint =
      didYouMean(word, words) ?? `The tables of the identity rule ask for ${[...words].map((known) => `\`${known}\``).join(', ')}.`;
    out.report('A304', placeOf('component', n), `No table of the identity rule asks for a component \`${word}\`.`, { hint });
  });
}

/** A part for a position that nobody knows keeps to itself, so that what notes say of it is still looked through. */
function positionOf({ says, placeOf }: PartEntry, makes: ReadonlySet<string>, out: Reporter): string {
  if (says.for === null) return says.id;
  if (makes.has(says.for)) return says.for;
  const hint = didYouMean(says.for, makes);
  out.report('A407', placeOf('for'), `No part that makes a position has the id \`${says.for}\`.`, { hint });
  return says.id;
}

function storeNamed(name: string, { stores }: Catalogues, place: Place, out: Reporter): string | null {
  if (stores.includes(name)) return name;
  out.report('A406', place, `There is no store \`${name}\` in journal.yaml.`, { hint: didYouMean(name, stores) });
  return null;
}

function partOf({ says, placeOf }: PartEntry, subsystem: SubsystemId, position: string, store: string | null): Part {
  const { for: other, at, hazard, component, ...rest } = says;
  const more = { makesPosition: other === null, found: says.found ?? foundOf(says), hazards: hazard, components: component };
  return { ...rest, ...more, subsystem, position, store, place: placeOf('id') };
}

/** What makes a position stood there. A candidate lay where `at` says, or comes on its day; with neither it was only considered. */
function foundOf(says: PartFields): Part['found'] {
  if (says.for === null) return 'fitted';
  return says.at === null && says.acquired === null ? 'considered' : 'loose';
}

/** The positions with the parts that belong there, each once: the one that makes it, then in catalogue order. */
function addPositions(parts: readonly Part[], positions: Map<string, Position>): void {
  const belonging = new Map<string, string[]>();
  for (const { id, position, makesPosition } of parts) {
    if (!makesPosition) belonging.set(position, [...(belonging.get(position) ?? []), id]);
  }
  for (const { id, name, subsystem, count, weight, components, makesPosition } of parts) {
    if (makesPosition) positions.set(id, { id, name, subsystem, count, weight, components, parts: [id, ...(belonging.get(id) ?? [])] });
  }
}
