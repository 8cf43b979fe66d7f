import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { oneOfEachKind } from '../built-site.ts';

export function withoutScript(bench: Bench): void {
  describe('without JavaScript', () => {
    it('each kind of page shows its heading and text, and search says what to do instead', async () => {
      const page = await bench.page({ javaScriptEnabled: false });
      const empty: string[] = [];
      for (const path of oneOfEachKind(bench.site.pages)) {
        // Its text is all there before its pictures have come.
        await page.goto(bench.served.address + path, { waitUntil: 'domcontentloaded' });
        const heading = (await page.locator('h1').textContent())?.trim() ?? '';
        const text = (await page.locator('main').textContent())?.trim() ?? '';
        if (heading === '' || text.length < heading.length + 40) empty.push(path);
      }
      expect(empty).toEqual([]);
      await page.goto(`${bench.served.address}search.html`);
      expect(await page.locator('#search').isVisible()).toBe(false);
      expect(await page.locator('#without-script a').first().isVisible()).toBe(true);
      await page.close();
    });
  });
}
