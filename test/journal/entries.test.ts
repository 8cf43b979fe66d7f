import { expect, test } from 'vitest';
import { sourceText } from '../../src/journal/read/source/text.ts';
import { readYaml } from '../../src/journal/read/source/yaml.ts';
import { understand } from '../../src/journal/read/understand.ts';
import { decisive } from '../../src/journal/schema/facts.ts';
import { count, entries, fields, maybe, oneOf, text } from '../../src/journal/schema/fields.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';

const line = fields({ what: text, many: decisive(maybe(count)) });
const tray = fields({ id: text, many: decisive(maybe(count)), colour: maybe(oneOf(['red', 'green'])), lines: entries(line) });
const schema = fields({ 'laid-out': entries(tray) });

function treeFrom(yaml: string) {
  const source = sourceText('shed.yaml', yaml);
  const { tree } = readYaml(source, 0, yaml.length);
  if (tree === null) throw new Error('not YAML');
  return tree;
}

function read(yaml: string) {
  const { value, diagnostics } = understand(schema, treeFrom(yaml));
  return { laidOut: value?.laidOut ?? [], codes: diagnostics.map(({ code, place }) => `${code} ${place.line}`) };
}

test('a fault in a field that says what the entry means casts doubt on it; elsewhere it costs the field', () => {
  const { laidOut, codes } = read('laid-out:\n  - { id: a, many: few }\n  - { id: b, colour: blue }\n  - { id: c }\n');
  expect(codes).toEqual(['A310 2', 'A304 3']);
  expect(laidOut.map(({ says, doubtful }) => [says.id, doubtful, says.colour])).toEqual([
    ['a', true, null],
    ['b', false, null],
    ['c', false, null],
  ]);
});

test('what a doubtful entry lies in is in doubt with it, its neighbours are not', () => {
  const { laidOut } = read(
    'laid-out:\n  - id: a\n    lines: [{ what: nut, many: x }, { what: bolt }]\n  - id: b\n    lines: [{ what: pin }]\n',
  );
  expect(laidOut.map(({ doubtful }) => doubtful)).toEqual([true, false]);
  expect(laidOut[0]?.says.lines.map(({ says, doubtful }) => [says.what, doubtful])).toEqual([
    ['nut', true],
    ['bolt', false],
  ]);
});

test('an entry knows where it is written, and where each of its fields is', () => {
  const { laidOut } = read('laid-out:\n  - id: a\n    lines:\n      - { what: nut, many: 2 }\n');
  const [nut] = laidOut[0]?.says.lines ?? [];
  expect(nut?.place).toMatchObject({ line: 4, column: 9, endColumn: 31 });
  expect(nut?.placeOf('many')).toMatchObject({ line: 4, column: 28, endColumn: 29 });
});

test.each([
  ['alone', 'did: remvoed'],
  ['in a list', 'did: [cleaned, remvoed]'],
  ['said for another', 'did: [cleaned, unbolted]'],
])('a word that has a near one is believed as that: %s', (_, did) => {
  const note = `date: 2031-03-12\ntitle: x\nparts: [{ part: drum, ${did}, how: returnd }]`;
  const { value, diagnostics } = understand(sessionSchema, treeFrom(note));
  expect(diagnostics.map(({ code }) => code)).toEqual(['A304', 'A304']);
  expect(value?.parts).toMatchObject([{ doubtful: false, says: { did: expect.arrayContaining(['removed']), how: 'returned' } }]);
});
