import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

test('no page or component sets a table by hand: head and cells would fall apart', () => {
  const pages = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.astro'));
  expect(pages.length).toBeGreaterThan(50);
  expect(pages.filter((file) => /<(?:table|thead|td)\b/.test(readFileSync(`${SRC}/${file}`, 'utf8')))).toEqual([]);
});
