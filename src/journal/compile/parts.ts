/** parts/<subsystem>.yaml → parts, and the positions they make. */
import Fraction from 'fraction.js';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Part, Place, Position } from '../model.ts';
import type { PartsFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { PartSource } from '../schema/catalogues.ts';
import type { Catalogues } from './context.ts';
import { componentWords } from './identity.ts';

/** Fills the catalogues' parts and positions from every catalogue file, in file order. */
export function compileParts(files: readonly PartsFile[], catalogues: Catalogues, out: Reporter): void {
  const written = new Map<string, { readonly source: PartSource; readonly file: PartsFile; readonly at: number }>();
  for (const file of files) {
    file.parts.forEach((source, at) => {
      const place = file.tree.placeOf([at, 'id']);
      const first = written.get(source.id);
      if (first) {
        const related = [{ place: first.file.tree.placeOf([first.at, 'id']), message: 'It is first used here.' }];
        out.report('A410', place, `A part \`${source.id}\` is already in the catalogue.`, {
          related,
          hint: 'Give each part an id of its own.',
        });
      } else written.set(source.id, { source, file, at });
    });
  }
  const words = componentWords(catalogues.identityTables);
  const makes = new Set([...written.values()].filter(({ source }) => source.for === undefined).map(({ source }) => source.id));
  for (const { source, file, at } of written.values()) {
    if (catalogues.subsystems.has(source.id)) {
      out.report('A410', file.tree.placeOf([at, 'id']), `\`${source.id}\` is a subsystem already, and \`on:\` could mean either.`);
    }
    const position = positionOf(source, makes, file.tree.placeOf([at, 'for']), out);
    const store = storeOf(source, catalogues, file.tree.placeOf([at, 'at']), out);
    checkComponents(source, file, at, words, out);
    catalogues.parts.set(source.id, partOf(source, file, position, store, file.tree.placeOf([at, 'id'])));
  }
  addPositions([...catalogues.parts.values()], catalogues.positions);
}

function checkComponents(source: PartSource, file: PartsFile, at: number, words: ReadonlySet<string>, out: Reporter): void {
  source.component?.forEach((word, n) => {
    if (words.has(word)) return;
    const hint =
      didYouMean(word, words) ?? `The tables of the identity rule ask for ${[...words].map((known) => `\`${known}\``).join(', ')}.`;
    out.report('A304', file.tree.placeOf([at, 'component', n]), `No table of the identity rule asks for a component \`${word}\`.`, {
      hint,
    });
  });
}

/** A part for a position that nobody knows keeps to itself, so that what notes say of it is still looked through. */
function positionOf(source: PartSource, makes: ReadonlySet<string>, place: Place, out: Reporter): string {
  if (source.for === undefined) return source.id;
  if (makes.has(source.for)) return source.for;
  const hint = didYouMean(source.for, makes);
  out.report('A407', place, `No part that makes a position has the id \`${source.for}\`.`, { hint });
  return source.id;
}

function storeOf(source: PartSource, { stores }: Catalogues, place: Place, out: Reporter): string | null {
  if (source.at === undefined) return null;
  if (stores.includes(source.at)) return source.at;
  out.report('A406', place, `There is no store \`${source.at}\` in journal.yaml.`, { hint: didYouMean(source.at, stores) });
  return null;
}

function partOf(source: PartSource, file: PartsFile, position: string, store: string | null, place: Place): Part {
  const makesPosition = source.for === undefined;
  return {
    id: source.id,
    name: source.name,
    subsystem: file.subsystem,
    origin: source.origin ?? null,
    evidence: source.evidence ?? null,
    count: source.count ?? 1,
    position,
    makesPosition,
    found: source.found ?? foundOf(source),
    store,
    acquired: source.acquired ?? null,
    marks: source.marks ?? null,
    finish: source.finish ?? null,
    condition: source.condition ?? null,
    hazards: source.hazard ?? [],
    components: source.component ?? [],
    weight: source.weight ?? new Fraction(1),
    private: source.private ?? null,
    note: source.note ?? null,
    place,
  };
}

/** What makes a position stood there. A candidate lay where `at` says, or comes on its day; with neither it was only considered. */
function foundOf(source: PartSource): Part['found'] {
  if (source.for === undefined) return 'fitted';
  return source.at === undefined && source.acquired === undefined ? 'considered' : 'loose';
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
