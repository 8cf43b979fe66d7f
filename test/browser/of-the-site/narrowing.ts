/** The register narrowed to an outcome, an origin and a subsystem, and what nobody doubts folded away. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

const ROWS = '.register tr[data-outcome]';

export function narrowing(bench: Bench): void {
  const opened = async (javaScriptEnabled = true): Promise<Page> => {
    const page = await bench.page({ javaScriptEnabled });
    await page.goto(`${bench.served.address}register.html`);
    return page;
  };
  const shown = (page: Page, cells = 'th'): Promise<string[]> =>
    page
      .locator(ROWS)
      .evaluateAll(
        (rows, asked) => rows.filter((row) => row.checkVisibility()).map((row) => row.querySelector(asked)?.textContent ?? ''),
        cells,
      );

  describe('the entries of the ledger', () => {
    it('are narrowed to a kind, a subsystem and words, months without any out of sight and the rest open', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}ledger/entries.html`);
      const rows = (): Promise<string[]> =>
        page
          .locator('.entries tr[data-on]')
          .evaluateAll((all) =>
            (all as HTMLTableRowElement[])
              .filter((row) => row.checkVisibility())
              .map((row) => [...row.cells].map((cell) => cell.textContent).join(' ')),
          );
      const folded = (await rows()).length;
      for (const list of ['kind', 'on']) {
        const choices = page.locator(`#narrow-${list} option:not([value=""])`);
        for (const [n, words] of (await choices.allTextContents()).entries()) {
          await page.locator(`#narrow-${list}`).selectOption({ index: n + 1 });
          expect(`${words}: ${(await rows()).length}`).toBe(`${words}: ${/\((\d+)\)$/.exec(words)?.[1]}`);
        }
        await page.locator(`#narrow-${list}`).selectOption('');
      }
      await page.locator('#narrow-kind').selectOption('Labour');
      await page.locator('#narrow-words').fill('mundle work');
      const left = await rows();
      expect(left.length).toBeGreaterThan(0);
      expect(left.filter((row) => !/Jory Mundle/.test(row) || !/\bwork/i.test(row))).toEqual([]);
      expect(await page.locator('#narrowed').textContent()).toBe(
        `${left.length} of ${await page.locator('.entries tr[data-on]').count()} entries.`,
      );
      expect(await page.locator('.entries tfoot').first().isVisible()).toBe(false);
      expect(folded).toBeLessThan(await page.locator('.entries tr[data-on]').count());
      await page.close();
    });

    it('lie open where a link leads into a month', async () => {
      const page = await bench.page();
      await page.goto(`${bench.served.address}ledger/entries.html#2025-03`);
      await expect.poll(() => page.locator('[id="2025-03"] .entries').isVisible()).toBe(true);
      expect(await page.locator('[id="2025-02"] .entries').isVisible()).toBe(false);
      await page.close();
    });
  });

  describe('the register', () => {
    it('is narrowed to an outcome, and each list says beside a choice how many rows it leaves', async () => {
      const page = await opened();
      for (const list of ['outcome', 'origin', 'subsystem']) {
        const choices = page.locator(`#narrow-${list} option:not([value=""])`);
        for (const [n, words] of (await choices.allTextContents()).entries()) {
          await page.locator(`#narrow-${list}`).selectOption({ index: n + 1 });
          expect(`${words}: ${(await shown(page)).length}`).toBe(`${words}: ${/\((\d+)\)$/.exec(words)?.[1]}`);
        }
        await page.locator(`#narrow-${list}`).selectOption('');
      }
      await page.locator('#narrow-outcome').selectOption('kept, repaired');
      const outcomes = await shown(page, '.outcome');
      expect(outcomes.length).toBeGreaterThan(3);
      expect(outcomes.filter((words) => !words.startsWith('Kept, repaired'))).toEqual([]);
      await page.locator('#narrow-subsystem').selectOption('brakes');
      expect((await shown(page)).length).toBeLessThan(outcomes.length);
      await expect
        .poll(() => page.locator('.register tbody').evaluateAll((all) => all.filter((body) => body.checkVisibility()).length))
        .toBe(1);
      expect(await page.locator('#narrowed').textContent()).toMatch(/^\d+ of \d+ positions\.$/);
      await page.close();
    });

    it('folds away what nobody doubts, without a script too', async () => {
      const page = await opened(false);
      expect(await page.locator('#narrow').isVisible()).toBe(false);
      const all = (await shown(page)).length;
      const said = Number(/(\d+) untouched/.exec((await page.locator('.fold').textContent()) ?? '')?.[1]);
      expect(said).toBeGreaterThan(20);
      await page.locator('#fold').check();
      expect((await shown(page)).length).toBe(all - said);
      const left = await shown(page, '.outcome');
      expect(left).toContain('Undecided');
      await page.close();
    });

    it('keeps its headings in sight on a wide page', async () => {
      const page = await opened();
      await page.setViewportSize({ width: 1400, height: 900 });
      await page.evaluate(() => scrollTo(0, 3000));
      const tops = await page.locator('.register thead th').evaluateAll((heads) => heads.map((head) => head.getBoundingClientRect().top));
      expect(tops.map(Math.round)).toEqual(tops.map(() => 0));
      await page.close();
    });
  });
}
