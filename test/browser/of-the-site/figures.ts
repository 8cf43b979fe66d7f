/** Every figure of the account opens entries whose total, printed where it lands, is that figure. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

interface Figure {
  readonly heading: string;
  readonly text: string;
  readonly href: string;
}

/** The totals printed under each anchor of a page, and of the page as a whole under ''. */
type Totals = Readonly<Record<string, { readonly cost: string | undefined; readonly paid: string | undefined }>>;

export function figures(bench: Bench): void {
  describe('figures', () => {
    it('each figure of the account lands on entries that add up to it', async () => {
      const page = await bench.browser.newPage();
      await page.goto(`${bench.served.address}ledger.html`);
      const shown = await figuresOf(page);
      const known = new Map<string, Totals>();
      const wrong: string[] = [];
      for (const { heading, text, href } of shown) {
        const [path = '', anchor = ''] = href.split('#');
        const totals = known.get(path) ?? (await totalsAt(page, bench.served.address + path));
        known.set(path, totals);
        const landed = heading.startsWith('Paid') ? totals[anchor]?.paid : totals[anchor]?.cost;
        if (landed !== text) wrong.push(`${heading}: ${text} at ${href}, where there is ${landed}`);
      }
      await page.close();
      expect(shown.length).toBeGreaterThan(60);
      expect(wrong).toEqual([]);
    });
  });
}

function figuresOf(page: Page): Promise<Figure[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('table.account[data-measure="gross"]')].flatMap((table) =>
      [...table.querySelectorAll('td a')].map((link) => ({
        heading: table.querySelector('caption')?.textContent ?? '',
        text: link.textContent ?? '',
        href: link.getAttribute('href') ?? '',
      })),
    ),
  );
}

async function totalsAt(page: Page, address: string): Promise<Totals> {
  await page.goto(address);
  return page.evaluate(() => {
    const amounts = (element: Element | null | undefined) =>
      [...(element?.textContent ?? '').matchAll(/(\u2212?)[^\d\s,]?([\d,]+\.\d\d)/g)].map(([, minus, digits]) => `${minus}${digits}`);
    // Of the facts the first is the job cost, the third what was paid; a year's heading says cost, then paid.
    const [cost, , paid] = amounts(document.querySelector('main .facts'));
    const totals: Record<string, { cost: string | undefined; paid: string | undefined }> = { '': { cost, paid } };
    for (const section of document.querySelectorAll('main section[id]')) {
      const cells = [...section.querySelectorAll(':scope > .scroll tfoot td')].map((cell) => amounts(cell)[0]);
      const [ofYear, paidInYear] = amounts(section.querySelector(':scope > h2'));
      totals[section.id] = cells.length > 0 ? { cost: cells.at(-1), paid: cells.at(-2) } : { cost: ofYear, paid: paidInYear };
    }
    return totals;
  });
}
