import type { Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { oneOfEachKind } from '../built-site.ts';
import { ON_A_PHONE } from '../readers.ts';

/** Runs in the page before it: writes each shift of its layout into the page. */
function noteShifts(): void {
  new PerformanceObserver((list) => {
    const shifts = list.getEntries().map((one) => ('value' in one ? Number(one.value).toFixed(4) : '?'));
    document.documentElement.dataset.shifts = `${document.documentElement.dataset.shifts ?? ''} ${shifts.join(' ')}`;
  }).observe({ type: 'layout-shift', buffered: true });
}

/** Runs in the page: what has come is painted. */
const twoFrames = (): Promise<unknown> => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen)));

export function onTheWeb(bench: Bench): void {
  describe('on the web, below any path', () => {
    it('on a narrow page nothing moves when its faces come late, and nothing but a table is wider than the page in others', async () => {
      // Of a reader who has fetched nothing yet.
      const context = await bench.browser.newContext(ON_A_PHONE);
      const page = await context.newPage();
      const held: Route[] = [];
      await page.route(/\.woff2$/, (route) => void held.push(route));
      await page.addInitScript(noteShifts);
      const moved: string[] = [];
      const wide: string[] = [];
      let late = 0;
      for (const path of oneOfEachKind(bench.site.pages)) {
        await page.goto(bench.served.address + path, { waitUntil: 'domcontentloaded' });
        await page.evaluate(twoFrames);
        late += held.length;
        await Promise.all(held.splice(0).map((route) => route.continue()));
        await page.waitForLoadState('load');
        await page.evaluate(async () => void (await document.fonts.ready));
        await page.evaluate(twoFrames);
        const shifts = await page.evaluate(() => document.documentElement.dataset.shifts);
        if (shifts !== undefined) moved.push(`${path}: ${shifts}`);
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        if (width > 390) wide.push(`${path} is ${width} wide`);
      }
      await context.close();
      expect(moved).toEqual([]);
      expect(wide).toEqual([]);
      expect(late).toBeGreaterThan(0);
    });

    it('on a narrow page the contents and the steps are 44 px high at least', async () => {
      const page = await bench.page(ON_A_PHONE);
      await page.goto(`${bench.served.address}sessions.html`);
      const heights = await page
        .locator('.endnote .contents a, .masthead .to-contents, .masthead .name')
        .evaluateAll((links) => links.map((link) => link.getBoundingClientRect().height));
      await page.close();
      expect(heights.length).toBeGreaterThan(10);
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
    });
  });
}
