/** The site of five years of evenings, whose accounts do not fit one page: a page a year, and every figure still lands. */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MOST_BYTES } from '../../src/site/long-pages/cut-page.ts';
import { writeJournal } from '../bench/generate.ts';
import type { Bench } from './bench.ts';
import { buildSite } from './built-site.ts';
import { SUMS_OF_ENTRIES, wrongFigures } from './of-the-site/figures.ts';
import { links } from './of-the-site/links.ts';
import { figuresOn } from './shown-figures.ts';

describe('the site of a long journal', () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    const journal = mkdtempSync(join(tmpdir(), 'asfound-long-'));
    await writeJournal(journal, 700, 1952, { positions: 700 });
    bench.site = await buildSite(['--content', journal]);
    rmSync(journal, { recursive: true, force: true });
  });
  afterAll(() => bench.site?.remove());
  const pagesIn = (folder: string) => bench.site.pages.filter((page) => page.startsWith(folder));

  it('no page of it is too long, and what would be goes on on further ones', () => {
    const heavy = bench.site.pages.filter((page) => statSync(join(bench.site.folder, page)).size > MOST_BYTES);
    expect(heavy).toEqual([]);
    const further = bench.site.pages.filter((page) => /\.2\.html$/.test(page));
    expect(further).toEqual(expect.arrayContaining(['register.2.html', 'stores.2.html']));
    expect(bench.site.pages).not.toContain('index.2.html');
  });

  it.each([
    ['of the ledger and of its years', ['ledger.html', 'ledger/year/'], SUMS_OF_ENTRIES],
    ['of past days', ['ledger/as-at/'], 'table'],
    ['of positions', ['ledger/by-position'], 'table'],
  ])('figures %s land on entries that add up to them', (_, places, tables) => {
    const shown = places.flatMap(pagesIn).flatMap((page) => figuresOn(bench.site.folder, page, tables));
    expect(shown.length).toBeGreaterThan(100);
    expect(wrongFigures(bench.site.folder, shown)).toEqual([]);
  });

  it('the ledger and the book of all entries have a page for each year, and the ledger stays light', () => {
    const years = pagesIn('ledger/year/').map((page) => page.replace('ledger/year/', ''));
    expect(years.length).toBeGreaterThan(4);
    expect(pagesIn('ledger/entries/all-').map((page) => page.replace('ledger/entries/all-', ''))).toEqual(years);
    // Without pages of years it was 2.2 MB; what is ahead and the client's account are on it since.
    expect(statSync(join(bench.site.folder, 'ledger.html')).size).toBeLessThan(160_000);
  });

  links(bench);
});
