/** The page of any day: what the browser works out is what the pages of past days say, and a day can be linked to. */
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { visiting } from './visiting.ts';

/** What is said of each position, of what lies off the vehicle, and of money and hours. */
const TABLES = '.register tbody tr, .store tbody tr, .totals tr, .reconcile tr, .budgets tr, .shelf tr';

const saidOn = (page: Page): Promise<string[]> =>
  page.locator(TABLES).evaluateAll((rows) => rows.map((row) => (row.textContent ?? '').replace(/\s+/g, ' ').trim()));

export function anyDay(bench: Bench): void {
  describe('any day', () => {
    it('from a disk, says of a shown day what its three pages say', async () => {
      const page = await bench.page();
      const { problems } = visiting(page);
      const open = (path: string) => page.goto(pathToFileURL(`${bench.site.folder}/`).href + path);
      const shown = bench.site.pages.flatMap((path) => /^register\/(.+)\.html$/.exec(path)?.[1] ?? []);
      expect(shown.length).toBeGreaterThan(12);
      for (const day of [shown[0], shown[Math.floor(shown.length / 2)], shown.at(-1)]) {
        const said: string[] = [];
        for (const path of [`register/${day}.html`, `as-at/${day}.html`, `ledger/as-at/${day}.html`]) {
          await open(path);
          said.push(...(await saidOn(page)));
        }
        await open(`any-day.html#${day}`);
        await page.locator('#shown h2#ledger').waitFor();
        expect(await saidOn(page)).toEqual(said);
      }
      expect(problems).toEqual([]);
      await page.close();
    });

    it('any other day is asked for by its date, stands in the address, and its links lead somewhere', async () => {
      const page = await bench.page();
      const { problems } = visiting(page);
      await page.goto(`${bench.served.address}any-day.html`);
      expect(await page.locator('#shown').textContent()).toBe('');
      await page.locator('#day').fill('2025-04-05');
      expect(await page.locator('h1').textContent()).toBe('As it stood on 5 April 2025');
      expect(new URL(page.url()).hash).toBe('#2025-04-05');
      const links = await page
        .locator('#shown a')
        .evaluateAll((all) => all.map((link) => new URL(link.getAttribute('href') ?? '', document.baseURI).href));
      const pages = new Set(links.filter((link) => !link.includes('any-day.html')).map((link) => link.replace(/#.*$/, '')));
      expect(pages.size).toBeGreaterThan(100);
      for (const link of pages) expect(bench.site.pages).toContain(link.slice(bench.served.address.length));
      await page.locator('#shown a', { hasText: 'The ledger' }).click();
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('ledger');
      await page.reload();
      expect(await page.locator('h1').textContent()).toBe('As it stood on 5 April 2025');
      expect(problems).toEqual([]);
      await page.close();
    });

    it('a day before the vehicle arrived, or after the last note, is told as none', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}any-day.html#2025-04-05`);
      await page.locator('#day').fill('1999-01-01');
      expect(await page.locator('#shown').textContent()).toBe('');
      expect(await page.locator('#said').textContent()).not.toBe('');
      await page.close();
    });

    it('without a script, the days that have pages are listed', async () => {
      const page = await bench.page({ javaScriptEnabled: false });
      await page.goto(`${bench.served.address}any-day.html`);
      expect(await page.locator('#any-day').isVisible()).toBe(false);
      expect(await page.locator('#without-script a').count()).toBeGreaterThan(12);
      await page.close();
    });
  });
}
