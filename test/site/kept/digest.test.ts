/** Whether two answers are the same is told by their digests alone. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { digestOf } from '../../../src/site/kept/digest.ts';

const leaf = fc.oneof(fc.string(), fc.integer(), fc.boolean(), fc.constant(null), fc.constant(undefined), fc.bigInt());
const data = fc.letrec((tie) => ({
  value: fc.oneof(
    { maxDepth: 4 },
    leaf,
    fc.array(tie('value')),
    fc.dictionary(fc.string(), tie('value'), { noNullPrototype: true }),
    tie('map'),
    tie('set'),
  ),
  map: fc.array(fc.tuple(fc.string(), tie('value'))).map((pairs) => new Map(pairs)),
  set: fc.array(leaf).map((list) => new Set(list)),
})).value;

test('the same data has the same digest, whichever objects hold it', () => {
  fc.assert(fc.property(data, (value) => digestOf(structuredClone(value)) === digestOf(value)));
});

test('other data has another', () => {
  const same = (a: unknown, b: unknown): boolean => {
    try {
      expect(a).toStrictEqual(b);
      return true;
    } catch {
      return false;
    }
  };
  fc.assert(fc.property(data, data, (a, b) => same(a, b) || digestOf(a) !== digestOf(b)));
});

test.each([
  ['a text and a number', '1', 1],
  ['a list and a text like it', ['a', 'b'], 'a,b'],
  ['a list in a list', [['a'], 'b'], ['a', ['b']]],
  ['a map and an object', new Map([['a', 1]]), { a: 1 }],
  ['a set and a list', new Set([1]), [1]],
  ['nothing and what is not there', { a: null }, {}],
  ['another order', [1, 2], [2, 1]],
  ['a text that looks like two of them', ['a', 'b'], ['a,"1:b']],
  ['a name that looks like the end of another', { a: 1, b: 1 }, { 'a:1,1:b': 1 }],
  ['a long text and one that ends otherwise', 'x'.repeat(500), `${'x'.repeat(499)}y`],
])('%s are told apart', (_, a, b) => {
  expect(digestOf(a)).not.toBe(digestOf(b));
});

test('what is no data is refused', () => {
  expect(() => digestOf({ a: () => 1 })).toThrow(TypeError);
});
