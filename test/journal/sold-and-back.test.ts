/** What was sold may come back, and be sold again: each sale is held against what had come back by then. */
import { expect, test } from 'vitest';
import { compileFiles } from './base.ts';

const evening = (date: string, fields: string): [string, string] => [
  `sessions/${date}.md`,
  `---\ndate: ${date}\ntitle: An evening\n${fields}\n---\n`,
];

const SOLD = 'sold: [{ part: drum-donor, price: 5.00 }]';
const WENT = 'parts: [{ part: drum-donor, did: gone, how: sold }]';
const BACK = 'parts: [{ part: drum-donor, did: acquired, from: a collector, to: shelf A1 }]';
const STUDS_WENT = 'parts: [{ part: studs, did: [removed, gone], how: sold, count: 3 }]\nsold: [{ part: studs, count: 3, price: 5.00 }]';
const STUDS_BACK = 'parts: [{ part: studs, did: acquired, from: a collector, count: 3 }, { part: studs, did: fitted, count: 3 }]';

const codes = (...evenings: readonly [string, string][]): string[] =>
  compileFiles({ more: Object.fromEntries(evenings) }).diagnostics.map(({ code }) => code);

test('a part that was sold and came back is not told to be there still', () => {
  expect(codes(evening('2031-03-12', `${WENT}\n${SOLD}`), evening('2031-04-12', BACK))).toEqual([]);
});

test('it may be sold again', () => {
  expect(codes(evening('2031-03-12', `${WENT}\n${SOLD}`), evening('2031-04-12', BACK), evening('2031-05-12', `${WENT}\n${SOLD}`))).toEqual(
    [],
  );
});

test('a second sale without its going is told, and a third one in a row', () => {
  expect(codes(evening('2031-03-12', `${WENT}\n${SOLD}`), evening('2031-04-12', BACK), evening('2031-05-12', SOLD))).toEqual(['A816']);
  const again = evening('2031-05-12', `${WENT}\nsold: [{ part: drum-donor, price: 5.00 }, { part: drum-donor, price: 6.00 }]`);
  expect(codes(evening('2031-03-12', `${WENT}\n${SOLD}`), evening('2031-04-12', BACK), again)).toEqual(['A815']);
});

test('of a lot too, some of which stand on the vehicle again', () => {
  expect(codes(evening('2031-03-12', STUDS_WENT), evening('2031-04-12', STUDS_BACK), evening('2031-05-12', STUDS_WENT))).toEqual([]);
});
