import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));
const PAGES = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.astro'))
  .map((file) => ({ file, text: readFileSync(`${SRC}/${file}`, 'utf8') }));

describe('pages and components set what they are given', () => {
  test('they ask nothing of the registers, the ledger or the lives: views do, and pages import their types alone', () => {
    expect(PAGES.length).toBeGreaterThan(80);
    const asking = /import (?!type )[^;]*from '[^']*journal\/(?:registers|ledger|timelines|replay|check)\//;
    const wrong = PAGES.flatMap(({ file, text }) =>
      text
        .split(/(?=^import )/m)
        .filter((line) => asking.test(`${line.split(';')[0]};`) && !/^import \{(?: ?type \w+,?)+ \}/.test(line))
        .map((line) => `${file}: ${line.split('\n')[0]}`),
    );
    expect(wrong).toEqual([]);
  });

  test('a component never looks into the record', () => {
    const components = PAGES.filter(({ file }) => file.startsWith('components/') || file.startsWith('layouts/'));
    const looking = components.filter(({ text }) => /sheet\.record\b|\brecord\b[^}\n]*\} = (?:sheet|Astro\.props\.sheet)\b/.test(text));
    expect(looking.map(({ file }) => file)).toEqual([]);
  });
});
