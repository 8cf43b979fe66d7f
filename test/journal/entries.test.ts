import { expect, test } from 'vitest';
import { sourceText } from '../../src/journal/read/source/text.ts';
import { readYaml } from '../../src/journal/read/source/yaml.ts';
import { understand } from '../../src/journal/read/understand.ts';
import { decisive } from '../../src/journal/schema/facts.ts';
import { count, entries, fields, maybe, oneOf, text } from '../../src/journal/schema/fields.ts';

const line = fields({ what: text, many: decisive(maybe(count)) });
const tray = fields({ id: text, many: decisive(maybe(count)), colour: maybe(oneOf(['red', 'green'])), lines: entries(line) });
const schema = fields({ 'laid-out': entries(tray) });

function read(yaml: string) {
  const source = sourceText('shed.yaml', yaml);
  const { tree } = readYaml(source, 0, yaml.length);
  if (tree === null) throw new Error('not YAML');
  const { value, diagnostics } = understand(schema, tree);
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
