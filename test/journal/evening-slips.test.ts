/** What people type of an evening in the way they write it elsewhere: each is told at its place, with what to type. */
import { describe, expect, test } from 'vitest';
import { datesMeant } from '../../src/journal/values/date-meant.ts';
import { timeMeant } from '../../src/journal/values/time-meant.ts';
import { compileFiles, NOTE, note, PARTS } from './base.ts';

const LEAVES = `${PARTS}- { id: leaves, name: Spring leaves, origin: original, count: 4, numbered: I to IIII }\n`;
const toldOf = (text: string) =>
  compileFiles({ parts: LEAVES, more: { [NOTE]: text.startsWith('---') ? text : note(text) } }).diagnostics.map(
    ({ code, hint }) => `${code} ${hint}`,
  );

const HOURS = (time: string) => `hours:\n  - { by: rh, on: brakes, time: ${time} }`;
const COST = (cost: string) => `bought:\n  - { what: Pin, cost: ${cost} }`;
const DATED = (date: string) => `---\ndate: ${date}\ntitle: x\n---\n`;

describe('is told with what to type', () => {
  test.each([
    ['hours: [{ by:rh, on: brakes, time: 1h }]', 'A208 Write `by: rh`'],
    ['hours:\n\t- { by: rh, on: brakes, time: 1h }', 'A202 Indent with spaces'],
    ['parts:\n  - { part: drum, did: removed, inspected, to: shelf A1 }', 'A208 Several stand in brackets: `did: [removed, inspected]`'],
    ['parts:\n  - part: drum\n    did: removed, inspected', 'A304 Several stand in brackets: `[removed, inspected]`'],
    ['parts:\n  - { part: studs, did: removed, stack: nut, washer }', 'A208 Several stand in brackets: `stack: [nut, washer]`'],
    ['bags:\n  - { bag: 14, holds: 2 bolts, 2 washers }', 'A208 Several stand in brackets: `holds: [2 bolts, 2 washers]`'],
    ['cautions: asbestos, battery', 'A304 Several stand in brackets: `[asbestos, battery]`'],
    ['emptied: 11, 12', 'A310 Several stand in brackets: `[11, 12]`'],
    ['parts:\n  - drum', 'A303 Write `{ part: drum }`'],
    ['parts: drum', 'A303 Write each entry under `parts:` on a line of its own: `- { part: drum }`'],
    ['parts:\n  - { part: drum, did: [removed, inspected, to: shelf A1 }', 'A201 Close every'],
    [
      'parts:\n  - { part: drum, did: removed, note: Soft, spokes: tight, condition: 2 }',
      'A301 If it belongs to the text before it, put all of that in quotation marks: `note: "Soft, spokes: tight"`.',
    ],
    ['parts:\n  - { part: drum, did: removed, note: "half }', 'A201 Close it on the same line: `note: "half"`'],
    ['parts:\n  - part: drum\n    did: cleaned\n   note: x', 'A201 Begin it with 4 spaces'],
    ['parts\n  - { part: drum, did: cleaned }', 'A201 Write `parts:`'],
    ['decisions:\n  - { part: drum, verdict: keep; because: sound }', 'A208 Write a comma before `because:`'],
    ['measured: [{ part: drum, what: volts, value: 0.4, limits: 1.9..2.2 V }]', 'A309 Write `value: 0.4 V`.'],
    ['measured: [{ part: drum, what: volts, value: 0.4 V, limits: 1.9..2.2 }]', 'A309 Write it once, after both: `1.9..2.2 V`.'],
    [HOURS('7pm-9pm'), 'A306 Write `19:00-21:00`'],
    [HOURS('7:30 to 9:30pm'), 'A306 Write `19:30-21:30`'],
    [HOURS('1910-2140'), 'A306 Write `19:10-21:40`'],
    [HOURS('2h30'), 'A306 Write `2h30m`'],
    [HOURS('2:30'), 'A306 Write `2h30m`'],
    [HOURS('2.5'), 'A306 Write `2h30m`'],
    [HOURS('2,5 h'), 'A306 Write `2h30m`'],
    [HOURS('2 hours'), 'A306 Write `2h`'],
    [HOURS('all evening'), 'A306 Write a clock range'],
    [COST('£48.60'), 'A307 Write 48.60, without a sign'],
    [COST('1,234.50'), 'A208 A number is written without commas: `1234.50`'],
    [COST('1.234,50'), 'A208 A number is written without marks between its thousands, and with a point: `1234.50`'],
    [COST('48.60 incl VAT'), 'A307 Write 48.60 and say the tax beside it'],
    [COST('5.00, tax: 20'), 'A316 Write 20%'],
    ['used:\n  - { consumable: brake-cleaner, amount: half a litre }', 'A308 Write it like `300 ml`'],
    ['measured:\n  - { part: drum, what: x, value: 9 in, limits: 9.0-9.06 in }', 'A308 Write `9.0..9.06 in`'],
    ['measured:\n  - { part: drum, what: x, value: 2.55 in, limits: 2.6-2.5 in }', 'A308 Write `2.5..2.6 in`'],
    ['used:\n  - { consumable: brake-cleaner, amount: 300 }', 'A309 Write its unit: `300 ml`, or `300 L` if it is that much.'],
    ['used:\n  - { consumable: brake-cleaner, amount: 2 }', 'A309 Write its unit: `2 L`.'],
    ['used:\n  - { consumable: brake-cleaner, amount: 4 pins }', 'A308 Did you mean `tins`? What is counted in pieces has no unit: `4`.'],
    ['bought:\n  - { what: Pin, on: brakes, cost: 4.00 }', 'A301 Did you mean `for`?'],
    ['bought:\n  - { what: Pin, part: drum, cost: 4.00 }', 'A301 Did you mean `for`?'],
    ['used:\n  - { consumable: brake-cleaner, amount: 1 L, for: brakes }', 'A301 Did you mean `on`?'],
    ['parts:\n  - { part: studs, did: removed, count: yes }', 'A310 Leave it out where all are meant, else write how many'],
    ['parts:\n  - { part: leaves, did: removed, which: 1-3 }', 'A310 Write each of them: `[1, 2, 3]`.'],
    ['parts:\n  - { part: leaves, did: removed, which: III }', 'A310 Write `3`'],
    ['parts:\n  - { part: leaves, did: removed, which: the bent one }', 'A310 Write its number, from 1'],
    ['closes:\n  - { id: two-bolts }\nopens: [{ id: two-bolts-short, kind: task, what: x }]', 'A610 Did you mean `two-bolts-short`?'],
    ['parts:\n  - { part: spla, did: inspected }', 'A401 Did you mean `splash-plate`?'],
    ['parts:\n  - { part: spl, did: inspected }', 'A401 Did you mean `splash-plate`?'],
    [
      'parts:\n  - { part: drum, did: removed, to: sorrel platers }\nopens: [{ id: x, kind: waiting, what: x, from: Sorrel Platers }]',
      'A406 `Sorrel Platers` is a firm in these notes: say `did: [removed, sent-out]`.',
    ],
    [DATED('12/03/2031'), 'A305 Write 2031-03-12 if the day stands first, 2031-12-03 if the month does.'],
    [DATED('31.3.2031'), 'A305 Did you mean 2031-03-31?'],
    [DATED('12 March 2031'), 'A305 Did you mean 2031-03-12?'],
    [DATED('Wednesday, March 12th, 2031'), 'A305 Did you mean 2031-03-12?'],
    [DATED('2031-3-12'), 'A305 Did you mean 2031-03-12?'],
    [DATED('yesterday'), 'A305 Year first'],
  ])('%j', (text, says) => {
    const [told, ...more] = toldOf(text);
    expect([told?.slice(0, says.length), more]).toEqual([says, []]);
  });

  test.each(['fitted', 'cleaned'])('a scrapped part that is said to be %s, with how to say that it is another one', (did) => {
    const [told] = toldOf(`parts:\n  - { part: drum-donor, did: gone, how: scrapped }\n  - { part: drum-donor, did: ${did} }`);
    expect(told).toMatch(/^A505 .*another one of its kind is a part of its own, with `for`/);
  });

  test('a day without a note, with the day nearest to it in the calendar', () => {
    const days = ['2031-03-09', '2031-04-11', '2031-03-21'];
    const more = Object.fromEntries(days.map((day) => [`sessions/${day}.md`, 'The drum.']));
    const { diagnostics } = compileFiles({
      more: { ...more, [NOTE]: note('', 'As [then](session:2031-03-11), [then](session:2031-04-10).') },
    });
    expect(diagnostics.map(({ hint }) => hint)).toEqual(['Did you mean `2031-03-12-brakes`?', 'Did you mean `2031-04-11`?']);
    const early = compileFiles({ more: { ...more, 'sessions/2031-03-10.md': 'As [on](session:2031-03-08) that day.' } });
    expect(early.diagnostics.map(({ hint }) => hint)).toEqual(['Did you mean `2031-03-09`?']);
  });

  test('an amount with a sign and marks between its thousands, of which each is told in its turn', () => {
    expect(toldOf(COST('£1,234.50'))).toEqual([expect.stringContaining('`1234.50`')]);
    expect(toldOf(COST('"£1,234.50"'))).toEqual([expect.stringContaining('Write 1234.50')]);
  });
});

test.each([
  'parts:\n  - { part: drum, did: cleaned, note: “Nice, clean” }',
  "parts:\n  - { part: drum, did: cleaned, note: it is Ruth's }",
  'parts:\n- { part: drum, did: cleaned }',
  'parts:\n  part: drum\n  did: cleaned',
  HOURS('19.10-21.40'),
  'reached: stripped',
  'opens: [{ id: soak, kind: task, what: Soak the hub }]\ncloses: soak',
  'opens: [{ id: soak, kind: task, what: Soak the hub }, { id: oil, kind: task, what: Oil it }]\ncloses: [soak, { id: oil, how: Twice }]',
  HOURS('19:10 – 21:40'),
  COST('4,20'),
  'used:\n  - { consumable: brake-cleaner, amount: "0,3 L" }',
])('is read as meant: %j', (text) => {
  expect(toldOf(text)).toEqual([]);
});

test('nothing is offered for what may be anything', () => {
  expect(['two', '7pm', '25:70', '9:75', '13pm-2pm', '0', '7-7'].map(timeMeant)).toEqual(Array(7).fill(null));
  expect(['Tuesday', '99/99/2031', '2031', '12 Foo 2031', '1/2'].flatMap(datesMeant)).toEqual([]);
});

test.each([
  ['1', 'A308', 'Write `unit: each` for what is counted in pieces.'],
  ['books', 'A308', 'What is counted in pieces has `unit: each`.'],
])('the unit of a consumable written as %s is told with the word for pieces', (unit, code, says) => {
  const { diagnostics } = compileFiles({ consumables: `leaf: { name: Leaf, unit: ${unit} }\n` });
  expect(diagnostics.map((each) => [each.code, each.hint?.endsWith(says)])).toEqual([[code, true]]);
});

test('a consumable without a unit is told which there are, pieces too', () => {
  const { diagnostics } = compileFiles({ consumables: 'leaf: { name: Leaf }\n' });
  expect(diagnostics.map(({ hint }) => hint)).toEqual(['Add `unit: …`, as ml, L, g, mm, or each for what is counted in pieces.']);
});
