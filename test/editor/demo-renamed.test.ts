import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { repaired } from '../../src/journal/diagnostics/repair.ts';
import { mentionsIn } from '../../src/journal/mentions/mentions.ts';
import { RENAMED_SORTS, type RenamedSort, renaming } from '../../src/journal/mentions/renaming.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { Sources } from '../../src/journal/read/source/sources.ts';
import { loadJournal } from '../../src/load/load.ts';

const demo = loadJournal(fileURLToPath(new URL('../../content', import.meta.url)));

const codes = (sources: Sources): string[] => compileJournal(sources, { today: '2050-01-01' }).diagnostics.map(({ code }) => code);

/** The journal after every thing of a sort has got another name. */
function allRenamed(sort: RenamedSort): Sources {
  const mentions = mentionsIn(demo);
  const paths = demo.files.map(({ path }) => path);
  const names = [...(mentions.known.get(sort) ?? [])].filter((name) => name !== 'general');
  const all = names.map((name) => renaming(mentions, paths, sort, name, sort === 'bag' ? String(9000 + Number(name)) : `other-${name}`));
  const done = all.filter((one) => 'edits' in one);
  expect(done).toHaveLength(names.length);
  const edits = done.flatMap((one) => one.edits);
  const moved = new Map(done.flatMap((one) => (one.moved ? [[one.moved.from, one.moved.to] as const] : [])));
  const files = demo.files.map(({ path, bytes }) => {
    const text = repaired(
      new TextDecoder().decode(bytes),
      edits.filter(({ place }) => place.file === path),
    );
    return { path: moved.get(path) ?? path, bytes: new TextEncoder().encode(text) };
  });
  return { ...demo, files };
}

/** Whatever is named and not found is told by `check`. */
describe('the demo reads the same after everything has another name', () => {
  test.each(RENAMED_SORTS)('every %s', (sort) => {
    expect(codes(allRenamed(sort)).sort()).toEqual(codes(demo).sort());
  });
});
