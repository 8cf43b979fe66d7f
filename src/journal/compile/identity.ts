/** identity/<name>.yaml → points tables, before those that the program brings. */
import { didYouMean } from '../diagnostics/nearest.ts';
import { AUTHORITY_DECIDES, type IdentityTable } from '../model/identity-tables/table.ts';
import { IDENTITY_TABLES } from '../model/identity-tables/tables.ts';
import type { IdentityFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';
import type { IdentitySource } from '../schema/identity.ts';

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
    address: value.address ?? null,
    standing: value.standing,
    caution: AUTHORITY_DECIDES,
    needed: value.needed,
    neededFrom: value.from ?? null,
    lines: value.lines.map(({ id: line, words, points, asks, origins, unmodified }) => ({
      id: line,
      words,
      points,
      needs: asks.map(({ what, of }) => ({ what: what ?? null, components: of })),
      origins: origins ?? ['original'],
      unmodified: unmodified ?? false,
    })),
  };
}

function checkLines({ lines, from }: IdentitySource, tree: Tree, out: Reporter): void {
  const first = new Map<string, number>();
  lines.forEach(({ id }, at) => {
    const earlier = first.get(id);
    if (earlier === undefined) first.set(id, at);
    else {
      const related = [{ place: tree.placeOf(['lines', earlier, 'id']), message: 'It is first used here.' }];
      out.report('A410', tree.placeOf(['lines', at, 'id']), `A line \`${id}\` is already in this table.`, { related });
    }
  });
  if (from && !first.has(from.line)) {
    const hint = didYouMean(from.line, first.keys());
    out.report('A304', tree.placeOf(['from', 'line']), `The table has no line \`${from.line}\`.`, { hint });
  }
}
