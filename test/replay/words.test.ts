import { expect, test } from 'vitest';
import { numbersInWords, someInWords } from '../../src/journal/replay/words.ts';

test.each([
  [[2], 'number 2'],
  [[2, 4], 'numbers 2 and 4'],
  [[1, 2, 5, 6], 'numbers 1, 2, 5 and 6'],
  [[3, 4, 5, 6, 7], 'numbers 3 to 7'],
  [[1, 3, 4, 5, 8, 9], 'numbers 1, 3 to 5, 8 and 9'],
  [[7, 8, 9, 12], 'numbers 7 to 9 and 12'],
])('%j of a numbered lot are %s', (which, words) => {
  expect(numbersInWords(which)).toBe(words);
});

test('some of a lot are told with their numbers, all of it with none', () => {
  expect(someInWords(3, 14, [1, 2, 14])).toBe('3 of 14, numbers 1, 2 and 14');
  expect(someInWords(14, 14, [1, 2, 3])).toBe('');
});
