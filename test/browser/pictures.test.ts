/** Pages of many pictures as a telephone meets them. */
import type { Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from './bench.ts';
import { startBrowser } from './browser.ts';
import { links } from './of-the-site/links.ts';
import { validity } from './of-the-site/validity.ts';
import { brokenPictures } from './of-the-site/visiting.ts';
import { BUSY, buildPictureJournal, IN_PROSE, PICTURES, UNDER_PICTURES, UNMENTIONED } from './picture-journal.ts';
import { openingIn } from './readers.ts';
import { serveFolder } from './static-server.ts';
import { type Weight, weigh } from './weigh.ts';

/** What a session page of twelve pictures may cost before it is scrolled: all that comes over the wire, uncompressed. */
const MOST_BYTES = 400_000;

describe('a journal of many pictures', () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    bench.site = await buildPictureJournal();
    bench.browser = await startBrowser();
    bench.page = openingIn(bench.browser);
    bench.served = await serveFolder(bench.site.folder);
  });
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

  describe('a picture on a page', () => {
    /** The places of all pictures and captions of a page. */
    const places = (page: Page): Promise<number[][]> =>
      page.locator('main img, main figcaption').evaluateAll((all) =>
        all.map((one) => {
          const { x, y, width, height } = one.getBoundingClientRect();
          return [x, y, width, height];
        }),
      );

    it.each([IN_PROSE, UNMENTIONED])('keeps its place before it has come, and moves nothing when it does, in %s', async (session) => {
      const page = await bench.page({ viewport: { width: 390, height: 844 } });
      const held: Route[] = [];
      let hold = true;
      await page.route(/\.(?:webp|jpg)$/, (route) => (hold ? void held.push(route) : route.continue()));
      await page.goto(`${bench.served.address}sessions/${session}.html`, { waitUntil: 'domcontentloaded' });
      await page.evaluate(async () => void (await document.fonts.ready));
      const before = await places(page);
      expect(before.length).toBe(2 * PICTURES);
      expect(held.length).toBeGreaterThan(0);
      hold = false;
      await Promise.all(held.map((route) => route.continue()));
      expect(await brokenPictures(page)).toEqual([]);
      const after = await places(page);
      // The sides of a rendering are whole pixels, so its proportions may differ by less than one from those of the picture.
      const moved = before.flatMap((box, n) => box.map((value, side) => Math.abs(value - (after[n]?.[side] ?? Number.NaN))));
      expect(Math.max(...moved)).toBeLessThan(1);
      await page.close();
    });

    it('has its mean colour in its place', async () => {
      const page = await bench.page();
      await page.route(/\.(?:webp|jpg)$/, (route) => route.abort());
      await page.goto(`${bench.served.address}sessions/${IN_PROSE}.html`);
      const image = page.locator('main img').first();
      const colour = await image.getAttribute('data-colour');
      const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colour?.slice(at, at + 2) ?? '', 16));
      expect(await image.evaluate((element) => getComputedStyle(element).backgroundColor)).toBe(`rgb(${red}, ${green}, ${blue})`);
      await page.close();
    });

    it('that nobody mentions is told from the others by its number and its time', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}sessions/${UNMENTIONED}.html`);
      const alts = await page.locator('main img').evaluateAll((all) => all.map((one) => one.getAttribute('alt')));
      const captions = await page.locator('main figcaption').allTextContents();
      expect(new Set(alts).size).toBe(PICTURES);
      expect(captions[0]?.trim()).toMatch(/^Picture 1 of 12\. +\d\d:\d\d$/);
      expect(new Set(captions).size).toBe(PICTURES);
      await page.close();
    });
  });

  describe('the pages of all pictures', () => {
    const pages = (): string[] => bench.site.pages.filter((page) => page === 'pictures.html' || page.startsWith('pictures-'));

    it('hold each picture once by date, and weigh less than 400 kB before they are scrolled', async () => {
      const byDate = pages().filter((page) => !page.startsWith('pictures-of/'));
      expect(byDate.length).toBeGreaterThan(3);
      const weights: Weight[] = [];
      for (const page of byDate) weights.push(await weigh(bench, page, 2));
      expect(weights.reduce((sum, one) => sum + one.pictures, 0)).toBe(3 * PICTURES + BUSY.sessions * BUSY.pictures);
      for (const { bytes, kinds } of weights) expect(bytes, JSON.stringify(kinds)).toBeLessThan(MOST_BYTES);
    });

    it('lead from the newest to the oldest, page by page', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}pictures.html`);
      let steps = 0;
      for (const next = page.locator('a[rel=next]'); (await next.count()) > 0; steps += 1) {
        const to = new URL((await next.getAttribute('href')) ?? '', page.url()).href;
        await next.click();
        await page.waitForURL(to);
      }
      expect(steps).toBe(pages().filter((one) => one.startsWith('pictures-by-date/')).length);
      expect(await page.locator('main h2').last().textContent()).toBe('February 2026');
      await page.close();
    });
  });

  links(bench);
  validity(bench);
});
