/** axe-core on each kind of page, in both colour schemes, wide and narrow. */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { oneOfEachKind } from '../built-site.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

export function accessibility(bench: Bench): void {
  describe('accessibility', () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`axe-core finds nothing on any kind of page, ${colorScheme}`, { timeout: 180_000 }, async () => {
        const width = colorScheme === 'light' ? 1400 : 390;
        // The policy of the pages keeps foreign scripts out; the tester's own has to come in beside it.
        const context = await bench.browser.newContext({ colorScheme, bypassCSP: true, viewport: { width, height: 900 } });
        const page = await context.newPage();
        const found: string[] = [];
        for (const path of oneOfEachKind(bench.site.pages)) {
          await page.goto(bench.served.address + path);
          await page.addScriptTag({ path: AXE });
          const results = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as AxeResults;
          found.push(...results.violations.map(({ id, nodes }) => `${path}: ${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`));
        }
        await context.close();
        expect(found).toEqual([]);
      });
    }
  });
}
