/** A picture at its full size, and the same view as found and as left. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { pageWith } from '../built-site.ts';

const PHONE: BrowserContextOptions = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true };

export function pictures(bench: Bench): void {
  const opened = async (path: string, options: BrowserContextOptions = {}): Promise<Page> => {
    const page = await bench.page(options);
    await page.goto(bench.served.address + path);
    return page;
  };
  /** The picture that the full-size view shows, by its file; null when the view is closed. */
  const shown = (page: Page): Promise<string | null> =>
    page.evaluate(() => document.querySelector<HTMLImageElement>('dialog[open] img')?.currentSrc.split('/').pop()?.split('-')[0] ?? null);
  const count = (page: Page): Promise<string | null> => page.locator('dialog .controls p').textContent();

  describe('a picture at its full size', () => {
    it('opens with Enter, steps with the arrows, and Escape leads back to where one was', async () => {
      const page = await opened('pictures.html');
      const link = page.locator('main a:has(img)').nth(2);
      await link.focus();
      await page.keyboard.press('Enter');
      const first = await shown(page);
      expect(await link.getAttribute('href')).toContain(first);
      expect(await count(page)).toMatch(/^3 of \d+$/);
      await page.keyboard.press('ArrowRight');
      expect(await count(page)).toMatch(/^4 of /);
      await expect.poll(() => shown(page)).not.toBe(first);
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('ArrowLeft');
      expect(await count(page)).toMatch(/^2 of /);
      await page.keyboard.press('Home');
      await page.keyboard.press('ArrowLeft');
      expect(await count(page)).toMatch(/^1 of /);
      const scrolled = await page.evaluate(() => window.scrollY);
      await page.keyboard.press('Escape');
      await expect.poll(() => shown(page)).toBeNull();
      expect(await link.evaluate((element) => element === document.activeElement)).toBe(true);
      expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);
      await page.close();
    });

    it('is left by the way back, which does not leave the page', async () => {
      const page = await opened('pictures.html');
      await page.locator('main a:has(img)').first().click();
      await expect.poll(() => shown(page)).not.toBeNull();
      await page.goBack();
      await expect.poll(() => shown(page)).toBeNull();
      expect(page.url()).toBe(`${bench.served.address}pictures.html`);
      await page.close();
    });

    it('steps by swipes, and is inside the screen with all its buttons', async () => {
      const page = await opened('pictures.html', PHONE);
      await page.locator('main a:has(img)').first().tap();
      const fits = await page
        .locator('dialog')
        .evaluate((dialog) => dialog.scrollWidth <= innerWidth && dialog.scrollHeight <= innerHeight);
      expect(fits).toBe(true);
      const heights = await page.locator('dialog button').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await swipe(page, 300, 80);
      expect(await count(page)).toMatch(/^2 of /);
      await swipe(page, 80, 300);
      expect(await count(page)).toMatch(/^1 of /);
      await page.locator('dialog button', { hasText: 'Close' }).tap();
      await expect.poll(() => shown(page)).toBeNull();
      await page.close();
    });

    it('is the file itself where there is no script', async () => {
      const page = await opened('pictures.html', { javaScriptEnabled: false });
      await page.locator('main a:has(img)').first().click();
      await page.waitForURL(/\/pictures\/[0-9a-f]{16}-\d+\.webp$/);
      await page.goBack();
      await page.waitForURL(/pictures\.html$/);
      await page.close();
    });
  });

  describe('on paper a picture', () => {
    /** CSS pixels of a millimetre. */
    const MM = 96 / 25.4;
    const widthOf = async (path: string, which: string): Promise<number> => {
      // As wide as what A4 leaves between its margins.
      const page = await opened(path, { viewport: { width: Math.round(180 * MM), height: 1000 } });
      await page.emulateMedia({ media: 'print' });
      // Before it prints a browser loads what waits to be seen, and a picture that is not there has no width.
      await page.locator(`:is(${which}):is(img)`).evaluateAll((all) =>
        Promise.all(
          all.map((one) => {
            if (!(one instanceof HTMLImageElement)) return undefined;
            one.loading = 'eager';
            return one.complete
              ? undefined
              : new Promise((resolve) => ['load', 'error'].forEach((type) => void one.addEventListener(type, resolve)));
          }),
        ),
      );
      const boxes = await page.locator(which).evaluateAll((all) => all.map((one) => one.getBoundingClientRect().width));
      await page.close();
      return Math.min(...boxes) / MM;
    };

    it('of a note is as wide as its text, one of all as wide as a third of the sheet, two side by side half of it each', async () => {
      expect(await widthOf(pageWith(bench, '<figure class="picture">', 'sessions/'), '.prose figure.picture img')).toBeGreaterThan(85);
      expect(await widthOf('pictures.html', 'main figure:not(.tall) img')).toBeGreaterThan(50);
      expect(await widthOf(pageWith(bench, 'class="compared"', 'parts/'), '.compared img')).toBeGreaterThan(80);
    });
  });

  describe('as found beside as left', () => {
    const PAIR = 'class="compared" data-one-shape';

    it('stand beside each other without a script, on a narrow page too', async () => {
      const page = await opened(pageWith(bench, PAIR, 'parts/'), { ...PHONE, javaScriptEnabled: false });
      const captions = await page.locator('.compared figcaption').allTextContents();
      expect(captions.map((text) => text.trim().slice(0, 8))).toEqual(['As found', 'As left.']);
      const boxes = await page.locator('.compared img').evaluateAll((all) => all.map((one) => one.getBoundingClientRect()));
      expect(boxes[0]?.top).toBe(boxes[1]?.top);
      expect(boxes[0]?.right).toBeLessThan(boxes[1]?.left ?? 0);
      expect(await page.locator('.compared input').count()).toBe(0);
      await page.close();
    });

    it('are laid over each other by a script, and the arrows move what divides them', async () => {
      const page = await opened(pageWith(bench, PAIR, 'parts/'));
      const problems: string[] = [];
      page.on('console', (message) => problems.push(message.text()));
      const button = page.locator('.compared button').first();
      await button.focus();
      await page.keyboard.press('Enter');
      const clip = (): Promise<string> =>
        page
          .locator('.compared figure + figure picture')
          .first()
          .evaluate((picture) => getComputedStyle(picture).clipPath);
      expect(await clip()).toBe('inset(0px 0px 0px 50%)');
      for (let n = 0; n < 3; n += 1) await page.keyboard.press('ArrowRight');
      expect(await clip()).toBe('inset(0px 0px 0px 53%)');
      await button.click();
      expect(await clip()).toBe('none');
      expect(await page.locator('.compared input').first().isVisible()).toBe(false);
      expect(problems).toEqual([]);
      await page.close();
    });
  });
}

/** One finger across the middle of the picture, which rests before it is lifted: the next tap would else only stop a fling. */
async function swipe(page: Page, from: number, to: number): Promise<void> {
  const touch = await page.context().newCDPSession(page);
  const at = (x: number) => [{ x, y: 300 }];
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(from) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at((from + to) / 2) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(to) });
  await page.waitForTimeout(250);
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(to) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
