/** On a phone: what is listed reads down the page, what must be wide says so, and links have room for a finger. */
import type { Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { ON_A_PHONE } from '../readers.ts';

/** Lists of things, which a restorer looks up with one hand. */
const LISTS = [
  'sessions.html',
  'parts.html',
  'register.html',
  'items.html',
  'stores.html',
  'methods.html',
  'measurements.html',
  'consumables.html',
  'papers.html',
  'ledger/entries/subsystem-brakes.html',
];
/** The least side of what a finger is to hit: WCAG 2.2, success criterion 2.5.5. */
const FINGER = 44;

/** A page keeps its stand-ins where its own faces are late, as they may be on a busy machine; what is measured here is one in its own. */
async function waitsForFaces(route: Route): Promise<void> {
  const response = await route.fetch();
  const body = (await response.text()).replaceAll(/font-display:\s*optional/g, 'font-display: block');
  await route.fulfill({ response, body });
}

/** A device that has none of our faces, and none that are as wide. */
const neverHasFaces = (route: Route): Promise<void> => route.abort();

export function onAPhone(bench: Bench): void {
  const onPhone = async <T>(path: string, ask: () => T, faces: 'own' | 'none' = 'own'): Promise<T> => {
    const page = await bench.page(ON_A_PHONE);
    if (faces === 'own') await page.route(/\.css$/, waitsForFaces);
    else await page.route(/\.woff2$/, neverHasFaces);
    await page.goto(bench.served.address + path);
    await page.evaluate(async () => void (await document.fonts.ready));
    // What scrolls is known to the style sheet a frame later.
    await page.evaluate(() => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen))));
    const answer = (await page.evaluate(ask)) as T;
    await page.close();
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

    it('a table of the ledger that goes on to the side says so, and no other does', async () => {
      const boxes = await onPhone('ledger.html', () =>
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

    it('in the ledger only accounts by months go on to the side, and their total stays in sight', async () => {
      const [wide, totals] = await onPhone('ledger.html', () => {
        const boxes = [...document.querySelectorAll('.scroll')].filter((box) => box.scrollWidth > box.clientWidth + 1);
        const edge = document.documentElement.clientWidth;
        return [
          boxes.map((box) => /^table account of-(?:gross|minutes)/.test(`table ${box.firstElementChild?.className}`)),
          boxes.flatMap((box) => [...box.querySelectorAll('.total')].map((cell) => cell.getBoundingClientRect().right <= edge)),
        ];
      });
      expect(new Set(wide)).toEqual(new Set([true]));
      expect(new Set(totals)).toEqual(new Set([true]));
    });

    it('a table of totals in the ledger does not, in whatever face it is set', async () => {
      const boxes = await onPhone(
        'ledger.html',
        () =>
          [...document.querySelectorAll('.scroll:has(> .totals)')].map((box) => ({
            of: box.ariaLabel,
            goesOn: box.scrollWidth > box.clientWidth + 1,
          })),
        'none',
      );
      expect(boxes).toContainEqual({ of: 'Tax by its rate', goesOn: false });
      expect(boxes.filter(({ goesOn }) => goesOn)).toEqual([]);
    });

    it('points of a letter are told from each other by their bullets', async () => {
      const letter = bench.site.pages.findLast((path) => path.startsWith('letters/')) ?? '';
      const points = await onPhone(letter, () =>
        [...document.querySelectorAll('.letter-foot li')].map((point) => [
          getComputedStyle(point).listStyleType,
          point.getBoundingClientRect().left - (point.closest('section')?.getBoundingClientRect().left ?? 0) > 8,
        ]),
      );
      expect(points.length).toBeGreaterThan(1);
      expect(points).toEqual(points.map(() => ['disc', true]));
    });

    it('in the register the outcome stands right under the name of the position', async () => {
      const between = await onPhone('register.html', () =>
        [...document.querySelectorAll('.register tbody tr:has(> .outcome)')].map((row) => {
          const [name, outcome] = [row.querySelector('th'), row.querySelector('.outcome')].map((cell) => cell?.getBoundingClientRect());
          return Math.round((outcome?.top ?? 0) - (name?.bottom ?? 0));
        }),
      );
      expect(between.length).toBeGreaterThan(100);
      expect(between.filter((gap) => gap < -2 || gap > 4)).toEqual([]);
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
