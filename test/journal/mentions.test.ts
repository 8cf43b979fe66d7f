import { describe, expect, test } from 'vitest';
import { repaired } from '../../src/journal/diagnostics/repair.ts';
import { mentionsIn } from '../../src/journal/mentions/mentions.ts';
import { type RenamedSort, renaming } from '../../src/journal/mentions/renaming.ts';
import { CONSUMABLES, type Files, JOURNAL, NOTE, note, PARTS, sourcesOf } from './base.ts';

/** Each file that a renaming changes, as it is afterwards. */
function renamed(files: Files, sort: RenamedSort, from: string, to: string): Record<string, string> {
  const sources = sourcesOf(files);
  const paths = sources.files.map(({ path }) => path);
  const result = renaming(mentionsIn(sources), paths, sort, from, to);
  if ('problem' in result) throw new Error(result.problem);
  const changed = sources.files.flatMap(({ path, bytes }): [string, string][] => {
    const edits = result.edits.filter(({ place }) => place.file === path);
    const name = result.moved?.from === path ? result.moved.to : path;
    return edits.length === 0 && name === path ? [] : [[name, repaired(new TextDecoder().decode(bytes), edits)]];
  });
  return Object.fromEntries(changed);
}

function refused(sort: RenamedSort, from: string, to: string): string {
  const sources = sourcesOf({ more: { [NOTE]: note('bags:\n  - { bag: 14, holds: 5 nuts }') } });
  const result = renaming(mentionsIn(sources), [], sort, from, to);
  return 'problem' in result ? `${result.problem} ${result.hint ?? ''}`.trim() : 'renamed';
}

/** How often each thing is mentioned in a note, as `sort name`. */
function mentionsOf(fields: string, prose = ''): string[] {
  const { all } = mentionsIn(sourcesOf({ more: { [NOTE]: note(fields, prose) } }));
  return all.filter(({ place }) => place.file === NOTE).map(({ sort, name }) => `${sort} ${name}`);
}

describe('a thing is found wherever a note names it', () => {
  test.each([
    ['hours:\n  - { by: rh, on: brakes, time: 1h }', ['person rh', 'subsystem brakes']],
    ['hours:\n  - { by: jm, on: drum, time: 1h }', ['person jm', 'part drum']],
    ['parts:\n  - { part: drum, did: removed, to: shelf B2 }', ['part drum', 'store shelf B2']],
    ['parts:\n  - { part: drum, did: removed, to: bag 14 }\nbags:\n  - { bag: 14, holds: a }', ['part drum', 'bag 14', 'bag 14']],
    ['parts:\n  - { part: [drum, studs], did: cleaned }', ['part drum', 'part studs']],
    ['Parts:\n  - { Part: drum, did: cleaned }', ['part drum']],
    ['parts:\n  - { part: drum, did: sent-out, to: shelf B2 }', ['part drum']],
    ['parts:\n  - { part: drum-donor, did: fitted, at: drum, from: shelf B2 }', ['part drum-donor', 'part drum', 'store shelf B2']],
    [
      'parts:\n  - { part: shoe-new, did: made, from: [drum, studs], pattern: drum-donor }',
      ['part shoe-new', 'part drum', 'part studs', 'part drum-donor'],
    ],
    ['decisions:\n  - { part: drum, verdict: replace, with: drum-donor, because: drum is scored }', ['part drum', 'part drum-donor']],
    ['methods:\n  - { on: drum, how: soaked, with: brake-cleaner }', ['part drum', 'consumable brake-cleaner']],
    ['bought:\n  - { what: work, cost: 2.00, split: { drum: 1, brakes: 2 } }', ['part drum', 'subsystem brakes']],
    [
      'opens:\n  - { id: bleed, kind: task, what: Bleed, before: first-start, on: brakes }\ncloses:\n  - { id: bleed }',
      ['item bleed', 'milestone first-start', 'subsystem brakes', 'item bleed'],
    ],
    ['pictures:\n  - { file: a.jpg, shows: drum, points: [{ at: "1,2", shows: studs }] }', ['part drum', 'part studs']],
    ['film:\n  - { clip: a.mp4, shows: { "1:00": drum, "2:00": [studs] } }', ['part drum', 'part studs']],
    [
      'bought:\n  - { what: a shoe, cost: 2.00, makes: { id: shoe-left, name: Shoe, origin: new, for: studs, at: shelf B2 } }\nparts:\n  - { part: shoe-left, did: cleaned }',
      ['part shoe-left', 'part studs', 'store shelf B2', 'part shoe-left'],
    ],
    ['reached:\n  - { milestone: stripped }', ['milestone stripped']],
    ['corrects: 2031-03-12', ['session 2031-03-12-brakes']],
  ])('%s', (fields, expected) => {
    expect(mentionsOf(fields)).toEqual(expected);
  });

  test.each([
    ['[the drum](part:drum) and [it](<part:drum>), also [again](part:drum "part:drum")', 3],
    ['<part:drum>', 1],
    ['<a href="part:drum">it</a>', 1],
    ['[the drum] and [the drum][]\n\n[the drum]: part:drum', 1],
    ['`[the drum](part:drum)` and \\[it](part:drum)', 0],
    ['[part:drum](bag:14)', 0],
    ['the drum part:drum', 0],
  ])('the prose `%s` names the drum %i times', (prose, times) => {
    expect(mentionsOf('', prose).filter((one) => one === 'part drum')).toHaveLength(times);
  });

  test('also in an entry with a fault, and in a note that has no fields', () => {
    expect(mentionsOf('parts:\n  - { part: drum, did: removde, count: many }')).toEqual(['part drum']);
    const { all } = mentionsIn(sourcesOf({ more: { 'sessions/2031-03-12.md': 'Cleaned [it](part:drum).' } }));
    expect(all.filter(({ place }) => place.file.startsWith('sessions/')).map(({ name }) => name)).toEqual(['drum']);
  });

  test('a name that the journal does not have is none', () => {
    expect(mentionsOf('parts:\n  - { part: drumm, did: cleaned }', '[it](part:drumm)')).toEqual([]);
  });
});

describe('a renaming', () => {
  const drawing = `<svg viewBox="0 0 9 9"><style>#drum { fill: none }</style><!-- id="drum" --><path id="drum" d="M0 0"/>
<use href="#drum"/><rect data-part='drum' id="drum-shape"/><g id="drum-donor"/><text>drum</text></svg>`;

  test('reaches the catalogue, the notes, the prose and the drawings, and leaves every other letter', () => {
    const written = note(
      'parts:\n  - { part: "drum", did: removed, note: the drum } # drum: off\n  - { part: drum-donor, did: cleaned }',
      '[The drum](part:drum), not part:drum.',
    );
    const changed = renamed({ more: { [NOTE]: written, 'drawings/side.svg': drawing } }, 'part', 'drum', 'front-drum');
    expect(changed).toEqual({
      'parts/brakes.yaml': PARTS.replace('- id: drum\n', '- id: front-drum\n').replace('for: drum\n', 'for: front-drum\n'),
      [NOTE]: written.replace('part: "drum"', 'part: "front-drum"').replace('(part:drum)', '(part:front-drum)'),
      'drawings/side.svg': drawing
        .replace('<style>#drum', '<style>#front-drum')
        .replace('<path id="drum"', '<path id="front-drum"')
        .replace('href="#drum"', 'href="#front-drum"')
        .replace("data-part='drum'", "data-part='front-drum'"),
    });
  });

  test('keeps a byte order mark and the ends of lines', () => {
    const written = `\uFEFF${note('parts:\n  - { part: drum, did: cleaned }').replaceAll('\n', '\r\n')}`;
    const changed = renamed({ more: { [NOTE]: new TextEncoder().encode(written) } }, 'part', 'drum', 'front-drum');
    expect(changed[NOTE]).toBe(written.replace('part: drum', 'part: front-drum').slice(1));
  });

  test('of a store quotes the new name where YAML would read its marks', () => {
    const written = note("parts:\n  - { part: drum, did: removed, to: shelf B2 }\n  - { part: studs, did: removed, to: 'shelf B2' }");
    const changed = renamed({ more: { [NOTE]: written } }, 'store', 'shelf B2', "rack: Ruth's, left");
    expect(changed[NOTE]).toBe(written.replace('to: shelf B2', 'to: "rack: Ruth\'s, left"').replace("'shelf B2'", "'rack: Ruth''s, left'"));
    expect(changed['journal.yaml']).toBe(JOURNAL.replace('shelf B2]', '"rack: Ruth\'s, left"]'));
  });

  test('of a bag changes its number, with the word before it or without', () => {
    const written = note(
      'parts:\n  - { part: drum, did: removed, to: bag 14 }\nbags:\n  - { bag: 14, holds: 14 nuts }\nemptied: [14]',
      '[](bag:014)',
    );
    expect(renamed({ more: { [NOTE]: written } }, 'bag', '14', '15')[NOTE]).toBe(
      written.replace('to: bag 14', 'to: bag 15').replace('bag: 14', 'bag: 15').replace('[14]', '[15]').replace('bag:014', 'bag:15'),
    );
  });

  test('of a subsystem moves its catalogue', () => {
    const changed = renamed({}, 'subsystem', 'brakes', 'braking');
    expect(changed).toEqual({ 'journal.yaml': JOURNAL.replace('brakes:', 'braking:'), 'parts/braking.yaml': PARTS });
  });

  test('of a consumable changes the name over its entry', () => {
    const changed = renamed({}, 'consumable', 'brake-cleaner', 'cleaner');
    expect(changed).toEqual({ 'consumables.yaml': CONSUMABLES.replace('brake-cleaner:', 'cleaner:') });
  });

  test.each([
    ['part', 'drumm', 'x', 'There is no part `drumm`. Did you mean `drum`?'],
    ['part', 'drum', 'Front drum', '`Front drum` is not an id. Write `front-drum`: lower-case letters, digits and single hyphens.'],
    ['part', 'drum', 'studs', 'There is a part `studs` already. Choose a name that nothing has.'],
    ['part', 'drum', 'brakes', 'There is a subsystem `brakes` already. Choose a name that nothing has.'],
    ['part', 'drum', 'drum', 'There is a part `drum` already. Choose a name that nothing has.'],
    ['bag', '14', 'fifteen', '`fifteen` is not a bag number. A bag has a whole number from 1.'],
    ['store', 'shelf B2', 'bag 3', '`bag 3` is the name of a bag. Name a store for what it is: `shelf B2`.'],
    ['store', 'shelf B2', ' shelf', 'The name of a store is one line of text without spaces around it.'],
  ] as const)('of a %s `%s` to `%s` is refused where it cannot be', (sort, from, to, words) => {
    expect(refused(sort, from, to)).toBe(words);
  });
});
