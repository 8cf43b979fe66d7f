/** axe-core on each kind of page: all its rules wide and light, those that width or colour can change also narrow and dark. */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { oneOfEachKind, pageWith } from '../built-site.ts';

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

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** How a page is looked at: by which rules, all of them where none is named. */
const LOOKS = [
  { colorScheme: 'light', width: 1400, rules: null },
  { colorScheme: 'dark', width: 390, rules: CHANGED_BY_LOOKS },
] as const;

/** One or the other half of the kinds of pages: two files share them, as two processors can. */
export function accessibleKinds(half: 0 | 1): (bench: Bench) => void {
  return (bench) => {
    it(`axe-core finds nothing on any kind of page, wide and light, narrow and dark, half ${half + 1} of 2`, async () => {
      // The policy of the pages keeps foreign scripts out; the tester's own has to come in beside it.
      const context = await bench.browser.newContext({ bypassCSP: true });
      const page = await context.newPage();
      const found: string[] = [];
      const kinds = oneOfEachKind(bench.site.pages).filter((_, index) => index % 2 === half);
      expect(kinds.length).toBeGreaterThan(15);
      for (const path of kinds) found.push(...(await faultsOfLooks(page, bench.served.address, path)));
      await context.close();
      expect(found).toEqual([]);
    });
  };
}

/** Opens a page as it is first looked at, and looks at it anew without opening it again. */
async function faultsOfLooks(page: Page, address: string, path: string): Promise<string[]> {
  const found: string[] = [];
  for (const [index, { colorScheme, width, rules }] of LOOKS.entries()) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: 900 });
    if (index === 0) {
      await page.goto(address + path);
      await page.addScriptTag({ path: AXE });
    }
    // What scrolls is known to the style sheet a frame later.
    await page.evaluate(() => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen))));
    found.push(...(await violations(page, rules)).map((one) => `${path}, ${colorScheme} and ${width} px wide: ${one}`));
  }
  return found;
}

export function accessiblePictures(bench: Bench): void {
  describe('accessibility', () => {
    it('axe-core finds nothing on pictures that are laid over each other, nor on one at its full size', async () => {
      const context = await bench.browser.newContext({ bypassCSP: true });
      const page = await context.newPage();
      await page.goto(bench.served.address + pageWith(bench, 'class="compared" data-one-shape', 'parts/'));
      await page.addScriptTag({ path: AXE });
      await page.locator('.compared button').first().click();
      expect(await violations(page)).toEqual([]);
      await page.locator('.compared a:has(img)').first().click();
      await expect.poll(() => page.locator('dialog[open] img').count()).toBe(1);
      expect(await violations(page)).toEqual([]);
      await context.close();
    });
  });
}

/** What axe-core, loaded before, finds on the page as it is now. Without rules named: by all of them. */
async function violations(page: Page, rules: readonly string[] | null = null): Promise<string[]> {
  const options = { resultTypes: ['violations'], ...(rules ? { runOnly: rules } : {}) };
  const results = (await page.evaluate(`axe.run(document, ${JSON.stringify(options)})`)) as AxeResults;
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
}
