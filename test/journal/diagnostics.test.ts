import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, type Code } from '../../src/journal/diagnostics/catalogue.ts';
import type { Diagnostic } from '../../src/journal/diagnostics/diagnostic.ts';
import type { Place } from '../../src/journal/model.ts';
import { CONSUMABLES, compileFiles, type Files, JOURNAL, NOTE, note, PARTS } from './base.ts';
import type { Case } from './cases/case.ts';
import { FILES_AND_YAML } from './cases/files-and-yaml.ts';
import { BAGS_AND_ITEMS, DECISIONS_AND_HOURS, PICTURES_AND_PROSE, REFERENCES, WHEREABOUTS } from './cases/references-and-facts.ts';

const CASES: readonly Case[] = [
  ...FILES_AND_YAML,
  ...REFERENCES,
  ...WHEREABOUTS,
  ...BAGS_AND_ITEMS,
  ...DECISIONS_AND_HOURS,
  ...PICTURES_AND_PROSE,
];

/** Found by the load stage, from the disk; their failing cases are in test/load and test/photos. */
const FROM_THE_DISK: readonly Code[] = ['A106', 'A107', 'A110', 'A907', 'A908', 'A909'];

function filesOf(each: Case): Files {
  if (each.note === undefined && each.prose === undefined) return each.files ?? {};
  return { ...each.files, more: { ...each.files?.more, [NOTE]: note(each.note ?? '', each.prose) } };
}

function textOf(files: Files, path: string): string {
  const text = files.more?.[path];
  if (typeof text === 'string') return text;
  if (path === 'journal.yaml') return files.journal ?? JOURNAL;
  return path === 'consumables.yaml' ? (files.consumables ?? CONSUMABLES) : (files.parts ?? PARTS);
}

function startsAt(place: Place, files: Files): string {
  const lines = textOf(files, place.file)
    .split('\n')
    .slice(place.line - 1);
  return lines.join('\n').slice(place.column - 1);
}

describe('every fault is named, with its place and its repair', () => {
  test.each(CASES.map((each) => [`${each.code}: ${each.shows}`, each] as const))('%s', (_, each) => {
    const files = filesOf(each);
    const { diagnostics } = compileFiles(files);
    const found = diagnostics.find((diagnostic) => diagnostic.code === each.code);
    expect(found, JSON.stringify(diagnostics, null, 1)).toBeDefined();
    if (!found) return;
    expect(found.place.file).toBe(each.file ?? NOTE);
    if (each.at !== undefined)
      expect(startsAt(found.place, files).startsWith(each.at), startsAt(found.place, files).slice(0, 60)).toBe(true);
    if (each.says) expect(found.message).toMatch(each.says);
    if (each.hint) expect(found.hint).toMatch(each.hint);
    const first = found.related[0];
    if (each.first !== undefined) expect(first && startsAt(first.place, files).startsWith(each.first)).toBe(true);
  });
});

test('the sound journal has nothing to complain of', () => {
  expect(compileFiles({ more: { [NOTE]: note('hours: [{ by: rh, on: brakes, time: 19:10-21:40 }]', 'Fine.') } }).diagnostics).toEqual([]);
});

test('every code has a failing case', () => {
  const shown = new Set<Code>([...CASES.map((each) => each.code), ...FROM_THE_DISK]);
  expect(Object.keys(CATALOGUE).filter((code) => !shown.has(code as Code))).toEqual([]);
});

test('every code has its row in DEVELOPERS.md, with the words of the catalogue', () => {
  const table = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
  const missing = Object.entries(CATALOGUE).filter(
    ([code, row]) => !table.includes(`| ${code} | ${row.severity} | ${row.title} | ${row.meaning.replaceAll('|', '\\|')} |`),
  );
  expect(missing.map(([code]) => code)).toEqual([]);
});

test('a wrong field does not hide what else is wrong in the same note', () => {
  const { diagnostics } = compileFiles({
    more: {
      [NOTE]: note(
        'hours: [{ by: hr, on: brakes, time: 1h }, { by: rh, on: breaks, time: 1h }]\nparts: [{ part: drun, did: remvoed }, { part: drum-donor, did: removed }]\nnonsense: x',
        '[a](part:nothing-like-it)',
      ),
    },
  });
  const codes = diagnostics.map((each: Diagnostic) => each.code);
  expect(codes).toEqual(expect.arrayContaining(['A402', 'A408', 'A304', 'A501', 'A301', 'A903']));
});

test('problems come out in the order of files, lines and columns', () => {
  const { diagnostics } = compileFiles({
    journal: JOURNAL.replace('GBP', 'GPB'),
    more: { [NOTE]: note('private: { a: b }\nwrong: x'), 'sessions/2031-03-01.md': 'no front matter' },
  });
  const places = diagnostics.map(({ place }) => [place.file, place.line, place.column] as const);
  const sorted = [...places].sort((a, b) => (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : a[1] - b[1] || a[2] - b[2]));
  expect(places).toEqual(sorted);
  expect(diagnostics.length).toBeGreaterThanOrEqual(4);
});
