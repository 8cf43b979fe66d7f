/** identity/<name>.yaml → points tables, before those that the program brings. */
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Place } from '../diagnostics/place.ts';
import { AUTHORITY_DECIDES, type IdentityTable } from '../model/identity-tables/table.ts';
import { IDENTITY_TABLES } from '../model/identity-tables/tables.ts';
import type { IdentityFields, IdentityFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';

/** @returns every table that the record answers, in the order pages show them */
export function identityTables(files: readonly IdentityFile[], out: Reporter): readonly IdentityTable[] {
  return [...files.map((file) => tableOf(file, out)), ...IDENTITY_TABLES];
}

/** The words that `component` of a part takes: those that the tables ask for. */
export function componentWords(tables: readonly IdentityTable[]): ReadonlySet<string> {
  return new Set(tables.flatMap(({ lines }) => lines.flatMap(({ needs }) => needs.flatMap(({ components }) => components))));
}

function tableOf({ id, value, tree }: IdentityFile, out: Reporter): IdentityTable {
  checkLines(value, tree, out);
  return {
    id,
    title: value.title,
    source: value.source,
    address: value.address,
    standing: value.standing,
    vehicles: value.vehicles,
    caution: AUTHORITY_DECIDES,
    needed: value.needed,
    neededFrom: value.from,
    lines: value.lines.map(({ says: { id: line, words, points, asks, origins, unmodified } }) => ({
      id: line,
      words,
      points,
      needs: asks.map(({ says: { what, of } }) => ({ what, components: of })),
      origins,
      unmodified,
    })),
  };
}

function checkLines({ lines, from }: IdentityFields, tree: Tree, out: Reporter): void {
  const first = new Map<string, Place>();
  for (const { says, placeOf } of lines) {
    const [earlier, place] = [first.get(says.id), placeOf('id')];
    if (earlier === undefined) {
      first.set(says.id, place);
      continue;
    }
    const related = [{ place: earlier, message: 'It is first used here.' }];
    out.report('A410', place, `A line \`${says.id}\` is already in this table.`, {
      related,
      hint: 'Give each line an id of its own.',
    });
  }
  if (from && !first.has(from.line)) {
    const hint = didYouMean(from.line, first.keys());
    out.report('A304', tree.placeOf(['from', 'line']), `The table has no line \`${from.line}\`.`, { hint });
  }
}
