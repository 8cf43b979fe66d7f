import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, type Code } from '../../src/journal/diagnostics/catalogue.ts';
import type { Diagnostic } from '../../src/journal/diagnostics/diagnostic.ts';
import type { Place } from '../../src/journal/model.ts';
import { CONSUMABLES, compileFiles, type Files, JOURNAL, NOTE, note, PARTS } from './base.ts';
import type { Case } from './cases/case.ts';
import { FILES_AND_YAML } from './cases/files-and-yaml.ts';
import { MONEY } from './cases/money.ts';
import { BAGS_AND_ITEMS, DECISIONS_AND_HOURS, PICTURES_AND_PROSE, REFERENCES, WHEREABOUTS } from './cases/references-and-facts.ts';

const CASES: readonly Case[] = [
  ...FILES_AND_YAML,
  ...REFERENCES,
  ...WHEREABOUTS,
  ...BAGS_AND_ITEMS,
  ...DECISIONS_AND_HOURS,
  ...MONEY,
  ...PICTURES_AND_PROSE,
];

/** Found by the load stage, from the disk; their failing cases are in test/load and test/photos. */
const FROM_THE_DISK: readonly Code[] = ['A106', 'A107', 'A110', 'A907', 'A908', 'A909', 'A910', 'A911', 'A912', 'A917'];

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
    expect(found.hint, found.message).toMatch(/\p{L}/u);
    expect(found.place.file).toBe(each.file ?? NOTE);
    if (each.at !== undefined)
      expect(startsAt(found.place, files).startsWith(each.at), startsAt(found.place, files).slice(0, 60)).toBe(true);
    if (each.says) expect(found.message).toMatch(each.says);
    if (each.hint) expect(found.hint).toMatch(each.hint);
    if (each.once) expect(diagnostics.filter((diagnostic) => diagnostic.code === each.code)).toHaveLength(1);
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

test('a name that is not known does not hide what is wrong in the figures beside it', () => {
  const codesOf = (fields: string) => compileFiles({ more: { [NOTE]: note(fields) } }).diagnostics.map(({ code }) => code);
  expect(codesOf('bought: [{ what: Pin, for: drun, cost: 1.005, tax: 120% }]')).toEqual(['A408', 'A307', 'A314']);
  const lines = '[{ what: Pin, for: drun, cost: 1.00 }, { what: Clip, cost: 2.005 }, { consumable: brake-cleaner, cost: 1e3 }]';
  expect(codesOf(`bills: [{ total: 20, carriage: 1.234, lines: ${lines} }]`)).toEqual(['A307', 'A408', 'A307', 'A302', 'A307']);
});

describe('a name or a word that nothing is near to', () => {
  const hintOf = (fields: string, more: Files = {}) => compileFiles({ ...more, more: { [NOTE]: note(fields) } }).diagnostics[0]?.hint;

  test.each([
    ['bought: [{ what: Chrome, as: outside, cost: 1.00 }]', 'Did you mean `outside-work`?'],
    ['parts: [{ part: splash, did: cleaned }]', 'Did you mean `splash-plate`?'],
    ['parts: [{ part: mudguard, did: cleaned }]', 'A new one goes into a file of `parts/`: `- { id: mudguard, name: …, origin: … }`'],
    ['hours: [{ by: xaver, on: brakes, time: 1h }]', 'A new one goes under `people` in journal.yaml: `xaver: { name: … }`.'],
    ['used: [{ consumable: oil, amount: 1 L }]', 'A new one goes into consumables.yaml: `oil: { name: …, unit: L }`.'],
    ['parts: [{ part: drum, did: removed, to: loft }]', 'A new one goes into the list `stores` in journal.yaml: `loft`.'],
  ])('%s', (fields, hint) => {
    expect(hintOf(fields)).toContain(hint);
  });

  test('several that have its words are all named', () => {
    const parts = `${PARTS}- { id: wheel-near, name: A, origin: original }\n- { id: wheel-off, name: B, origin: original }\n`;
    expect(hintOf('parts: [{ part: wheel, did: cleaned }]', { parts })).toContain('Perhaps `wheel-near`, `wheel-off`.');
  });

  test('a shortage says what to write where it was there from the start', () => {
    expect(hintOf('used: [{ consumable: brake-cleaner, amount: 3 L }]')).toContain('`opening: { amount: 3 L, value: … }`');
    const consumables = 'brake-cleaner: { name: Brake cleaner, unit: L }\n';
    expect(hintOf('used: [{ consumable: brake-cleaner, amount: 300 ml }]', { consumables })).toContain(
      '`opening: { amount: 0.3 L, value: … }`',
    );
  });

  test('a part that is named as a subsystem says how to give it another name', () => {
    const parts = '- { id: brakes, name: All of it, origin: original }\n';
    expect(compileFiles({ parts }).diagnostics[0]?.hint).toContain('`asfound rename part brakes NEW`');
  });
});

test('problems come out in the order of files, lines and columns', () => {
  const { diagnostics } = compileFiles({
    journal: JOURNAL.replace('GBP', 'GPB'),
    more: { [NOTE]: note('private: { a: b }\nwrong: x'), 'sessions/2031-03-01.md': 'title: no front matter' },
  });
  const places = diagnostics.map(({ place }) => [place.file, place.line, place.column] as const);
  const sorted = [...places].sort((a, b) => (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : a[1] - b[1] || a[2] - b[2]));
  expect(places).toEqual(sorted);
  expect(diagnostics.length).toBeGreaterThanOrEqual(4);
});

describe('a shortage of stock is not reported where stock could not be read', () => {
  const short = 'used: [{ consumable: brake-cleaner, amount: 3 L, on: brakes }]';
  const codesOf = (files: Files) => compileFiles(files).diagnostics.map(({ code }) => code);

  test.each([
    ['a purchase with a fault in its cost', 'bought: [{ consumable: brake-cleaner, amount: 5 L, cost: 21.905 }]', 'A307'],
    ['a purchase with a fault in its amount', 'bought: [{ consumable: brake-cleaner, amount: some, cost: 21.90 }]', 'A308'],
    ['a purchase that is no mapping', 'bought: [cleaner]', 'A303'],
    ['a purchase of a misspelt consumable', 'bought: [{ consumable: brake-cleener, amount: 5 L, cost: 21.90 }]', 'A405'],
    [
      'a bill one of whose lines is faulty',
      'bills: [{ lines: [{ what: Pin, cost: 1.005 }, { consumable: brake-cleaner, amount: 5 L, cost: 1.00 }] }]',
      'A307',
    ],
    ['a stock-take with a fault', 'counted: [{ consumable: brake-cleaner, amount: 5 kg, because: counted }]', 'A309'],
  ])('%s', (_, fault, code) => {
    expect(codesOf({ more: { [NOTE]: note(`${fault}\n${short}`) } })).toEqual([code]);
  });

  test('a note that could not be read, an opening stock with a fault', () => {
    expect(codesOf({ more: { [NOTE]: note(short), 'sessions/2031-03-01.md': 'title: no front matter' } })).toEqual(['A205']);
    expect(codesOf({ consumables: CONSUMABLES.replace('9.00', '9.005'), more: { [NOTE]: note(short) } })).toEqual(['A307']);
  });

  test.each([
    ['a fault in what is no stock', 'bought: [{ what: Pin, cost: 1.005 }]', ['A307', 'A805']],
    ['a fault in a purchase of another consumable', 'bought: [{ consumable: oil, amount: 1 L, cost: 1.005 }]', ['A307', 'A805']],
    ['a fault in hours', 'hours: [{ by: hr, on: brakes, time: 1h }]', ['A402', 'A805']],
  ])('but it is beside %s', (_, fault, codes) => {
    const consumables = `${CONSUMABLES}oil: { name: Oil, unit: L }\n`;
    expect(codesOf({ consumables, more: { [NOTE]: note(`${fault}\n${short}`) } })).toEqual(codes);
  });
});
