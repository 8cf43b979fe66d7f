/** A journal with nothing in it: each page says so, and what would fill it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from './bench.ts';
import { buildBare } from './built-site.ts';
import { links } from './of-the-site/links.ts';
import { validity } from './of-the-site/validity.ts';

const FILLED_BY_NOTES = ['sessions', 'register', 'ledger', 'items', 'bags', 'methods', 'measurements', 'pictures', 'film', 'papers'];

describe('the site of a bare journal', () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    bench.site = await buildBare();
  });
  afterAll(() => bench.site?.remove());

  it('has every page that stands by itself', () => {
    expect(bench.site.pages).toEqual(expect.arrayContaining(['index.html', 'about.html', 'search.html', '404.html']));
  });

  it.each(FILLED_BY_NOTES)('%s says that there is nothing, and what fills it', (name) => {
    const text = readFileSync(join(bench.site.folder, `${name}.html`), 'utf8');
    expect(text).toMatch(/What fills this: /);
  });

  links(bench);
  validity(bench);
});
