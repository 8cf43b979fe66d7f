import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

export function onPaper(bench: Bench): void {
  describe('on paper', () => {
    it('the register repeats its headings, and what is only for a screen is gone', async () => {
      const page = await bench.page();
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

    it('each place of the stores is a sheet that says whose and of when it is, with a box to tick beside each thing', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}stores.html`);
      const boxes = page.locator('.store-sheet .tick .box');
      const seen = () => boxes.evaluateAll((all) => all.filter((box) => box.getClientRects().length > 0).length);
      expect(await seen()).toBe(0);
      await page.emulateMedia({ media: 'print' });
      const things = await page.locator('.store-sheet:not(#gone) tbody tr').count();
      expect(things).toBeGreaterThan(20);
      expect(await seen()).toBe(things);
      const sheets = await page.locator('.store-sheet').evaluateAll((all) =>
        all.map((each) => ({
          own: getComputedStyle(each).breakBefore,
          head: (each.querySelector('h2')?.textContent ?? '') + (each.querySelector('.on-paper')?.textContent ?? ''),
        })),
      );
      expect(sheets.map(({ own }) => own)).toEqual(sheets.map(() => 'page'));
      for (const { head } of sheets) expect(head).toMatch(/^\w.*as it stood on \d/);
      expect(await page.locator('section.on-screen').first().isVisible()).toBe(false);
      await page.close();
    });

    it('each letter of a month is one sheet', { timeout: 60_000 }, async () => {
      const page = await bench.page();
      const letters = bench.site.pages.filter((path) => path.startsWith('letters/'));
      expect(letters.length).toBeGreaterThan(10);
      for (const letter of letters) {
        await page.goto(`${bench.served.address}${letter}`);
        const pdf = await PDFDocument.load(await page.pdf({ preferCSSPageSize: true }));
        expect(pdf.getPageCount(), letter).toBe(1);
      }
      await page.close();
    });

    it('things to buy are a sheet to take to a sale, with a box to tick for each and nothing after them', async () => {
      const page = await bench.page();
      await page.emulateMedia({ media: 'print' });
      await page.goto(`${bench.served.address}items.html`);
      const rows = await page.locator('#buy tbody tr').count();
      expect(rows).toBeGreaterThan(2);
      expect(await page.locator('#buy .tick .box').count()).toBe(rows);
      expect(await page.locator('#buy .tick .box').first().isVisible()).toBe(true);
      const breaks = await page.locator('#buy, #buy + *').evaluateAll((all) => all.map((each) => getComputedStyle(each).breakBefore));
      expect(breaks).toEqual(['page', 'page']);
      await page.close();
    });

    it.each(['register.html', 'ledger.html'])('the figures behind the drawings of %s lie open', async (name) => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}${name}`);
      const visible = () =>
        page
          .locator('details.printed tbody tr:last-child')
          .evaluateAll((rows) => rows.map((row) => row.checkVisibility({ contentVisibilityAuto: true })));
      const folded = await visible();
      expect(folded.length).toBeGreaterThan(0);
      expect(folded).toEqual(folded.map(() => false));
      await page.emulateMedia({ media: 'print' });
      await page.reload();
      expect(await visible()).toEqual(folded.map(() => true));
      await page.close();
    });

    it('what the drawings show stands beside them in words, and the name of each lane of a life is on the sheet', async () => {
      const page = await bench.browser.newPage();
      await page.goto(`${bench.served.address}drawings.html`);
      const words = page.locator('details.in-words');
      const seen = () =>
        words.evaluateAll((all) => all.map((one) => one.lastElementChild?.checkVisibility({ contentVisibilityAuto: true })));
      expect(await seen()).toEqual([false, false]);
      await page.emulateMedia({ media: 'print' });
      await page.reload();
      expect(await seen()).toEqual([true, true]);
      await page.goto(`${bench.served.address}parts/front-drum-near.html`);
      const names = page.locator('.life .for-page > text');
      const left = await names.evaluateAll((all) => all.map((name) => name.getBoundingClientRect().left));
      const edge = await page.locator('main').evaluate((main) => main.getBoundingClientRect().left);
      expect(left.length).toBeGreaterThan(2);
      expect(Math.min(...left)).toBeGreaterThanOrEqual(edge);
      await page.close();
    });
  });
}
