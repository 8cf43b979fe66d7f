/** parts/<subsystem>.yaml → parts, and the positions they make. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Part, PartId, Place, Position, SubsystemId } from '../model.ts';
import type { PartFields, PartsFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { given } from './believed.ts';
import type { Catalogues } from './context.ts';
import { componentWords } from './identity.ts';
import { missingAsFound } from './missing-as-found.ts';
import { settleWithin } from './within.ts';

type PartEntry = WrittenEntry<PartFields>;

/** Fills the catalogues' parts and positions from every catalogue file, in file order. */
export function compileParts(files: readonly PartsFile[], catalogues: Catalogues, out: Reporter): void {
  const written = onePerId(files, out);
  const words = componentWords(catalogues.identityTables);
  const makes = new Set([...written.values()].filter(({ entry }) => entry.says.for === null).map(({ entry }) => entry.says.id));
  for (const { entry, subsystem } of written.values()) {
    const { says, placeOf } = entry;
    if (catalogues.subsystems.has(says.id)) {
      const hint = `Give one of them another name wherever it stands: \`asfound rename part ${says.id} NEW\`.`;
      out.report('A410', placeOf('id'), `\`${says.id}\` is a subsystem already, and \`on:\` could mean either.`, { hint });
    }
    const position = positionOf(entry, makes, out);
    const inside = given(says.in, (id) => insideOf(id, entry, makes, out));
    checkComponents(entry, words, out);
    catalogues.parts.set(
      says.id,
      partOf(entry, { subsystem, position, inside, ...lyingPlace(entry, catalogues, out), ...missingAsFound(entry, out) }),
    );
  }
  const nested = nestedSoundly(catalogues.parts, out);
  settleWithin(
    [...written.values()].map(({ entry }) => entry),
    catalogues.parts,
    out,
  );
  addPositions(nested, catalogues.positions);
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
        const hint = `Give this one an id of its own, such as \`${freeId(id, written)}\`.`;
        out.report('A410', entry.placeOf('id'), `A part \`${id}\` is already in the catalogue.`, { related, hint });
      } else written.set(id, { entry, subsystem });
    }
  }
  return written;
}

function freeId(id: PartId, written: ReadonlyMap<PartId, Written>): string {
  for (let n = 2; ; n += 1) if (!written.has(`${id}-${n}`)) return `${id}-${n}`;
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
  out.report('A407', placeOf('for'), `No part that makes a position has the id \`${says.for}\`.`, unknownName('part', says.for, makes));
  return says.id;
}

/** The position that a part's own is a place in. A candidate goes where its position is, and says so by `for`. */
function insideOf(outer: string, { says, placeOf }: PartEntry, makes: ReadonlySet<string>, out: Reporter): string | null {
  if (says.for !== null) {
    const hint = `Leave \`in\` out: \`${says.for}\` says what it is in.`;
    out.report('A301', placeOf('in'), `\`${says.id}\` belongs to \`${says.for}\`, and \`in\` is said of a position.`, { hint });
    return null;
  }
  if (makes.has(outer)) return outer;
  const { hint } = unknownName('part', outer, makes);
  out.report('A407', placeOf('in'), `No part that makes a position has the id \`${outer}\`.`, { hint });
  return null;
}

/** Every part, those whose place is in several things or, in the end, in itself as if they were on the vehicle. */
function nestedSoundly(parts: Map<string, Part>, out: Reporter): Part[] {
  for (const part of [...parts.values()]) {
    if (part.inside === null || !isUnsound(part, parts, out)) continue;
    parts.set(part.id, { ...part, inside: null });
  }
  return [...parts.values()];
}

function isUnsound(part: Part, parts: ReadonlyMap<string, Part>, out: Reporter): boolean {
  const outer = parts.get(part.inside ?? '');
  if (!outer) return false;
  const lot = [...parts.values()].find(({ position, count }) => position === outer.id && count > 1);
  const related = [{ place: (lot ?? outer).place, message: `This is \`${(lot ?? outer).id}\`.` }];
  if (lot) {
    const message = `\`${part.id}\` is \`in: ${outer.id}\`, and \`${lot.id}\`, which stands there, is a lot of ${lot.count}: nobody knows in which.`;
    out.report('A414', part.place, message, { hint: `Give each of \`${lot.id}\` an entry of its own, or leave \`in\` out.`, related });
    return true;
  }
  const chain = [part.id];
  for (let at: Part | undefined = outer; at; at = parts.get(at.inside ?? '')) {
    if (at.id === part.id) {
      const message = `\`${part.id}\` is in the end \`in\` itself: ${[...chain, part.id].map((id) => `\`${id}\``).join(' in ')}.`;
      out.report('A413', part.place, message, { hint: 'Leave `in` out of one of them.', related });
      return true;
    }
    if (chain.includes(at.id)) return false;
    chain.push(at.id);
  }
  return false;
}

/** Where a part lies at the start, or is put when it comes: a store, or a bag that was full when the record began. */
function lyingPlace({ says, placeOf }: PartEntry, catalogues: Catalogues, out: Reporter): Pick<Part, 'store' | 'bag'> {
  if (says.at === null) return { store: null, bag: null };
  const { bag, name } = says.at;
  if (bag === null) return { store: name && storeNamed(name, catalogues, placeOf('at'), out), bag: null };
  if (says.acquired === null || says.acquired <= catalogues.settings.arrived) return { store: null, bag };
  const message = `\`${says.id}\` came on ${says.acquired}, and bag ${bag} can only have held it from the start.`;
  out.report('A604', placeOf('at'), message, { hint: 'Leave `at` out, and say in the note of that day which bag it went into.' });
  return { store: null, bag: null };
}

function storeNamed(name: string, { stores }: Catalogues, place: Place, out: Reporter): string | null {
  if (stores.includes(name)) return name;
  out.report('A406', place, `There is no store \`${name}\` in journal.yaml.`, unknownName('store', name, stores));
  return null;
}

type Resolved = Pick<Part, 'subsystem' | 'position' | 'inside' | 'store' | 'bag' | 'missing' | 'missingWhich'>;

function partOf({ says, placeOf }: PartEntry, placed: Resolved): Part {
  const { for: other, in: outer, at, hazard, component, ...rest } = says;
  const more = { makesPosition: other === null, found: says.found ?? foundOf(says), hazards: hazard, components: component };
  return { ...rest, ...more, ...placed, place: placeOf('id') };
}

/** What makes a position stood there, unless it lay in a bag or was in another part. A candidate lay where `at` says, or comes on its day; with neither it was only considered. */
function foundOf(says: PartFields): Part['found'] {
  if (says.within !== null) return 'loose';
  if (says.for === null) return says.at?.bag ? 'loose' : 'fitted';
  return says.at === null && says.acquired === null ? 'considered' : 'loose';
}

/** The positions with the parts that belong there, each once: the one that makes it, then in catalogue order. */
function addPositions(parts: readonly Part[], positions: Map<string, Position>): void {
  const belonging = new Map<string, string[]>();
  for (const { id, position, makesPosition } of parts) {
    if (!makesPosition) belonging.set(position, [...(belonging.get(position) ?? []), id]);
  }
  for (const { id, name, subsystem, count, weight, components, inside, makesPosition } of parts) {
    if (makesPosition)
      positions.set(id, { id, name, subsystem, count, weight, components, inside, parts: [id, ...(belonging.get(id) ?? [])] });
  }
}
