/** Getting about: what is within reach, where one is, and the way to the search. */
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { compileJournal } from '../../../src/journal/pipeline.ts';
import { keptIn } from '../../../src/journal/values/once.ts';
import { loadJournal } from '../../../src/load/load.ts';
import { PAGES } from '../../../src/site/addresses.ts';
import { contentsOf } from '../../../src/site/views/frame/contents.ts';
import type { Bench } from '../bench.ts';
import { type Anchor, readAnchors } from '../markup.ts';

/** What the demo tells of, which decides the pages it has. */
function demo() {
  const folder = fileURLToPath(new URL('../../../content', import.meta.url));
  const { record } = compileJournal(loadJournal(folder), { today: '2026-11-25' });
  if (!record) throw new Error('the demo was not understood');
  return record;
}

export function gettingAbout(bench: Bench): void {
  const htmlOf = (page: string): string => readFileSync(join(bench.site.folder, page), 'utf8');
  const anchors = new Map<string, Anchor[]>();
  const anchorsOf = (page: string): Anchor[] => keptIn(anchors, page, () => readAnchors(htmlOf(page)));
  const pagesFrom = (page: string): Set<string> =>
    new Set(
      anchorsOf(page).flatMap(({ href }) => {
        const path = decodeURIComponent(href.split('#')[0] ?? '');
        return path.endsWith('.html') ? [posix.join(posix.dirname(page), path)] : [];
      }),
    );
  const ways = new Map<string, Set<string>>();
  const leadsTo = (page: string): Set<string> => keptIn(ways, page, () => pagesFrom(page));
  const documents = new Map<string, Document>();
  const documentOf = (page: string): Document => keptIn(documents, page, () => parseHTML(htmlOf(page)).document);

  describe('getting about', () => {
    it('from every page, each page of which there is one is a click away', () => {
      const named = Object.values(PAGES);
      const lost = bench.site.pages.flatMap((page) => {
        const reached = leadsTo(page);
        return named.filter((name) => name !== page && !reached.has(name)).map((name) => `${page} does not lead to ${name}`);
      });
      expect(lost).toEqual([]);
    });

    it('from home, from a session and from a part, every page is two clicks away but those of other days and of single years', () => {
      const far = /^(?:404\.html$|register\/|as-at\/|ledger\/as-at\/|ledger\/entries\/.*-\d{4}\.html$|pictures-(?:of|by-date)\/)/;
      for (const from of ['index.html', 'sessions/2025-09-06-brakes-together.html', 'parts/front-drum-near.html']) {
        const near = leadsTo(from);
        const reached = new Set([from, ...near, ...[...near].flatMap((page) => [...leadsTo(page)])]);
        expect(
          bench.site.pages.filter((page) => !reached.has(page) && !far.test(page)),
          from,
        ).toEqual([]);
      }
    });

    it('every page that belongs to a group says which, and at which of its pages one is', () => {
      const within = (page: string) => documentOf(page).querySelector('.masthead nav') as Element;
      for (const { name, entries } of contentsOf(demo())) {
        for (const { page } of entries) {
          const nav = within(PAGES[page]);
          const current = [...nav.querySelectorAll('[aria-current]')].map((link) => [link.textContent, link.getAttribute('aria-current')]);
          expect(current, page).toEqual([
            [name, 'true'],
            [entries.find((each) => each.page === page)?.name, 'page'],
          ]);
          expect([...nav.querySelectorAll('.pages a')].map((link) => link.textContent)).toEqual(entries.map((each) => each.name));
        }
      }
      const deep = [...within('parts/front-drum-near.html').querySelectorAll('[aria-current]')].map((link) => link.textContent);
      expect(deep).toEqual(['The vehicle', 'Parts']);
      expect(documentOf('parts/front-drum-near.html').querySelector('.trail')?.textContent?.trim()).toBe('Brakes');
    });

    it('the search has its key on every page, and its field is ready to type in when it opens', async () => {
      const keys = bench.site.pages.map((page) => anchorsOf(page).filter(({ key }) => key === 's').length);
      expect(new Set(keys)).toEqual(new Set([1]));
      const page = await bench.page();
      await page.goto(`${bench.served.address}parts/front-drum-near.html`);
      // A browser without a window knows no access keys; what the key would do is done.
      await page.locator('a[accesskey="s"]').click();
      await page.waitForURL(/search\.html/);
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('query');
      await page.close();
    });
  });
}
