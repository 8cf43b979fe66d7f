/** Pages of many pictures as a telephone meets them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from './bench.ts';
import { startBrowser } from './browser.ts';
import { links } from './of-the-site/links.ts';
import { validity } from './of-the-site/validity.ts';
import { BUSY, buildPictureJournal, IN_PROSE, PICTURES, UNDER_PICTURES, UNMENTIONED } from './picture-journal.ts';
import { serveFolder } from './static-server.ts';
import { weigh } from './weigh.ts';

/** What a session page of twelve pictures may cost before it is scrolled: all that comes over the wire, uncompressed. */
const MOST_BYTES = 400_000;

describe('a journal of many pictures', { timeout: 120_000 }, () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    bench.site = await buildPictureJournal();
    bench.browser = await startBrowser();
    bench.served = await serveFolder(bench.site.folder);
  }, 240_000);
  afterAll(async () => {
    await bench.browser?.close();
    await bench.served?.stop();
    bench.site?.remove();
  });

  describe.each([IN_PROSE, UNDER_PICTURES, UNMENTIONED])('the page of %s', (session) => {
    it.each([2, 3])('weighs less than 400 kB before it is scrolled, on a telephone of %d dots to a pixel', async (dots) => {
      const { bytes, kinds, pictures } = await weigh(bench, `sessions/${session}.html`, dots);
      expect(pictures).toBe(PICTURES);
      expect(bytes, JSON.stringify(kinds)).toBeLessThan(MOST_BYTES);
    });
  });

  describe('the pages of all pictures', () => {
    const pages = (): string[] => bench.site.pages.filter((page) => page === 'pictures.html' || page.startsWith('pictures-'));

    it('hold each picture once by date, and weigh less than 400 kB before they are scrolled', async () => {
      const byDate = pages().filter((page) => !page.startsWith('pictures-of/'));
      expect(byDate.length).toBeGreaterThan(3);
      const weights = await Promise.all(byDate.map((page) => weigh(bench, page, 2)));
      expect(weights.reduce((sum, one) => sum + one.pictures, 0)).toBe(3 * PICTURES + BUSY.sessions * BUSY.pictures);
      for (const { bytes, kinds } of weights) expect(bytes, JSON.stringify(kinds)).toBeLessThan(MOST_BYTES);
    });

    it('lead from the newest to the oldest, page by page', async () => {
      const page = await bench.browser.newPage();
      await page.goto(`${bench.served.address}pictures.html`);
      let steps = 0;
      for (; (await page.locator('a[rel=next]').count()) > 0; steps += 1) await page.locator('a[rel=next]').click();
      expect(steps).toBe(pages().filter((one) => one.startsWith('pictures-by-date/')).length);
      expect(await page.locator('main h2').last().textContent()).toBe('February 2026');
      await page.close();
    });
  });

  links(bench);
  validity(bench);
});
