/** On a phone: what is listed reads down the page, what must be wide says so, and links have room for a finger. */
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

/** Lists of things, which a restorer looks up with one hand. */
const LISTS = ['parts.html', 'stores.html', 'methods.html', 'measurements.html', 'papers.html', 'ledger/entries/subsystem-brakes.html'];
/** The least side of what a finger is to hit: WCAG 2.2, success criterion 2.5.5. */
const FINGER = 44;

export function onAPhone(bench: Bench): void {
  const onPhone = async <T>(path: string, ask: () => T): Promise<T> => {
    const context = await bench.browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const page = await context.newPage();
    await page.goto(bench.served.address + path);
    // What scrolls is known to the style sheet a frame later.
    await page.evaluate(() => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen))));
    const answer = (await page.evaluate(ask)) as T;
    await context.close();
    return answer;
  };

  describe('on a phone', () => {
    it.each(LISTS)('%s reads down the page: none of its tables goes on to the side', async (path) => {
      const [tables, wide] = await onPhone(path, () => {
        const boxes = [...document.querySelectorAll('.scroll')];
        return [boxes.length, boxes.filter((box) => box.scrollWidth > box.clientWidth + 1).map((box) => box.ariaLabel)];
      });
      expect(tables).toBeGreaterThan(0);
      expect(wide).toEqual([]);
    });

    it.each(['register.html', 'ledger.html'])('a table of %s that goes on to the side says so, and no other does', async (path) => {
      const boxes = await onPhone(path, () =>
        [...document.querySelectorAll('.scroll')]
          .filter((box) => box.checkVisibility({ contentVisibilityAuto: true }))
          .map((box) => ({
            of: box.ariaLabel,
            wide: box.scrollWidth > box.clientWidth + 1,
            says: getComputedStyle(box, '::before').content.includes('Goes on'),
          })),
      );
      expect(boxes.filter(({ wide }) => wide).length).toBeGreaterThan(0);
      expect(boxes.filter(({ wide, says }) => wide !== says)).toEqual([]);
    });

    it.each(['index.html', 'sessions.html', 'ledger.html'])('what leads on from %s has room for a finger', async (path) => {
      const links = await onPhone(path, () => {
        const asked = '.masthead > a, .endnote a, .running a, .steps a, .milestones a, .measures-list > li > a, .sessions th > a';
        return [...document.querySelectorAll(asked)]
          .map((link) => ({ words: link.textContent, height: Math.round(link.getBoundingClientRect().height) }))
          .filter(({ height }) => height > 0);
      });
      expect(links.length).toBeGreaterThan(15);
      expect(links.filter(({ height }) => height < FINGER)).toEqual([]);
    });
  });
}
