/** An evening at a phone, in a real browser. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startBrowser } from '../../browser/browser.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';

let browser: Browser;
let stand: WritingStand;
beforeAll(async () => {
  browser = await startBrowser();
  stand = await standForWriting();
});
afterAll(async () => {
  await browser?.close();
  await stand?.remove();
});

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describe('the page to write on', () => {
  test('makes a note of what was tapped and typed', async () => {
    const context = await browser.newContext(PHONE);
    const page: Page = await context.newPage();
    await page.goto(stand.serving.address);
    await page.getByRole('button', { name: 'Write tonight' }).tap();
    await page.getByLabel('Title').fill('Drum off');
    await page.getByRole('textbox', { name: 'Add to parts' }).fill('drum off');
    await page.getByRole('button', { name: 'Front brake drum, offside front-drum-off' }).first().tap();
    await page.getByRole('button', { name: 'removed', exact: true }).tap();
    await page.getByRole('button', { name: 'shelf B2' }).first().tap();
    await page.getByRole('button', { name: 'Make it a note' }).tap();
    await page.getByRole('heading', { name: 'It is a note now' }).waitFor();
    const [, made = ''] = readdirSync(join(stand.folder, 'sessions'));
    expect(readFileSync(join(stand.folder, 'sessions', made, 'index.md'), 'utf8')).toBe(
      '---\ndate: 2031-03-12\ntitle: Drum off\nparts:\n  - { part: front-drum-off, did: removed, to: shelf B2 }\n---\n',
    );
    await context.close();
  });
});
