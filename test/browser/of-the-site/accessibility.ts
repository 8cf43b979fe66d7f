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

export function accessibility(bench: Bench): void {
  describe('accessibility', () => {
    for (const [colorScheme, width, rules] of [
      ['light', 1400, null],
      ['dark', 390, CHANGED_BY_LOOKS],
    ] as const) {
      it(`axe-core finds nothing on any kind of page, ${colorScheme} and ${width} px wide`, async () => {
        // The policy of the pages keeps foreign scripts out; the tester's own has to come in beside it.
        const context = await bench.browser.newContext({ colorScheme, bypassCSP: true, viewport: { width, height: 900 } });
        const page = await context.newPage();
        const found: string[] = [];
        for (const path of oneOfEachKind(bench.site.pages)) {
          await page.goto(bench.served.address + path);
          await page.addScriptTag({ path: AXE });
          found.push(...(await violations(page, rules)).map((one) => `${path}: ${one}`));
        }
        await context.close();
        expect(found).toEqual([]);
      });
    }

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
