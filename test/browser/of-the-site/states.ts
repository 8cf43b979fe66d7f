/** The state of a position beside its name in a text. The conditions are those of WCAG 2.2, success criterion 1.4.13 (W3C Recommendation, December 2024). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { visiting } from './visiting.ts';

const NAMED = '.prose a[href*="parts/"]:not(:has(img))';

/** The first session whose text names a position, and what it is called there. */
function naming(bench: Bench): string {
  const page = bench.site.pages.find((path) => {
    if (!path.startsWith('sessions/2')) return false;
    return /<div class="prose">[\s\S]*?<p>[^<]*<a href="\.\.\/parts\//.test(readFileSync(join(bench.site.folder, path), 'utf8'));
  });
  if (page === undefined) throw new Error('no session names a position');
  return page;
}

export function states(bench: Bench): void {
  const opened = async (options: BrowserContextOptions = {}, from = bench.served.address) => {
    const page = await bench.page(options);
    const { problems } = visiting(page);
    await page.goto(from + naming(bench));
    return { page, problems, link: page.locator(NAMED).first(), words: page.locator('#state-of-it') };
  };
  const registerSays = async (page: Page, link: string): Promise<string> => {
    await page.goto(`${bench.served.address}register.html`);
    return (
      (await page.locator(`.register tr:has(th a[href="${link.replace('../', '').replace(/#.*/, '')}"]) .outcome`).textContent()) ?? ''
    );
  };

  describe('the state of a position that a text names', () => {
    it('stands beside the link while a pointer rests on it, as the register says it, from a disk too', async () => {
      const { page, problems, link, words } = await opened({}, pathToFileURL(`${bench.site.folder}/`).href);
      expect(await words.isVisible()).toBe(false);
      await link.hover();
      await words.waitFor();
      const said = (await words.textContent()) ?? '';
      const outcome = await registerSays(page, (await link.getAttribute('href')) ?? '');
      expect(outcome).not.toBe('');
      expect(said).toContain(outcome);
      expect(problems).toEqual([]);
      await page.close();
    });

    it('goes by Escape without a move of the pointer, and comes again when the pointer comes again', async () => {
      const { page, link, words } = await opened();
      await link.hover();
      await words.waitFor();
      await page.keyboard.press('Escape');
      expect(await words.isVisible()).toBe(false);
      await page.mouse.move(1, 1);
      await link.hover();
      await words.waitFor();
      await page.close();
    });

    it('stays while the pointer is on it, and goes when it leaves', async () => {
      const { page, link, words } = await opened();
      await link.hover();
      await words.waitFor();
      await words.hover();
      await page.waitForTimeout(1000);
      expect(await words.isVisible()).toBe(true);
      await page.mouse.move(1, 1);
      await words.waitFor({ state: 'hidden' });
      await page.close();
    });

    it('stands beside the link that the keyboard is on, told once as what describes it, and lies within the window', async () => {
      const { page, link, words } = await opened({ viewport: { width: 390, height: 700 } });
      await link.evaluate((one) => {
        const before = document.createElement('button');
        one.before(before);
        before.focus();
      });
      await page.keyboard.press('Tab');
      await words.waitFor();
      expect(await link.getAttribute('aria-describedby')).toBe('state-of-it');
      const box = await words.boundingBox();
      expect([box !== null && box.x >= 0, box !== null && box.x + box.width <= 390]).toEqual([true, true]);
      await link.blur();
      await words.waitFor({ state: 'hidden' });
      expect(await link.getAttribute('aria-describedby')).toBe(null);
      await page.close();
    });

    it('by touch a link is a link', async () => {
      const { page, link } = await opened({ hasTouch: true });
      const to = (await link.getAttribute('href')) ?? '';
      await link.tap();
      await page.waitForURL((url) => url.pathname.endsWith(to.replace('..', '').replace(/#.*/, '')));
      await page.close();
    });
  });
}
