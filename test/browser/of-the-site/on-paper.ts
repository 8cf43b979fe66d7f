import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

export function onPaper(bench: Bench): void {
  describe('on paper', () => {
    it('the register repeats its headings, and what is only for a screen is gone', async () => {
      const page = await bench.browser.newPage();
      await page.emulateMedia({ media: 'print' });
      await page.goto(`${bench.served.address}register.html`);
      const head = await page.locator('table.register thead').evaluate((element) => getComputedStyle(element).display);
      expect(head).toBe('table-header-group');
      expect(await page.locator('.masthead nav').isVisible()).toBe(false);
      expect(await page.locator('.endnote .contents').isVisible()).toBe(false);
      const line = await page
        .locator('table.register tbody a')
        .first()
        .evaluate((link) => getComputedStyle(link).textDecorationLine);
      expect(line).toBe('none');
      const cut = await page
        .locator('.scroll')
        .evaluateAll((boxes) => boxes.filter((box) => getComputedStyle(box).overflowX !== 'visible').length);
      expect(cut).toBe(0);
      await page.close();
    });
  });
}
