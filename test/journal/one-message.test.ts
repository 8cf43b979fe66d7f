import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Diagnostic } from '../../src/journal/diagnostics/diagnostic.ts';
import { compileJournal, nothingMade } from '../../src/journal/pipeline.ts';
import type { SourceFile } from '../../src/journal/read/source/sources.ts';
import { keptIn } from '../../src/journal/values/once.ts';
import { type Files, repaired } from '../arbitraries/repairs.ts';
import { type Roll, SLIPS, type Slip } from '../arbitraries/slips.ts';
import { workshopFiles, workshops } from '../arbitraries/workshop.ts';

const encoder = new TextEncoder();

/** A note that was not changed is read once. */
const before = nothingMade();
const kept = new Map<string, SourceFile>();
const sourceOf = ([path, text]: readonly [string, string]): SourceFile =>
  keptIn(kept, `${path}\n${text}`, () => ({ path, bytes: encoder.encode(text) }));

function diagnosticsOf(files: Files): readonly Diagnostic[] {
  const sources = Object.entries(files).map(sourceOf);
  return compileJournal({ files: sources, assets: [], problems: [] }, { today: '2035-12-31', before }).diagnostics;
}

const RUNS = 120;
const JOURNALS = fc.sample(workshops(30), { numRuns: RUNS, seed: 41 });
const inWords = ({ code, message }: Diagnostic): string => `${code} ${message}`;

/** The same numbers in every run, other ones for each journal. */
function rollFrom(seed: number): Roll {
  let state = seed;
  return (n) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}

/** Each journal with the slip in it. */
function slippedBy(slip: Slip): readonly { readonly files: Files; readonly told: readonly Diagnostic[] }[] {
  return JOURNALS.flatMap((of, n) => {
    const slipped = slip(of, rollFrom(n * 7919 + 13));
    const files = slipped && workshopFiles(slipped);
    return files ? [{ files, told: diagnosticsOf(files) }] : [];
  });
}

const SLIPPED = new Map(Object.entries(SLIPS).map(([name, slip]) => [name, slippedBy(slip)]));
const NAMES = [...SLIPPED.keys()];

test('what is generated is sound, and a slip is mostly seen', () => {
  for (const of of JOURNALS) expect(diagnosticsOf(workshopFiles(of)).map(inWords)).toEqual([]);
  const seen = NAMES.map((name) => (SLIPPED.get(name) ?? []).filter(({ told }) => told.length > 0).length);
  for (const count of seen) expect(count).toBeGreaterThan(RUNS / 3);
});

describe('a single slip in a sound journal', () => {
  test.each(NAMES)('%s: not more than one in twenty gives a second message', (name) => {
    const all = SLIPPED.get(name) ?? [];
    expect(all).toHaveLength(RUNS);
    const twice = all.filter(({ told }) => told.length > 1).map(({ told }) => told.map(inWords));
    expect(twice.length, JSON.stringify(twice, null, 1)).toBeLessThanOrEqual(RUNS / 20);
  });

  test.each(NAMES)('%s: the message has a repair, and typed as it says it is accepted', (name) => {
    for (const { files, told } of SLIPPED.get(name) ?? []) {
      const [first] = told;
      if (!first) continue;
      const mended = repaired(files, first);
      if (mended === null) throw new Error(`nothing to type: ${inWords(first)} (${first.hint})`);
      expect(diagnosticsOf(mended).map(inWords), first.hint ?? '').not.toContain(inWords(first));
    }
  });
});

test('two slips that have nothing to do with each other give two messages in one run', () => {
  const note = (date: string, fields: string) => `---\ndate: ${date}\ntitle: An evening\n${fields}\n---\n`;
  const [of] = JOURNALS;
  const base = of ? workshopFiles({ ...of, notes: [] }) : {};
  const told = diagnosticsOf({
    ...base,
    'sessions/2030-10-01-a.md': note(
      '2030-10-01',
      'parts:\n  - { part: bonnet, did: fitted }\n  - { part: magneto, did: stored, to: loft }',
    ),
    'sessions/2030-10-02-b.md': note('2030-10-02', 'parts:\n  - { part: wheel-nuts, did: removed, count: 9 }\ncloses:\n  - { id: none }'),
  });
  expect(told.map(({ code }) => code)).toEqual(['A503', 'A509', 'A504', 'A610']);
});
