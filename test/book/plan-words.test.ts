import { expect, test } from 'vitest';
import { planWords } from '../../src/book/sheets/plan-words.ts';
import { decide, evening, part, soundRecord } from '../builders/journal.ts';

const PARTS = [
  part('caps', { count: 4, numbered: 'I to IIII' }),
  part('cap-donor', { for: 'caps', store: 'loft' }),
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'loft' }),
];
const told = (...decisions: ReturnType<typeof decide>[]) =>
  planWords(soundRecord({ parts: PARTS, evenings: decisions.map((one, n) => evening(`2030-10-0${n + 1}`, { decisions: [one] })) }));

test('a decision on others of a lot takes the place of none', () => {
  const fourth = decide('caps', 'replace', { with: 'cap-donor', which: [4], count: 1 });
  const rest = decide('caps', 'keep', { which: [1, 2, 3], count: 3 });
  expect(told(fourth, rest)).toBe('2 decisions, none of them in place of an earlier one; each stays with its reason.');
});

test('what was decided on a spare that never stood there is one of them, in place of none', () => {
  const unwanted = decide('drum-spare', 'omit', { because: null });
  expect(told(decide('drum', 'keep'), unwanted)).toBe(
    '2 decisions, none of them in place of an earlier one; each stays, 1 without a reason.',
  );
  expect(told(decide('drum', 'keep'))).toBe('1 decision, in place of no earlier one; it stays with its reason.');
});

test('one on the same piece does, and what has no reason is said to have none', () => {
  const bare = decide('drum', 'replace', { with: 'drum-spare', because: null });
  expect(told(decide('drum', 'keep'), bare)).toBe('2 decisions, 1 of them in place of an earlier one; each stays, 1 without a reason.');
  expect(told()).toBe('No decision is written down.');
});
