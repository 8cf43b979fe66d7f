import { expect, it } from 'vitest';
import { counted, heldByTheWorks, listed, listedNames, sentence, someOfAll, spelled } from '../../../../src/site/views/page/words.ts';

it('counts and lists as a sentence does', () => {
  expect([counted(0, 'part'), counted(1, 'part'), counted(2, 'entry', 'entries')]).toEqual(['no parts', '1 part', '2 entries']);
  expect([spelled(3, 'person', 'people'), spelled(13, 'session')]).toEqual(['three people', '13 sessions']);
  expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
});

it('a sentence gets one full stop, whatever its writer put there', () => {
  expect(['worn', 'worn.', 'worn?', 'he said “no.”', '', null].map(sentence)).toEqual(['worn.', 'worn.', 'worn?', 'he said “no.”', '', '']);
});

it.each([
  [12, 20, '12 of the 20 places on the vehicle hold what the works put there.'],
  [1, 20, '1 of the 20 places on the vehicle holds what the works put there.'],
  [0, 20, 'None of the 20 places on the vehicle holds what the works put there.'],
  [1, 1, 'The one place on the vehicle holds what the works put there.'],
  [0, 1, 'No place on the vehicle holds what the works put there.'],
])('%i of %i places is a sentence', (n, all, words) => {
  expect(heldByTheWorks(n, all)).toBe(words);
});

it('some of all needs no verb', () => {
  expect([someOfAll(1, 1, 'piece').which, someOfAll(3, 5, 'piece').which]).toEqual(['the one piece', '3 of the 5 pieces']);
});

it('names that have commas or `and` of their own are told apart', () => {
  expect(listedNames(['Frame and body'])).toBe('Frame and body');
  expect(listedNames(['Horn', 'Lamp'])).toBe('Horn and Lamp');
  expect(listedNames(['Cap and strap', 'Pin', 'Drum'])).toBe('Cap and strap; Pin; Drum');
  expect(listedNames(['Drum, nearside', 'Pin'])).toBe('Drum, nearside; Pin');
});
