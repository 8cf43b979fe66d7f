/** One fault is told once: what it makes of other places is not. */
import { describe, expect, test } from 'vitest';
import { CONSUMABLES, compileFiles, type Files, JOURNAL, NOTE, note, PARTS } from './base.ts';

const LATER = 'sessions/2031-03-20-later.md';
const later = (fields: string) => note(fields).replace('2031-03-12', '2031-03-20');
const codesOf = (files: Files) => compileFiles(files).diagnostics.map(({ code, place }) => `${place.file.split('/')[0]} ${code}`);

/** A note that names one of everything. */
const USES = note(
  `hours: [{ by: rh, on: brakes, time: 1h }]
parts: [{ part: drum, did: removed, to: shelf A1 }, { part: studs, did: removed, count: 3 }]
used: [{ consumable: brake-cleaner, amount: 1 ml, on: drum }]
opens: [{ id: a, kind: task, what: x, before: stripped }]`,
  '[It](part:drum).',
);

describe('names that a fault keeps from being known', () => {
  test.each([
    ['a part whose id is none', { parts: PARTS.replace('- id: drum\n', '- id: The Drum\n') }, 'parts A311'],
    ['a part without its name', { parts: PARTS.replace('  name: Front brake drum\n', '') }, 'parts A302'],
    ['a part whose count is none', { parts: PARTS.replace('count: 5', 'count: five') }, 'parts A310'],
    ['a part for a position that is not known', { parts: PARTS.replace('for: drum', 'for: drun') }, 'parts A407'],
    ['a hyphen forgotten before a part', { parts: PARTS.replace('- id: drum-donor', '  id: drum-donor') }, 'parts A203'],
    ['a catalogue that is no list', { parts: 'drum: x\n' }, 'parts A207'],
    ['a catalogue that is empty', { parts: '\n' }, 'parts A103'],
    ['a consumable without its unit', { consumables: CONSUMABLES.replace('unit: L, ', '') }, 'consumables.yaml A302'],
    ['people in a list', { journal: JOURNAL.replace(/ {2}rh: .*\n {2}jm: .*\n/, '  - { name: Ruth }\n') }, 'journal.yaml A303'],
    ['a person without a name', { journal: JOURNAL.replace('rh: { name: Ruth, ', 'rh: { ') }, 'journal.yaml A302'],
    ['a subsystem that is a list', { journal: JOURNAL.replace(/brakes: \{.*\}\n/, 'brakes: [Brakes]\n') }, 'journal.yaml A303'],
    [
      'milestones in a list',
      { journal: JOURNAL.replace(/ {2}stripped: .*\n {2}first.*\n/, '  - stripped\n  - first-start\n') },
      'journal.yaml A303',
    ],
  ])('%s', (_, files, said) => {
    expect(codesOf({ ...files, more: { [NOTE]: USES } })).toEqual([said]);
  });

  test('a catalogue named for a subsystem that is not there', () => {
    const { diagnostics } = compileFiles({ parts: '[]', more: { 'parts/breaks.yaml': PARTS, [NOTE]: USES } });
    expect(diagnostics.map(({ code }) => code)).toEqual(['A403']);
  });

  test('but what has nothing to do with the fault is told beside it', () => {
    const fields =
      'opens: [{ id: a, kind: task, what: x, on: nowhere }]\ncloses: [{ id: b }]\nhours: [{ by: nobody, on: brakes, time: 1h }]';
    expect(codesOf({ parts: '\n', more: { [NOTE]: note(fields) } })).toEqual(['parts A103', 'sessions A610', 'sessions A402']);
  });

  test('a year mistyped, in a note and in journal.yaml', () => {
    expect(codesOf({ more: { [NOTE]: note('').replace('2031', '2013') } })).toEqual(['sessions A802']);
    // The day of its name stands in for it: what it fits was taken off before.
    const off = `${note('parts: [{ part: drum, did: removed, to: bag 14 }]').replace('2031-03-12', '2031-03-10')}`;
    const on = note('parts: [{ part: drum, did: fitted, from: bag 14 }]\nbags: [{ bag: 14, holds: [2 nuts] }]\nemptied: [14]')
      .replace('2031', '2030')
      .replace('03-12', '01-12');
    expect(codesOf({ more: { 'sessions/2031-03-10-off.md': off, [NOTE]: on } })).toEqual(['sessions A802']);
    expect(codesOf({ more: { [NOTE]: note('').replace('2031', '2301') } })).toEqual(['sessions A801']);
    const files = { journal: JOURNAL.replace('arrived: 2030', 'arrived: 2300'), more: { [NOTE]: note(''), [LATER]: later('') } };
    expect(codesOf(files)).toEqual(['journal.yaml A801']);
  });

  test('a temporary measure due before a milestone that is not known', () => {
    expect(codesOf({ more: { [NOTE]: note('opens: [{ id: a, kind: temporary, what: x, before: stript }]') } })).toEqual(['sessions A404']);
  });

  test('a part for a part that is not known', () => {
    const uses = note('parts: [{ part: drum-donor, did: cleaned }]', '[It](part:drum-donor).');
    expect(codesOf({ parts: PARTS.replace('for: drum', 'for: drun'), more: { [NOTE]: uses } })).toEqual(['parts A407']);
  });

  test('an item whose entry is at fault, a bag, a note', () => {
    const closes = later('closes: [{ id: bleed, how: done }]');
    expect(codesOf({ more: { [NOTE]: note('opens: [{ id: bleed, kind: tsk, what: x }]'), [LATER]: closes } })).toEqual(['sessions A304']);
    expect(codesOf({ more: { [NOTE]: note('bags: [{ bag: no, holds: x }]'), [LATER]: later('emptied: [14]') } })).toEqual([
      'sessions A310',
    ]);
    expect(codesOf({ more: { [NOTE]: 'title: no front matter', [LATER]: later('emptied: [14]\ncloses: [{ id: a }]') } })).toEqual([
      'sessions A205',
    ]);
  });
});

describe('where a part is, after an entry that could not be followed', () => {
  const fitted = later('parts: [{ part: drum, did: fitted }]');

  test.each([
    ['an action misspelt', 'parts: [{ part: drum, did: remvoed }]', 'A304'],
    ['a store that is not known', 'parts: [{ part: drum, did: removed, to: shelf Z }]', 'A406'],
    ['a bag that is not filled', 'parts: [{ part: drum-donor, did: stored, from: bag 9, to: shelf A1 }]', 'A606'],
  ])('%s', (_, fields, code) => {
    expect(codesOf({ more: { [NOTE]: note(fields), [LATER]: fitted } })).toEqual([`sessions ${code}`]);
  });

  test('the position of a part that could not be taken off', () => {
    const files = {
      more: { [NOTE]: note('parts: [{ part: drum, did: remvoed }]'), [LATER]: later('parts: [{ part: drum-donor, did: fitted }]') },
    };
    expect(codesOf(files)).toEqual(['sessions A304']);
  });

  test.each([
    ['above it', (entry: string, bag: string) => `${entry}\n${bag}`],
    ['below it', (entry: string, bag: string) => `${bag}\n${entry}`],
  ])('a bag of what an entry %s would have taken off', (_, order) => {
    const entry = 'parts: [{ part: studs, did: remvoed, to: bag 14 }]';
    const bag = 'bags: [{ bag: 14, holds: [5 studs], off: studs }]';
    expect(codesOf({ more: { [NOTE]: note(order(entry, bag)) } })).toEqual(['sessions A304']);
  });

  test.each([
    ['misspelt', 'returnd'],
    ['that are said for another', 'donated'],
    ['of nobody', 'flogged'],
  ])('how it went in words %s, and who has it', (_, how) => {
    const entry = `parts: [{ part: drum-donor, did: gone, how: ${how}, to: Ned }]`;
    expect(codesOf({ more: { [NOTE]: note(entry) } })).toEqual(['sessions A304']);
  });

  test('a note that could not be read', () => {
    expect(codesOf({ more: { [NOTE]: 'title: no front matter', [LATER]: fitted } })).toEqual(['sessions A205']);
  });

  test('but what comes before it, and what is said of other parts, is told', () => {
    const wrong = later('parts: [{ part: drum, did: remvoed }]');
    expect(codesOf({ more: { [NOTE]: note('parts: [{ part: drum, did: fitted }]'), [LATER]: wrong } })).toEqual([
      'sessions A503',
      'sessions A304',
    ]);
    const other = later('parts: [{ part: studs, did: fitted }]');
    expect(codesOf({ more: { [NOTE]: note('parts: [{ part: drum, did: remvoed }]'), [LATER]: other } })).toEqual([
      'sessions A304',
      'sessions A503',
    ]);
  });
});
