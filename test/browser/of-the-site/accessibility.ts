/** Each kind of page as it is opened, and by axe-core: by all its rules wide and light, by those that width or colour can change also narrow and dark. */
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { bringAxe } from '../axe.ts';
import type { Bench } from '../bench.ts';
import { oneOfEachKind, pageWith } from '../built-site.ts';
import { brokenPictures, visiting } from './visiting.ts';

/** What a colour, or what shows at a width, can make wrong that is right in the other pass. */
const CHANGED_BY_LOOKS = [
  'color-contrast',
  'link-in-text-block',
  'scrollable-region-focusable',
  'aria-hidden-focus',
  'button-name',
  'link-name',
  'empty-table-header',
];

/** How a page is looked at: by which rules, all of them where none is named. */
const LOOKS = [
  { colorScheme: 'light', width: 1400, rules: null },
  { colorScheme: 'dark', width: 390, rules: CHANGED_BY_LOOKS },
] as const;

/** One or the other half of the kinds of pages, each opened once for all that is asked of it: two files share them, as two processors can. */
export function kindsOfPages(half: 0 | 1): (bench: Bench) => void {
  return (bench) => {
    describe(`each kind of page, half ${half + 1} of 2`, () => {
      const wrong: string[] = [];
      const faults: string[] = [];
      const asked: string[] = [];
      beforeAll(async () => {
        const page = await bench.page({ viewport: { width: 1400, height: 900 } });
        const { problems, requests } = visiting(page);
        const kinds = oneOfEachKind(bench.site.pages).filter((_, index) => index % 2 === half);
        for (const path of kinds) {
          await page.emulateMedia({ colorScheme: LOOKS[0].colorScheme });
          await page.setViewportSize({ width: LOOKS[0].width, height: 900 });
          await page.goto(bench.served.address + path);
          await page.evaluate(async () => void (await document.fonts.ready));
          problems.push(...(await brokenPictures(page)).map((src) => `${path}: no picture ${src}`));
          faults.push(...(await faultsOfLooks(page)).map((fault) => `${path}, ${fault}`));
        }
        await page.close();
        wrong.push(...problems);
        asked.push(...requests);
        expect(kinds.length).toBeGreaterThan(15);
      });

      it('loads whole, says nothing on the console, and asks nothing of another site', () => {
        expect(wrong).toEqual([]);
        expect(asked.length).toBeGreaterThan(15);
        expect(asked.filter((url) => !url.startsWith(bench.served.address) && !url.startsWith('data:'))).toEqual([]);
      });

      it('has nothing that axe-core finds, wide and light, narrow and dark', () => {
        expect(faults).toEqual([]);
      });
    });
  };
}

/** Looks at an open page by axe-core, and at the same anew without opening it again. */
async function faultsOfLooks(page: Page): Promise<string[]> {
  const found: string[] = [];
  await bringAxe(page);
  for (const { colorScheme, width, rules } of LOOKS) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: 900 });
    // What scrolls is known to the style sheet a frame later.
    await page.evaluate(() => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen))));
    found.push(...(await violations(page, rules)).map((one) => `${colorScheme} and ${width} px wide: ${one}`));
  }
  return found;
}

export function accessiblePictures(bench: Bench): void {
  describe('accessibility', () => {
    it('axe-core finds nothing on pictures that are laid over each other, nor on one at its full size', async () => {
      const page = await bench.page();
      await page.goto(bench.served.address + pageWith(bench, 'class="compared" data-one-shape', 'parts/'));
      await bringAxe(page);
      await page.locator('.compared button').first().click();
      expect(await violations(page)).toEqual([]);
      await page.locator('.compared a:has(img)').first().click();
      await expect.poll(() => page.locator('dialog[open] img').count()).toBe(1);
      expect(await violations(page)).toEqual([]);
      await page.close();
    });
  });
}

/** What axe-core, loaded before, finds on the page as it is now. Without rules named: by all of them. */
async function violations(page: Page, rules: readonly string[] | null = null): Promise<string[]> {
  const options = { resultTypes: ['violations'], ...(rules ? { runOnly: rules } : {}) };
  const results = (await page.evaluate(`axe.run(document, ${JSON.stringify(options)})`)) as AxeResults;
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
}
