import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { visiting } from './visiting.ts';

export function search(bench: Bench): void {
  describe('search', () => {
    it('finds a part by a mark that is on it, from a disk and without a server', async () => {
      const context = await bench.browser.newContext();
      const { page, problems } = await visiting(context);
      await page.goto(pathToFileURL(`${bench.site.folder}/search.html`).href);
      await page.locator('#query').fill('C 4417');
      await expect.poll(() => page.locator('#results a').allInnerTexts()).toContain('Front brake drum, nearside');
      await page.locator('#results a', { hasText: 'Front brake drum, nearside' }).first().click();
      await page.waitForURL(/parts\/front-drum-near\.html/);
      await page.goBack();
      await expect.poll(() => page.locator('#query').inputValue()).toBe('C 4417');
      await context.close();
      expect(problems).toEqual([]);
    });

    it('keeps to a kind and a subsystem, and says when nothing is found', async () => {
      const page = await bench.browser.newPage();
      await page.goto(`${bench.served.address}search.html`);
      await page.locator('#query').fill('brake');
      const all = await page.locator('#results li').count();
      await page.locator('#kind').selectOption('bag');
      const kinds = await page.locator('#results .note').allInnerTexts();
      expect(kinds.length).toBeLessThan(all);
      expect(kinds.every((text) => text.trim().startsWith('bag'))).toBe(true);
      await page.locator('#query').fill('zzzz');
      expect(await page.locator('#found').textContent()).toMatch(/^Nothing found/);
      await page.close();
    });
  });
}
