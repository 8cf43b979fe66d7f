/** What can be meant in one way only is read so: the note as somebody wrote it, and as the format has it, give the same. */
import { describe, expect, test } from 'vitest';
import * as SAID from '../../src/journal/schema/said-for.ts';
import { ACTIONS, HAZARDS, ITEM_KINDS, ORIGINS, VERDICTS } from '../../src/journal/schema/words.ts';
import { compileFiles, JOURNAL, NOTE, note, PARTS } from './base.ts';

const ALONE = JOURNAL.replace(/ {2}jm: .*\n/, '');

/** What a note comes to, without the places where things are written. */
function readAs(text: string, path = NOTE): unknown {
  const { record, diagnostics } = compileFiles({ journal: ALONE, more: { [path]: text } });
  expect(diagnostics.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
  const [session] = record?.journal.sessions ?? [];
  expect(session).toBeDefined();
  return JSON.parse(
    JSON.stringify(session, (key, value) =>
      /^place$|Place$|^text$|^limitsText$|^bodyLine$/.test(key) ? undefined : typeof value === 'bigint' ? String(value) : value,
    ),
  );
}

const MEANT: readonly [what: string, written: string, meant: string][] = [
  ['a name of a field with a capital', 'Hours:\n  - { By: rh, on: brakes, time: 1h }', 'hours:\n  - { by: rh, on: brakes, time: 1h }'],
  ['a name of two words', 'bags: [{ bag: 1, holds: pins, Goes_back: as it was }]', 'bags: [{ bag: 1, holds: pins, goes-back: as it was }]'],
  ['hours alone', 'hours: 2h', 'hours: [{ by: rh, time: 2h }]'],
  ['hours by the clock alone', 'hours: 19:10-21:40', 'hours: [{ by: rh, time: 19:10-21:40 }]'],
  ['a clock with full stops', 'hours: 19.10–21.40', 'hours: [{ by: rh, time: 19:10-21:40 }]'],
  ['several hours alone', 'hours: [2h, 30m]', 'hours: [{ by: rh, time: 2h }, { by: rh, time: 30m }]'],
  ['hours without a person', 'hours: [{ on: brakes, time: 2h }]', 'hours: [{ by: rh, on: brakes, time: 2h }]'],
  [
    'what was used without on what',
    'used: [{ consumable: brake-cleaner, amount: 0.3 L }]',
    'used: [{ consumable: brake-cleaner, amount: 0.3 L, on: general }]',
  ],
  ['one entry in no list', 'parts: { part: drum, did: inspected }', 'parts: [{ part: drum, did: inspected }]'],
  ['one entry in lines', 'parts:\n  part: drum\n  did: inspected', 'parts: [{ part: drum, did: inspected }]'],
  [
    'one line of a bill',
    'bills: [{ total: 3.00, lines: { what: Pin, cost: 3.00 } }]',
    'bills: [{ total: 3.00, lines: [{ what: Pin, cost: 3.00 }] }]',
  ],
  [
    'one entry about several parts',
    'parts:\n  - { part: [drum, studs], did: cleaned, note: Solvent. }',
    'parts:\n  - { did: cleaned, note: Solvent., part: drum }\n  - { did: cleaned, note: Solvent., part: studs }',
  ],
  [
    'one decision about several',
    'decisions: { part: [drum, studs], verdict: keep, because: Sound. }',
    'decisions:\n  - { part: drum, verdict: keep, because: Sound. }\n  - { part: studs, verdict: keep, because: Sound. }',
  ],
  ['printed quotation marks', 'private: “Ask about the rear”', 'private: Ask about the rear'],
  [
    'printed quotation marks around ids',
    'parts: [{ part: “drum”, did: [‘inspected’, „cleaned“] }]',
    'parts: [{ part: drum, did: [inspected, cleaned] }]',
  ],
  ['printed marks within a text', 'private: Said “rear” twice', 'private: "Said “rear” twice"'],
  [
    'a comma in what is said',
    'parts: [{ part: drum, did: inspected, note: Scored, but sound }]',
    'parts: [{ part: drum, did: inspected, note: "Scored, but sound" }]',
  ],
  [
    'several commas',
    'decisions: [{ part: drum, verdict: keep, because: Sound, round, and ours. }]',
    'decisions: [{ part: drum, verdict: keep, because: "Sound, round, and ours." }]',
  ],
  [
    'a comma and then a colon inside braces',
    'parts: [{ part: drum, did: inspected, note: Two felloes soft, spokes tight: tyre 1/2 in. out of true, condition: 2 }]',
    'parts: [{ part: drum, did: inspected, note: "Two felloes soft, spokes tight: tyre 1/2 in. out of true", condition: 2 }]',
  ],
  [
    'commas and colons several times',
    'parts: [{ part: drum, note: Soft, one more: split, to be sure: both, did: inspected }]',
    'parts: [{ part: drum, note: "Soft, one more: split, to be sure: both", did: inspected }]',
  ],
  [
    'a comma and a colon over two lines',
    'parts:\n  - { part: drum, did: inspected, note: Soft,\n      the rest: sound }',
    'parts: [{ part: drum, did: inspected, note: "Soft, the rest: sound" }]',
  ],
  [
    'a comma before a word that is a field of other entries',
    'decisions: [{ part: drum, verdict: keep, because: Honest repair, holds }]',
    'decisions: [{ part: drum, verdict: keep, because: "Honest repair, holds" }]',
  ],
  [
    'a comma before a field that the entry has already',
    'parts: [{ part: drum, note: Scored, part sound, did: inspected }]',
    'parts: [{ part: drum, note: "Scored, part sound", did: inspected }]',
  ],
  [
    'a comma before a little word',
    'decisions: [{ part: drum, verdict: keep, because: Sound, with marks, on the outside, as it should be }]',
    'decisions: [{ part: drum, verdict: keep, because: "Sound, with marks, on the outside, as it should be" }]',
  ],
  ['a colon within printed marks', 'private: “Rear: off”', 'private: "Rear: off"'],
  ['a second colon', 'private: Rear: off', 'private: "Rear: off"'],
  ['colons in what is said', 'private: Rear: off, near: on', 'private: "Rear: off, near: on"'],
  [
    'a colon inside braces',
    'parts: [{ part: drum, did: inspected, note: Heavy: needs two, at least. }]',
    'parts: [{ part: drum, did: inspected, note: "Heavy: needs two, at least." }]',
  ],
  ['a decimal comma', 'bought:\n  - what: Pin\n    cost: 12,50', 'bought:\n  - what: Pin\n    cost: 12.50'],
  ['a decimal comma inside braces', 'bought: [{ what: Pin, cost: 4,20, tax: 20% }]', 'bought: [{ what: Pin, cost: 4.20, tax: 20% }]'],
  [
    'a decimal comma in an amount of another currency',
    'bought: [{ what: Pin, cost: 4,20 EUR at 0.8571 }]',
    'bought: [{ what: Pin, cost: 4.20 EUR at 0.8571 }]',
  ],
  [
    'a fraction and a minus of print',
    'measured: [{ part: drum, what: run-out, value: 1½ mm, limits: −1..2 mm }]',
    'measured: [{ part: drum, what: run-out, value: 1 1/2 mm, limits: -1..2 mm }]',
  ],
];

describe('what can be meant in one way only is read so', () => {
  test.each(MEANT)('%s', (_, written, meant) => {
    expect(readAs(note(written))).toEqual(readAs(note(meant)));
  });

  test('the date and the title with capitals', () => {
    expect(readAs('---\nDate: 2031-03-12\nTITLE: Front brakes\n---\n')).toEqual(readAs(note('')));
  });
});

describe('what can be meant in two ways is not', () => {
  const codesOf = (fields: string) => compileFiles({ more: { [NOTE]: note(fields) } }).diagnostics.map(({ code }) => code);

  test.each([
    ['hours of one of two people', 'hours: 2h', ['A302']],
    ['a field given twice, once with a capital', 'private: a\nPrivate: b', ['A301']],
    ['hours on several parts', 'hours: [{ by: rh, on: [drum, studs], time: 2h }]', ['A303']],
    ['a name alone for an entry', 'parts: drum', ['A303']],
    ['a comma before three digits', 'bought:\n  - what: Pin\n    cost: 1,234', ['A307']],
    ['a comma before what may be a field', 'decisions: [{ part: drum, verdict: replace, because: Worn, with drum-donor }]', ['A208']],
    ['a comma before a field with a number', 'parts: [{ part: drum, did: removed, note: Worn, to shelf B2 }]', ['A208']],
    ['a comma and a word that is no field', 'parts: [{ part: drum, did: inspected, note: Soft, spokes: tight }]', ['A301']],
    ['a comma and a field mistyped', 'parts: [{ part: drum, did: inspected, note: Soft, goes bak: up }]', ['A301']],
    ['a text in quotation marks and a field that is none', 'parts: [{ part: drum, note: "Soft", the rest: sound }]', ['A301']],
    ['a field that is none after one that is no prose', 'parts: [{ part: drum, did: inspected, the rest: sound }]', ['A301']],
    ['a colon after what may be a field', 'private: hours: 2h', ['A208']],
    ['two whole numbers', 'parts: [{ part: studs, did: cleaned, which: 2,4 }]', ['A310']],
    ['a comma in what is no prose', 'parts: [{ part: drum, studs, did: cleaned }]', ['A208']],
  ])('%s', (_, fields, codes) => {
    expect(codesOf(fields)).toEqual(codes);
  });

  test('and its place is still that of what is written', () => {
    const { diagnostics } = compileFiles({ more: { [NOTE]: note('parts: { part: [drum, none], did: cleaned }\nhours: 2 h 3 x') } });
    expect(diagnostics.map(({ code, place }) => `${code} ${place.line}:${place.column}`)).toEqual(['A401 4:23', 'A302 5:8', 'A306 5:8']);
  });
});

describe('a file named for its day that holds prose alone is a note', () => {
  const notes = (path: string, text: string) => {
    const { record, diagnostics } = compileFiles({ more: { [path]: text } });
    expect(diagnostics.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
    return record?.journal.sessions.map(({ id, date, title, body }) => ({ id, date, title, body: body.trim() }));
  };

  test.each([
    ['a heading first', 'sessions/2031-03-12.md', '# The *drum* comes off\n\nTwo pulls.\n', 'The drum comes off', 'Two pulls.'],
    ['an underlined heading', 'sessions/2031-03-12-brakes.md', 'The drum\n========\n\nTwo pulls.\n', 'The drum', 'Two pulls.'],
    [
      'a heading later',
      'sessions/2031-03-12-brakes/index.md',
      'Cold.\n\n## Drum off\n\nTwo pulls.',
      'Drum off',
      'Cold.\n\n## Drum off\n\nTwo pulls.',
    ],
    [
      'no heading',
      'sessions/2031-03-12.md',
      '\nThe [drum](part:drum) came off. It took two pulls.\n',
      'The drum came off',
      'The [drum](part:drum) came off. It took two pulls.',
    ],
    [
      'a long sentence',
      'sessions/2031-03-12.md',
      'Tonight the front drum came off with two pulls and a good deal of heat and then some more of both.\n',
      'Tonight the front drum came off with two pulls and a good…',
      'Tonight the front drum came off with two pulls and a good deal of heat and then some more of both.',
    ],
    ['a list', 'sessions/2031-03-12.md', '- drum off\n- studs out\n', 'drum off', '- drum off\n- studs out'],
    [
      'a word and a colon',
      'sessions/2031-03-12.md',
      'Cold: no work on the drum.\n',
      'Cold: no work on the drum',
      'Cold: no work on the drum.',
    ],
    ['no words at all', 'sessions/2031-03-12-brake-drum.md', '***\n', 'Brake drum', '***'],
  ])('%s', (_, path, text, title, body) => {
    expect(notes(path, text)).toEqual([{ id: path.replace(/^sessions\/|(?:\/index)?\.md$/g, ''), date: '2031-03-12', title, body }]);
  });

  test('and its links are found where they stand', () => {
    const { diagnostics } = compileFiles({ more: { 'sessions/2031-03-12.md': '# Drum\n\nSee [it](part:none).\n' } });
    expect(diagnostics.map(({ code, place }) => `${code} ${place.line}:${place.column}`)).toEqual(['A903 3:5']);
  });

  test.each([
    ['fields without their line of hyphens', 'sessions/2031-03-12.md', 'date: 2031-03-12\ntitle: Brakes\n---\nProse\n', 'A205'],
    ['a name that gives no day', 'sessions/brakes.md', 'The drum came off.\n', 'A205'],
    ['a name of a day that is none', 'sessions/2031-02-30.md', 'The drum came off.\n', 'A205'],
  ])('but not %s', (_, path, text, code) => {
    expect(compileFiles({ more: { [path]: text } }).diagnostics.map((each) => each.code)).toContain(code);
  });
});

describe('words that people try first are known to the hints', () => {
  const hintOf = (fields: string) => compileFiles({ more: { [NOTE]: note(fields) } }).diagnostics.map(({ hint }) => hint);

  test.each([
    ['plated', 'Write `refinished`.'],
    ['painted', 'Write `refinished`.'],
    ['Binned', 'Write `gone` with `how: scrapped`.'],
    ['broken', 'Write `inspected`, and what was found under `note`.'],
    ['taken off', 'Write `removed`.'],
    ['swapped', 'Write `removed` for the old part and `fitted` for the new one, an entry each.'],
    ['remvoed', 'Did you mean `removed`?'],
  ])('did: %s', (word, hint) => {
    expect(hintOf(`parts: [{ part: drum, did: ${word} }]`)).toEqual([hint]);
  });

  test('origin: repro', () => {
    const parts = PARTS.replace('origin: donor', 'origin: repro');
    expect(compileFiles({ parts }).diagnostics.map(({ hint }) => hint)).toEqual(['Write `reproduction`.']);
  });

  test.each([
    ['actions', SAID.SAID_FOR_ACTIONS, ACTIONS],
    ['origins', SAID.SAID_FOR_ORIGINS, ORIGINS],
    ['verdicts', SAID.SAID_FOR_VERDICTS, VERDICTS],
    ['kinds', SAID.SAID_FOR_KINDS, ITEM_KINDS],
    ['hazards', SAID.SAID_FOR_HAZARDS, HAZARDS],
  ] as const)('%s: no word of the format is taken for another', (_, saidFor, words) => {
    expect([...saidFor.keys()].filter((said) => (words as readonly string[]).includes(said))).toEqual([]);
  });
});

test.each(['constructor', 'toString', '__proto__', 'hasOwnProperty'])(
  'a field named `%s`, as every object has one, is unknown like any other',
  (name) => {
    for (const written of ['[{ a: 1 }]', '{ a: 1 }', 'a']) {
      const { diagnostics } = compileFiles({
        more: { [NOTE]: note(`${name}: ${written}\nhours: [{ by: rh, on: brakes, time: 1h, ${name}: ${written} }]`) },
      });
      expect(
        diagnostics.map(({ code }) => code),
        written,
      ).toEqual(['A301', 'A301']);
    }
  },
);

test('a person and a subsystem of which only the name is said', () => {
  const said = `${JOURNAL.split('people:')[0]}people: { rh: Ruth, jm: Jory }\nsubsystems:\n  brakes: Brakes\n  frame: "Frame, and body"\n`;
  const { record, diagnostics } = compileFiles({
    journal: said,
    parts: '- { id: drum, name: Drum }\n',
    more: { [NOTE]: note('hours: [{ by: [rh, jm], on: brakes, time: 2h, unpaid: ours }]') },
  });
  expect(diagnostics.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
  expect([...(record?.journal.people.values() ?? [])].map(({ name }) => name)).toEqual(['Ruth', 'Jory']);
  expect([...(record?.journal.subsystems.values() ?? [])].map(({ name }) => name)).toEqual(['Brakes', 'Frame, and body', 'General']);
  expect(record?.journal.sessions[0]?.hours.map(({ by, minutes, unpaid }) => [by, minutes, unpaid])).toEqual([
    ['rh', 120, 'ours'],
    ['jm', 120, 'ours'],
  ]);
});
