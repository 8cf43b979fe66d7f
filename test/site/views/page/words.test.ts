import { expect, it } from 'vitest';
import { counted, listed, sentence, spelled } from '../../../../src/site/views/page/words.ts';

it('counts and lists as a sentence does', () => {
  expect([counted(0, 'part'), counted(1, 'part'), counted(2, 'entry', 'entries')]).toEqual(['no parts', '1 part', '2 entries']);
  expect([spelled(3, 'person', 'people'), spelled(13, 'session')]).toEqual(['three people', '13 sessions']);
  expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
});

it('a sentence gets one full stop, whatever its writer put there', () => {
  expect(['worn', 'worn.', 'worn?', 'he said “no.”', '', null].map(sentence)).toEqual(['worn.', 'worn.', 'worn?', 'he said “no.”', '', '']);
});
