import { expect, test } from 'vitest';
import { stillToDoAt } from '../../src/journal/registers/at-milestone.ts';
import { stillToDoWords } from '../../src/site/views/items/still-to-do.ts';
import { decide, did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [
  part('engine'),
  part('magneto', { inside: 'engine' }),
  part('studs', { count: 5, missing: 1 }),
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'loft' }),
  part('horn', { found: 'missing' }),
];
const off = (id: string, fields = {}) => evening('2030-10-01', { parts: [did(id, 'removed', fields)] });
const still = (...evenings: Evening[]) => stillToDoAt(soundRecord({ parts, evenings }), '2030-10-02');

test('what is in its place, missing as found, or a spare on a shelf is nothing to do', () => {
  expect(still()).toEqual({ empty: 0, undone: 0 });
});

test.each([
  ['studs in a bag', off('studs', { count: 3, to: 'bag 14' }), 3],
  ['an engine on its stand, with what is in it', off('engine'), 1],
  ['a drum whose spare is on the shelf', off('drum'), 1],
  ['what is thrown away', evening('2030-10-01', { parts: [did('studs', ['removed', 'gone'], { how: 'scrapped' })] }), 0],
  ['what came off after that day', evening('2030-10-03', { parts: [did('drum', 'removed')] }), 0],
] as const)('%s', (_, session, empty) => expect(still(session)).toEqual({ empty, undone: 0 }));

test('what was decided to be left off has no place there any more, and what was missing is not off because others were replaced', () => {
  const omitted = evening('2030-10-01', { parts: [did('drum', 'removed')], decisions: [decide('drum', 'omit')] });
  expect(still(omitted)).toEqual({ empty: 0, undone: 0 });
  const replaced = evening('2030-10-01', {
    parts: [did('studs', 'removed', { count: 2 }), did('studs-new', ['acquired', 'fitted'], { count: 2 })],
    decisions: [decide('studs', 'replace', { with: 'studs-new', count: 2 })],
  });
  const all = [...parts, part('studs-new', { for: 'studs', found: 'considered', count: 2 })];
  expect(stillToDoAt(soundRecord({ parts: all, evenings: [replaced] }), '2030-10-02')).toEqual({ empty: 0, undone: 0 });
});

test('decided work that is not done', () => {
  const decided = evening('2030-10-01', { decisions: [decide('drum', 'repair'), decide('engine', 'keep')] });
  expect(still(decided)).toEqual({ empty: 0, undone: 1 });
  const done = evening('2030-10-02', { parts: [did('drum', 'machined')] });
  expect(still(decided, done)).toEqual({ empty: 0, undone: 0 });
});

test('it is told as it was, and nothing where there was nothing', () => {
  expect(stillToDoWords({ empty: 0, undone: 0 })).toBeNull();
  expect(stillToDoWords({ empty: 1, undone: 0 })).toBe('At the end of that day 1 part that has its place on the vehicle was off it.');
  expect(stillToDoWords({ empty: 4, undone: 1 })).toBe(
    'At the end of that day 4 parts that have their place on the vehicle were off it, and work that had been decided on was still to be done on 1 part.',
  );
});
