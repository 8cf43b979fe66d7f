import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { visiting } from './visiting.ts';

export function search(bench: Bench): void {
  describe('search', () => {
    it('finds a part by a mark that is on it, from a disk and without a server', async () => {
      const page = await bench.page();
      const { problems } = visiting(page);
      await page.goto(pathToFileURL(`${bench.site.folder}/search.html`).href);
      await page.locator('#query').fill('C 4417');
      await expect.poll(() => page.locator('#results a').allInnerTexts()).toContain('Front brake drum, nearside');
      await page.locator('#results a', { hasText: 'Front brake drum, nearside' }).first().click();
      await page.waitForURL(/parts\/front-drum-near\.html/);
      await page.goBack();
      await expect.poll(() => page.locator('#query').inputValue()).toBe('C 4417');
      await page.close();
      expect(problems).toEqual([]);
    });

    it('asks for what stands in the address as it stands, however badly it is encoded; no other script stumbles over it', async () => {
      const page = await bench.page();
      const { problems } = visiting(page);
      await page.goto(`${bench.served.address}search.html#q=50%`);
      expect(await page.locator('#query').inputValue()).toBe('50%');
      await page.goto(`${bench.served.address}search.html#q=hub%20cap`);
      await page.reload();
      expect(await page.locator('#query').inputValue()).toBe('hub cap');
      for (const path of ['ledger/entries.html', 'any-day.html', 'register.html', 'pictures.html', 'before-and-after.html'])
        for (const typed of ['#%', '#%E0%A4%A', '#__proto__', '#q=%', '#"><b>']) await page.goto(bench.served.address + path + typed);
      expect(problems).toEqual([]);
      await page.close();
    });

    it('finds the part of every mark in the record, typed as it is written', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}search.html`);
      const marked = await page.evaluate(() =>
        (globalThis.asfoundDocuments ?? []).flatMap(({ m, h }) => (m === undefined ? [] : [{ m, h }])),
      );
      expect(marked.length).toBeGreaterThan(20);
      const lost: string[] = [];
      for (const { m, h } of marked) {
        await page.locator('#query').fill(m);
        const found = await page.locator('#results a').evaluateAll((links) => links.map((link) => link.getAttribute('href')));
        if (!found.includes(h)) lost.push(m);
      }
      expect(lost).toEqual([]);
      await page.close();
    });

    it('finds what was measured, by the thing and by its value', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}search.html`);
      await page.locator('#kind').selectOption('measurement');
      for (const asked of ['inside diameter', '9.048']) {
        await page.locator('#query').fill(asked);
        await expect.poll(() => page.locator('#results a').allInnerTexts()).toContain('Front brake drum, nearside: inside diameter');
      }
      await page.locator('#results a', { hasText: 'Front brake drum, nearside' }).first().click();
      await page.waitForURL(/parts\/front-drum-near\.html#measured$/);
      await page.close();
    });

    it('keeps to a kind and a subsystem, and says when nothing is found', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}search.html`);
      await page.locator('#query').fill('brake');
      const all = await page.locator('#results li').count();
      const kinds = await page.locator('#kind option').evaluateAll((options) => options.map((each) => (each as HTMLOptionElement).value));
      const counts: number[] = [];
      for (const kind of kinds.filter((each) => each !== '')) {
        await page.locator('#kind').selectOption(kind);
        const notes = await page.locator('#results .note').allInnerTexts();
        expect(notes.filter((text) => !text.trim().startsWith(kind))).toEqual([]);
        counts.push(notes.length);
      }
      expect(counts.filter((count) => count > 0).length).toBeGreaterThan(4);
      expect(counts.reduce((sum, count) => sum + count)).toBe(all);
      await page.locator('#kind').selectOption('part');
      await page.locator('#subsystem').selectOption('brakes');
      const inBrakes = await page.locator('#results a').evaluateAll((links) => links.map((link) => link.getAttribute('href')));
      const brakes = await page.evaluate(() => (globalThis.asfoundDocuments ?? []).filter(({ s }) => s === 'brakes').map(({ h }) => h));
      expect(inBrakes.length).toBeGreaterThan(3);
      expect(inBrakes.filter((href) => !brakes.includes(href ?? ''))).toEqual([]);
      await page.locator('#subsystem').selectOption('trim');
      const inTrim = await page.locator('#results li').count();
      expect(inTrim).toBeLessThan(inBrakes.length);
      await page.locator('#query').fill('zzzz');
      expect(await page.locator('#found').textContent()).toMatch(/^Nothing found/);
      await page.close();
    });
  });
}
