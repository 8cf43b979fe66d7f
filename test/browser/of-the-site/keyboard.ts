import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

export function keyboard(bench: Bench): void {
  describe('by keyboard', () => {
    it('the first stop skips to the page, and from there the next stop is inside it', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}ledger.html`);
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
      expect(await page.locator('.skip').evaluate((link) => link.getBoundingClientRect().top)).toBeGreaterThanOrEqual(0);
      await page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.closest('main') !== null)).toBe(true);
      await page.close();
    });

    it('every link of the contents is reached in its order, each with an outline that is seen', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}index.html`);
      const wanted = await page.locator('.masthead nav a').allTextContents();
      const reached: string[] = [];
      for (let stop = 0; stop < wanted.length + 2; stop += 1) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
          const element = document.activeElement as HTMLElement;
          return { text: element.textContent, outline: getComputedStyle(element).outlineStyle, nav: element.closest('nav') !== null };
        });
        if (at.nav) {
          reached.push(at.text);
          expect(at.outline, at.text).toBe('solid');
        }
      }
      expect(reached).toEqual(wanted);
      await page.close();
    });

    it('a schedule that is wider than the page is scrolled with the arrows', async () => {
      const page = await bench.page({ viewport: { width: 390, height: 844 } });
      await page.goto(`${bench.served.address}ledger.html`);
      const table = page.locator('.scroll', { has: page.locator('table.of-minutes') }).last();
      await table.focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => table.evaluate((box) => box.scrollLeft)).toBeGreaterThan(0);
      await page.close();
    });
  });
}
