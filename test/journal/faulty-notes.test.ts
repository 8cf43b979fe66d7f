import { describe, expect, test } from 'vitest';
import { compileFiles, NOTE, note } from './base.ts';

/** What is said of one note, each as `line:column code`. */
function saidOf(text: string, path: string = NOTE): string[] {
  return compileFiles({ more: { [path]: text } }).diagnostics.map(({ place, code }) => `${place.line}:${place.column} ${code}`);
}

describe('a fault at the top of a note does not hide what is wrong below it', () => {
  const hours = 'hours:\n  - { by: nobody, on: brakes, time: 1h }';

  test('a second colon in the title', () => {
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes, parts: near side\n${hours}\n---\n`)).toEqual(['3:8 A208', '5:11 A402']);
  });

  test('second colons in several values', () => {
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Parts: near: side\nprivate: hours: off\n${hours}\n---\n`)).toEqual([
      '3:8 A208',
      '4:10 A208',
      '6:11 A402',
    ]);
  });

  test('a second colon in a value below the top', () => {
    const decisions = 'decisions:\n  - part: nothing\n    verdict: keep\n    because: Count: no play\n';
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes\n${decisions}---\n`)).toEqual(['5:11 A401', '7:14 A208']);
  });

  test('no title', () => {
    expect(saidOf(`---\ndate: 2031-03-12\n${hours}\n---\n`)).toEqual(['2:1 A302', '4:11 A402']);
  });

  test('a date that is not in the calendar, where the name of the note gives one', () => {
    expect(saidOf(`---\ndate: 2031-02-30\ntitle: Brakes\n${hours}\n---\n`)).toEqual(['2:7 A305', '5:11 A402']);
  });

  test('a date that is not in the calendar, of a note named for a day before the vehicle came', () => {
    const path = 'sessions/2030-02-28-brakes.md';
    expect(saidOf(`---\ndate: 2030-02-30\ntitle: Brakes\n${hours}\n---\n`, path)).toEqual(['2:7 A305', '5:11 A402']);
  });

  test('a date that is not in the calendar, where nothing gives one', () => {
    expect(saidOf(`---\ndate: 2031-02-30\ntitle: Brakes\n${hours}\n---\n`, 'sessions/brakes.md')).toEqual(['2:7 A305', '5:11 A402']);
  });
});

describe('a fault in one field of an entry does not hide what is wrong in the others', () => {
  test.each([
    ['an action', 'parts: [{ part: none, did: remvoed, condition: 9, at: nowhere }]', ['A401', 'A304', 'A304', 'A407']],
    ['one action of several', 'parts: [{ part: none, did: [removed, cleand] }]', ['A401', 'A304']],
    ['a verdict', 'decisions: [{ part: none, verdict: replce, with: nothing, because: x }]', ['A401', 'A304', 'A401']],
    ['a count', 'parts: [{ part: none, did: removed, count: two }]', ['A401', 'A310']],
    ['an amount', 'used: [{ consumable: none, amount: lots, on: nowhere }]', ['A405', 'A308', 'A408']],
    ['a part that is not named', 'decisions: [{ verdict: keep, with: none }]', ['A302', 'A401']],
    ['a kind', 'opens: [{ id: a, kind: tsk, what: x, before: never, on: nowhere, price: 1.2.3 }]', ['A304', 'A404', 'A408', 'A307']],
    ['a cost that is not given', 'bought: [{ what: x, for: none, paper: no.pdf, tax: 120% }]', ['A302', 'A408', 'A902', 'A314']],
    ['a stock-take without its reason', 'counted: [{ consumable: brake-cleaner, amount: 3 kg }]', ['A302', 'A309']],
    ['a kind of paper', 'papers: [{ paper: no.pdf, kind: recept, shows: [none] }]', ['A902', 'A304', 'A401']],
    ['a picture that is not there', 'pictures: [{ file: no.jpg, shows: [none] }]', ['A901', 'A401']],
    ['a mark of a clip', 'film: [{ clip: "https://x.example/", shows: { 18.05: none } }]', ['A401', 'A906']],
    ['a part in what was sold', 'sold: [{ part: none, price: 5.005, tax: 200% }]', ['A401', 'A307', 'A314']],
    ['a part in what was measured', 'measured: [{ part: none, what: x, value: 9 in, limits: 9..10 kg }]', ['A401', 'A309']],
    ['what its limits could not be read by', 'measured: [{ part: drum, what: x, value: nine, limits: 9..10 in }]', ['A308']],
    ['the lines of a bill', 'bills: [{ total: 3.00, paper: no.pdf, lines: Pin }]', ['A902', 'A303']],
  ])('%s', (_, fields, codes) => {
    const said = saidOf(`---\ndate: 2031-03-12\ntitle: Brakes\n${fields}\n---\n`);
    expect(said.map((each) => each.split(' ')[1]).sort()).toEqual([...codes].sort());
  });
});

describe('a name of a field that is misspelt is told once, and its value is read', () => {
  test.each([
    ['at the top', 'hourz: [{ by: nobody, on: brakes, time: 1h }]', ['4:1 A301', '4:15 A402']],
    ['one letter for another', 'part: [{ part: none, did: cleaned }]', ['4:1 A301', '4:16 A401']],
    ['in an entry', 'parts: [{ prat: none, did: cleaned }]', ['4:11 A301', '4:17 A401']],
  ])('%s', (_, fields, said) => {
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes\n${fields}\n---\n`)).toEqual(said);
  });

  test('the date and the title', () => {
    expect(saidOf('---\ndote: 2031-03-12\nTitel: Brakes\nhours: [{ by: nobody, on: brakes, time: 1h }]\n---\n')).toEqual([
      '2:1 A301',
      '3:1 A301',
      '4:15 A402',
    ]);
  });
});

test('a field that was taken out for its fault is not called missing as well', () => {
  expect(saidOf('---\ndate: 2031-03-12\ntitle: { a: b }\n---\n')).toEqual(['3:8 A303']);
});

describe('a link in the prose that leads to nothing is told, with what to write', () => {
  const prose = (text: string) =>
    compileFiles({ more: { [NOTE]: note('', text) }, assets: ['sessions/2031-03-12-brakes/bill.pdf'] }).diagnostics;

  test.each([
    ['a kind that is none', 'See [it](parts:drum).', 'Did you mean `part`?'],
    ['a capital letter', 'See [it](Part:drum).', 'Did you mean `part`?'],
    ['a space after the colon', 'See [it](part: drum).', 'Write `part:drum`.'],
    ['a space for a hyphen', 'See [it](part:splash plate).', 'Write `part:splash-plate`.'],
    ['a space within a name', 'See [it](part:dr um).', 'Write `part:drum`.'],
    ['a space in what is nothing', 'See [it](part:splash plat).', 'Did you mean `splash-plate`?'],
    [
      'a space in what is nothing that is near',
      'See [it](part:roof lining).',
      'A new one goes into a file of `parts/`: `- { id: roof-lining,',
    ],
    ['a space for the hyphen of a consumable', 'See [it](consumable:brake cleaner).', 'Write `consumable:brake-cleaner`.'],
    ['a space after the colon of a bag', 'See [it](bag: 014).', 'Write `bag:14`.'],
    ['a space after the colon of a session', 'See [it](session: 2031-03-12).', 'Write `session:2031-03-12`.'],
    ['a space for the hyphen of a session', 'See [it](session:2031-03-12 brakes).', 'Write `session:2031-03-12-brakes`.'],
    ['an id alone', 'See [it](drum).', 'Write `part:drum`.'],
    ['a file that is not there', 'See [it](bil.pdf).', 'Did you mean `bill.pdf`?'],
    ['an address without its beginning', 'See [it](www.example.org).', 'Write `https://www.example.org`.'],
    ['nothing', 'See [it]().', 'A link names `part:`'],
    ['a drive', '![It](C:photos/drum.jpg)', 'Copy the file'],
  ])('%s', (_, text, hint) => {
    const [found, ...more] = prose(text);
    expect([found?.place.line, found?.code, more]).toEqual([6, hint.startsWith('Copy') ? 'A105' : 'A903', []]);
    expect(found?.hint).toContain(hint);
  });

  test('a space for the hyphen of an item', () => {
    const opens = 'opens: [{ id: bleed-front, kind: task, what: Bleed it }]';
    expect(compileFiles({ more: { [NOTE]: note(opens, 'See [it](item:bleed front).') } }).diagnostics.map(({ hint }) => hint)).toEqual([
      'Write `item:bleed-front`.',
    ]);
  });

  test.each([
    'As said[^1].\n\n[^1]: Later',
    '[a](bill.pdf)',
    '[a](https://example.org)',
    '[a](mailto:a@example.org)',
    '[a](#top)',
    '`[a](part: x)`',
    '[a](index.md)',
  ])('but not %s', (text) => {
    expect(prose(text)).toEqual([]);
  });
});

describe('what was meant is said', () => {
  const hintOf = (fields: string) => {
    const found = compileFiles({ more: { [NOTE]: note(fields) } }).diagnostics;
    return found.map(({ code, message, hint }) => `${code} ${message} ${hint}`);
  };

  test.each([
    ['an amount without its unit', 'used: [{ consumable: brake-cleaner, amount: 0.3, on: drum }]', /^A309 ‘0\.3’ has no unit; .*`0\.3 L`/],
    [
      'a value without the unit of its limits',
      'measured: [{ part: drum, what: x, value: 9, limits: 9..10 in }]',
      /^A309 ‘9’ has no unit, and its limits have ‘in’.*`value: 9 in`/,
    ],
    ['a bag with a letter', 'parts: [{ part: drum, did: removed, to: bag A14 }]', /^A310 `bag A14` is no bag.*`bag 14`/],
    ['a bag with a capital', 'parts: [{ part: drum, did: removed, to: Bag 7 }]', /^A310 `Bag 7` is no bag.*`bag 7`/],
    ['a bag emptied by its name', 'emptied: bag 1', /^A310 .*only its number: `1`/],
    ['a part that is gone, and nobody says how', 'parts: [{ part: drum-donor, did: gone }]', /^A510 .*does not say how/],
    ['lines that are no list', 'bills: [{ lines: Pin }]', /^A303 A list was expected .*`Pin` stands here/],
    ['a split that is a list', 'bought: [{ what: x, cost: 1, split: [brakes] }]', /^A303 Fields were expected .*a list stands here/],
  ])('%s', (_, fields, says) => {
    const said = hintOf(fields);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(says);
  });
});
