/** An evening that went on after midnight is of the day on which it began, and the page says so. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startBrowser } from '../../browser/browser.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';
import { begin, handsAt, makeNote } from './hands.ts';

let browser: Browser;
let stand: WritingStand;
beforeAll(async () => {
  browser = await startBrowser();
  stand = await standForWriting({ evening: '2031-03-11' });
});
afterAll(async () => {
  await browser?.close();
  await stand?.remove();
});

test('a note begun after midnight is of the evening before, and may be given another day', async () => {
  const hands = await handsAt(browser, stand);
  const { page } = hands;
  await page.getByRole('button', { name: 'Write tonight, the evening of Tuesday 11 March 2031' }).waitFor();
  await begin(hands, 'Late');
  await page.getByRole('heading', { name: 'The evening of Tuesday 11 March 2031' }).waitFor();
  expect(await page.getByText('It is past midnight').count()).toBe(1);
  await page.getByLabel('Date').fill('2031-03-12');
  await page.getByRole('heading', { name: 'The evening of Wednesday 12 March 2031' }).waitFor();
  await page.getByLabel('Date').fill('2031-03-11');
  const path = await makeNote(hands);
  expect(path).toBe('sessions/2031-03-11-late/index.md');
  expect(readFileSync(join(stand.folder, path), 'utf8')).toContain('date: 2031-03-11\n');
  await hands.context.close();
});
