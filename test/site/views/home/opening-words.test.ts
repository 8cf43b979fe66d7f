import { expect, it } from 'vitest';
import { openingWords } from '../../../../src/site/views/home/opening-words.ts';

it('a list shows the first sentences of a note, without links, pictures, headings or emphasis', () => {
  const body = '# Brakes\n\n![drum](drum.jpg)\n\nThe [drum](part:front-drum-near) is **scored**. Not `cracked`.\n\nMore.';
  expect(openingWords(body, 200)).toBe('The drum is scored. Not cracked.');
});

it('it ends with a full sentence where one ends in time, else at a word', () => {
  expect(openingWords('Cold again. The stove was lit and went out twice before tea.', 24)).toBe('Cold again.');
  expect(openingWords('The stove was lit and went out again', 16)).toBe('The stove was …');
});

it('a colon that led up to a list becomes dots', () => {
  expect(openingWords('Counted against the notes, with these differences:\n\n- a', 100)).toBe(
    'Counted against the notes, with these differences …',
  );
});

it('a note without prose gives nothing', () => {
  expect(openingWords('', 100)).toBe('');
  expect(openingWords('- a\n- b\n\n| a | b |', 100)).toBe('');
});

it('code stays as it stands, in a link and outside one', () => {
  expect(openingWords('Name it like this: `![What it shows](drum.jpg)`, the [`near` drum](part:drum).', 200)).toBe(
    'Name it like this: ![What it shows](drum.jpg), the near drum.',
  );
});

it('a link without words is called by what it leads to', () => {
  const nameOf = (address: string) => (address === 'bag:1' ? 'bag 1' : '');
  expect(openingWords('Nuts are in [](bag:1). [Not these](bag:1).', 200, { nameOf })).toBe('Nuts are in bag 1. Not these.');
});

it('a title that the prose begins with is not said again, unless there is nothing else', () => {
  const after = (body: string) => openingWords(body, 200, { title: 'Cold evening' });
  expect(after('Cold evening. The stove went out.')).toBe('The stove went out.');
  expect(after('Cold evening\nThe stove went out.')).toBe('The stove went out.');
  expect(after('Cold evening\n\nThe stove went out.')).toBe('The stove went out.');
  expect(after('*Cold evening*.\n\n- a\n- b')).toBe('');
  expect(after('Cold evening work is slow.')).toBe('Cold evening work is slow.');
});

it('a name that begins a sentence has a capital', () => {
  const nameOf = () => 'bag 1';
  expect(openingWords('[](bag:1) has the caps. [](bag:1), not [](bag:1).', 200, { nameOf })).toBe('Bag 1 has the caps. Bag 1, not bag 1.');
});
