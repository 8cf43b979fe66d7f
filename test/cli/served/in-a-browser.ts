import { expect, test } from 'vitest';
import { startBrowser } from '../../browser/browser.ts';
import { put } from '../../load/folder.ts';
import { NOTE, note, type Served, showing } from './served.ts';

export function inABrowser(at: Served): void {
  test('the open page follows a saved note, and shows a mistake until it is mended', async () => {
    const { cwd, address } = at;
    const browser = await startBrowser();
    try {
      put(cwd, NOTE, note);
      await showing(at, 'Off it came.');
      const page = await browser.newPage();
      const complaints: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      await page.goto(`${address}sessions/2031-03-02-drum.html`, { waitUntil: 'networkidle' });
      const main = page.locator('main');
      const box = page.locator('vite-error-overlay');
      expect(await main.textContent()).toContain('Off it came.');

      put(cwd, NOTE, note.replace('Off it came.', 'Off at last.'));
      await main.getByText('Off at last.').waitFor();

      put(cwd, NOTE, note.replace('{ part: drum, did', '{ part: drun, did'));
      await box.waitFor({ state: 'attached' });
      const says = await box.evaluate((element) => element.shadowRoot?.textContent ?? '');
      expect(says).toContain('A401');
      expect(says).toContain('2031-03-02-drum.md:5:13');
      expect(says).toContain('^^^^');

      await page.reload({ waitUntil: 'networkidle' });
      await box.waitFor({ state: 'attached' });

      put(cwd, NOTE, note.replace('Off it came.', 'All is well.'));
      await main.getByText('All is well.').waitFor();
      expect(await box.count()).toBe(0);
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  });

  test('pages that work on the whole record have it where they are served too: the search, any day, and the state beside a name', async () => {
    const { cwd, address } = at;
    const browser = await startBrowser();
    try {
      put(cwd, NOTE, note.replace('Off it came.', 'Off [the drum](part:drum) came.'));
      await showing(at, 'the drum</a>');
      const page = await browser.newPage();
      const complaints: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      await page.goto(`${address}search.html`);
      await page.locator('#query').fill('drum');
      await page.locator('#results a').first().waitFor();
      await page.goto(`${address}any-day.html#2031-03-02`);
      await page.locator('#shown .register').waitFor();
      await page.goto(`${address}sessions/2031-03-02-drum.html`);
      await page.locator('.prose a[href*="parts/"]').first().hover();
      await page.locator('#state-of-it').waitFor();
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  });
}
