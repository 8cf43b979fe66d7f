/** What people type by mistake: told once, at its place, with what to type; and what else is wrong is told beside it. */
import { describe, expect, test } from 'vitest';
import { mend } from '../../src/journal/read/mending/mend.ts';
import { fieldNames } from '../../src/journal/read/schema-at.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';
import { compileFiles, NOTE } from './base.ts';

/** A note with a slip between a person nobody knows and an item nobody opened. */
function aroundIt(slip: string): string {
  return `---\ndate: 2031-03-12\ntitle: Brakes\nhours:\n  - { by: nobody, on: brakes, time: 1h }\n${slip}\ncloses:\n  - { id: never-opened }\n---\n[x](part:none)\n`;
}

interface Said {
  readonly codes: readonly string[];
  /** What the place of the slip covers, on its line. */
  readonly shown: string;
  readonly hint: string;
}

function saidOf(slip: string): Said {
  const text = aroundIt(slip);
  const { diagnostics } = compileFiles({ more: { [NOTE]: text } });
  const [found] = diagnostics.filter(({ code }) => !['A402', 'A610', 'A903'].includes(code));
  const line = text.split('\n')[(found?.place.line ?? 0) - 1] ?? '';
  const { column = 1, endColumn = 1 } = found?.place ?? {};
  return { codes: diagnostics.map(({ code }) => code), shown: line.slice(column - 1, endColumn - 1), hint: found?.hint ?? '' };
}

const SLIPS: readonly [what: string, slip: string, code: string, shown: string, hint: string][] = [
  [
    'a comma before what may be a field',
    'parts:\n  - { part: drum, note: Scored, condition fair, did: inspected }',
    'A208',
    'condition fair',
    '`note: "Scored, condition fair"`',
  ],
  ['two commas', 'methods:\n  - { on: drum, how: x, with: soda, lye, ash }', 'A208', 'lye, ash', '`with: [soda, lye, ash]`'],
  ['a comma before three digits', 'bought:\n  - { what: Pin, cost: 12,500 }', 'A208', '500', '`12500`'],
  ['a decimal comma before a letter', 'sold:\n  - { what: Pin, price: 1,5h }', 'A208', '5h', '`1.5h`'],
  ['a comma in a name', 'methods:\n  - { on: drum, how: x, with: soda, lye }', 'A208', 'lye', '`with: [soda, lye]`'],
  ['a comma of thousands', 'bought:\n  - { what: Pin, cost: 1,234.50 }', 'A208', '234.50', '`1234.50`'],
  ['a second colon in braces', 'parts:\n  - { part: drum, note: Parts: off }', 'A208', 'Parts: off', '`note: "Parts: off"`'],
  ['a reserved mark in braces', 'parts:\n  - { part: drum, note: @home }', 'A208', '@home', '`note: "@home"`'],
  ['a bracket in braces', 'parts:\n  - { part: drum, note: see [1] below }', 'A208', 'see [1] below', '`note: "see [1] below"`'],
  ['a hash in braces', 'parts:\n  - { part: drum, note: bag #5 }', 'A208', 'bag #5', '`note: "bag #5"`'],
  ['a brace left open', 'parts:\n  - { part: drum, did: inspected', 'A201', '{', 'wants a `}`'],
  ['a brace left open over an entry', 'parts:\n  - { part: drum\n  - { part: drum, did: inspected }', 'A201', '{', 'wants a `}`'],
  ['a bracket left open', 'cautions: [asbestos', 'A201', '[', 'wants a `]`'],
  ['a bracket left open in braces', 'parts:\n  - { part: drum, did: [inspected, cleaned }', 'A201', '[', 'wants a `]`'],
  ['a bracket closed with a brace', 'cautions: [asbestos}', 'A201', '}', 'write `]`'],
  ['a brace closed with a bracket', 'parts:\n  - { part: drum, did: inspected ]', 'A201', ']', 'write `}`'],
  ['a brace too many', 'parts:\n  - { part: drum, did: inspected }}', 'A201', '}', 'Take out `}`'],
  ['two entries on one line', 'parts:\n  - { part: drum, did: inspected }, { part: studs }', 'A201', '{', 'line of its own'],
  ['words after the brace', 'parts:\n  - { part: drum, did: inspected } very dirty', 'A208', 'very dirty', 'inside its braces'],
  ['semicolons', 'parts:\n  - { part: drum; did: inspected; note: x }', 'A208', 'did', 'comma before `did:`'],
  ['a comma forgotten', 'parts:\n  - { part: drum, did: inspected note: fine }', 'A208', 'note', 'comma before `note:`'],
  ['a comma twice', 'parts:\n  - { part: drum,, did: inspected }', 'A201', ',', 'Take it out'],
  ['equals signs', 'parts:\n  - { part = drum, did = inspected }', 'A208', 'part =', '`part: drum`'],
  ['parentheses', 'parts:\n  - ( part: drum, did: inspected )', 'A201', '( part: drum, did: inspected )', '`- {'],
  ['a list that was not opened', 'parts:\n  - { part: drum, did: inspected, cleaned], note: x }', 'A201', ']', 'Write `[`'],
  [
    'a list that was not closed before a field',
    'parts:\n  - { part: drum, did: [inspected, cleaned, note: x }',
    'A201',
    '[',
    'wants a `]`',
  ],
  ['an entry that was not opened', 'parts:\n  -  part: drum, did: inspected }', 'A201', '}', 'Begin the entry with `- {`'],
  ['a colon forgotten in braces', 'parts:\n  - { part: drum, did inspected, note: x }', 'A208', 'did', 'Write `did: `'],
  ['a quotation mark left open', 'private: "half a sentence', 'A201', '"half a sentence', '`private: "half a sentence"`'],
  ['one left open in braces', 'parts:\n  - { part: drum, note: "Scored. }', 'A201', '"Scored.', '`note: "Scored."`'],
  ['words after a quotation', 'private: "Scored" by the feel', 'A208', 'by the feel', `\`private: '"Scored" by the feel'\``],
  ['an apostrophe between two', "private: 'it's fine'", 'A208', "s fine'", '`private: "it\'s fine"`'],
  ['no space after the colon', 'private:x', 'A208', ':', '`private: x`'],
  ['no space after one in braces', 'parts:\n  - { part:drum, did: inspected }', 'A208', 'part:', '`part: drum`'],
  ['no space after one of an entry', 'parts:\n  - part: drum\n    did:inspected', 'A208', ':', '`did: inspected`'],
  ['two colons', 'private:: x', 'A208', ':: ', '`private: x`'],
  ['no colon', 'private x', 'A201', 'private x', '`private: x`'],
  ['a brace closed too early', 'parts:\n  - { part: drum, }did: inspected }', 'A201', '}', 'Take it out'],
  ['another mark for the colon', 'private; x', 'A201', 'private; x', '`private: x`'],
  ['another mark over a list', 'parts;\n  - { part: drum, did: inspected }', 'A201', 'parts', '`parts:`'],
  ['a bracket in a word', 'parts:\n  - { part: drum, did: inspected, note: wo]rn }', 'A208', 'wo]rn', '`note: "wo]rn"`'],
  ['no colon over a list', 'parts\n  - { part: drum, did: inspected }', 'A201', 'parts', '`parts:`'],
  ['a line that goes on', 'private: one\ntwo three', 'A201', 'two three', 'indent it'],
  ['a field too deep', 'private: x\n  cautions: [asbestos]', 'A201', 'cautions: [asbestos]', 'no space'],
  ['a field not deep enough', 'parts:\n  - part: drum\n   did: inspected', 'A201', 'did: inspected', '4 spaces'],
  ['a field of an entry too deep', 'parts:\n  - part: drum\n     did: inspected', 'A201', 'did: inspected', '4 spaces'],
  ['an entry not deep enough', 'parts:\n  - { part: drum }\n - { part: drum }', 'A201', '- { part: drum }', '2 spaces'],
  [
    'an entry of several lines too deep',
    'parts:\n  - part: drum\n    note: a\n   - part: drum\n     note: b',
    'A201',
    '- part: drum',
    '2 spaces',
  ],
  [
    'a first entry not deep enough',
    'parts:\n - { part: drum }\n  - { part: drum }\n  - { part: studs }',
    'A201',
    '- { part: drum }',
    '2 spaces',
  ],
  [
    'a field of a long entry not deep enough',
    'parts:\n  - part: drum\n   did: inspected\n    note: x\n    condition: 1',
    'A201',
    'did: inspected',
    '4 spaces',
  ],
  [
    'an entry that goes on at the start of a line',
    'parts:\n  - { part: drum,\ndid: inspected }',
    'A201',
    'did: inspected }',
    'on one line',
  ],
  ['what nobody can make out', 'parts:\n  - ] part: drum\n  - { part: drum }', 'A201', '- ] part: drum', 'too many or too few'],
  ['a tab', 'parts:\n\t- { part: drum }', 'A202', '\t', 'spaces'],
  ['no space after the hyphen', 'parts:\n  -{ part: drum, did: inspected }', 'A201', '-{', 'space after'],
  ['none before a field', 'parts:\n  -part: drum\n   did: inspected', 'A201', '-p', 'space after'],
  ['a long hyphen', 'parts:\n  – { part: drum, did: inspected }', 'A201', '–', 'plain hyphen'],
  ['an asterisk', 'parts:\n  * { part: drum, did: inspected }', 'A201', '*', 'plain hyphen'],
  ['a space that is none', 'parts:\n\u00a0\u00a0- { part: drum, did: inspected }', 'A201', '\u00a0\u00a0', 'spaces'],
  [
    'a colon in printed quotation marks',
    'private: “Parts: off” it says',
    'A208',
    '“Parts: off” it says',
    '`private: "“Parts: off” it says"`',
  ],
  ['a value that begins with a hash', 'private: #5 drill', 'A208', '#5 drill', '`private: "#5 drill"`'],
  ['an alias of nothing', 'private: * x', 'A208', '* x', '`private: "* x"`'],
  ['three dots', 'private: x\n...', 'A201', '...', 'Take them out'],
  ['a backslash', 'private: "C:\\photos"', 'A208', '\\', 'twice'],
];

describe('a slip is told once, with what to type, and hides nothing before or after it', () => {
  test.each(SLIPS)('%s', (_, slip, code, shown, hint) => {
    const said = saidOf(slip);
    expect(said.codes).toEqual(['A402', code, 'A610', 'A903']);
    expect(said.shown).toBe(shown);
    expect(said.hint).toContain(hint);
  });
});

/** The parser refuses it wherever it stands, and a person must say what was meant. */
const LEFT_TO_THE_WRITER = ['a backslash'];

test.each(SLIPS.filter(([what]) => !LEFT_TO_THE_WRITER.includes(what)))('what was meant by %s is sound when it is written', (_, slip) => {
  const names = { all: fieldNames(sessionSchema), prose: fieldNames(sessionSchema, ({ prose }) => prose === true) };
  const { text } = mend(slip, names).text;
  expect(mend(text, names)).toMatchObject({ slips: [], complaints: [] });
});

test('what is wrong in the entry with the slip is told as well', () => {
  expect(saidOf('parts:\n  - { part: none, note: Scored, condition fair, did: inspected').codes).toEqual([
    'A402',
    'A201',
    'A401',
    'A208',
    'A610',
    'A903',
  ]);
});

test('hyphens without a space are told, each', () => {
  expect(saidOf('cautions:\n  -asbestos\n  -battery').codes).toEqual(['A402', 'A201', 'A201', 'A610', 'A903']);
});

test('a line that is past mending is left out, and costs no other', () => {
  const codes = saidOf('parts:\n  - { part: drum, did:][inspected],}[ note: { }\n  - { part: none }').codes;
  expect(codes.filter((code) => !/^A2/.test(code))).toEqual(['A402', 'A401', 'A610', 'A903']);
  expect(codes.length).toBeLessThan(10);
});

describe('beside text in blocks', () => {
  test.each([
    ['a block that is sound', 'private: |\n  One: two\n  - x, {y\n  "z"', ['A402', 'A610', 'A903']],
    [
      'a slip below one',
      "private: >-\n  He said: so, it's\n  - done\nmethods:\n  - { on: drum, how: a, with: b, c }",
      ['A402', 'A208', 'A610', 'A903'],
    ],
    [
      'a quotation mark in one and one left open after it',
      'methods:\n  - on: drum\n    how: |\n      He said: "no\n    note: "open',
      ['A402', 'A201', 'A610', 'A903'],
    ],
    [
      'slips in three entries',
      'parts:\n  - { part: drum, note: a, to shelf B2 }\n  - { part:drum }\n  - { part: drum',
      ['A402', 'A208', 'A208', 'A201', 'A610', 'A903'],
    ],
  ])('%s', (_, slip, codes) => {
    expect(saidOf(slip).codes).toEqual(codes);
  });
});

describe('the lines around the fields', () => {
  const fields = 'date: 2031-03-12\ntitle: Brakes\nhours:\n  - { by: nobody, on: brakes, time: 1h }\n';
  const placed = (text: string) =>
    compileFiles({ more: { [NOTE]: text } }).diagnostics.map(({ place, code, hint }) =>
      `${place.line}:${place.column} ${code} ${hint ?? ''}`.slice(0, 30),
    );

  test.each([
    ['a blank line first', `\n---\n${fields}---\n`, ['1:1 A205 Take out what stands']],
    ['four hyphens', `----\n${fields}---\n`, ['1:1 A205 Write three plain hy']],
    ['four hyphens below', `---\n${fields}----\nProse\n`, ['6:1 A206 Write three plain hy']],
    ['a dash below', `---\n${fields}—\nProse\n`, ['6:1 A206 Write three plain hy']],
    ['none below', `---\n${fields}\nProse [x](part:drum).\n`, ['1:1 A206 Put a line `---` un']],
    ['old line ends', `---\n${fields}---\n`.replaceAll('\n', '\r'), []],
  ])('%s', (_, text, told) => {
    const rest = placed(text).filter((each) => !each.includes('A402'));
    expect(rest.map((each, n) => each.slice(0, told[n]?.length))).toEqual(told);
    expect(placed(text).filter((each) => each.includes('A402'))).toHaveLength(1);
  });

  test('a note in UTF-16', () => {
    const bytes = Uint8Array.from(Buffer.from(`\uFEFF---\n${fields}---\n`, 'utf16le'));
    const [found, ...more] = compileFiles({ more: { [NOTE]: bytes } }).diagnostics;
    expect([found?.code, found?.message, more]).toEqual(['A102', 'This file is in UTF-16, not in UTF-8.', []]);
  });
});
