/** A note without fields: what gives the title is not told again as prose, and nothing of it is lost. */
import { expect, test } from 'vitest';
import { proseAlone } from '../../src/journal/read/prose-alone.ts';

const read = (text: string) => {
  const note = proseAlone(text, '2031-03-12', new Set());
  return note && [note.title, text.slice(note.start).trim()];
};

test.each([
  ['# Cold evening\n\nThe stove went out.', 'Cold evening', 'The stove went out.'],
  ['Cold evening\n\nThe stove went out.', 'Cold evening', 'The stove went out.'],
  ['\nCold evening.\n\nThe stove went out.', 'Cold evening', 'The stove went out.'],
  ['Cold evening.\nThe stove went out.', 'Cold evening', 'The stove went out.'],
  ['Cold evening.\nThe [stove](part:stove) went out.', 'Cold evening', 'The [stove](part:stove) went out.'],
  ['Was it cold?\r\nThe stove went out.', 'Was it cold?', 'The stove went out.'],
])('%j has a title of its own', (text, title, prose) => {
  expect(read(text)).toEqual([title, prose]);
});

test.each([
  ['Cold evening. The stove went out.', 'Cold evening'],
  ['Cold evening.', 'Cold evening'],
  ['Took the drum to\nJory.', 'Took the drum to'],
  ['[The drum](part:drum) came off.\n\nThe stove went out.', 'The drum came off'],
  ['# The [drum](part:drum)\n\nIt came off.', 'The drum'],
  ['> Cold evening\n\nThe stove went out.', 'Cold evening'],
  [
    `${'So cold an evening as never was '.repeat(3)}.\n\nThe stove went out.`,
    'So cold an evening as never was So cold an evening as never…',
  ],
])('%j stays whole', (text, title) => {
  expect(read(text)).toEqual([title, text]);
});
