/** axe-core on an open page. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The policy of the pages keeps foreign scripts out; the tester's own comes in as a debugger's words do, and cheaper than as an element. */
export async function bringAxe(page: Page): Promise<void> {
  const tester = await page.context().newCDPSession(page);
  await tester.send('Runtime.evaluate', { expression: AXE });
  await tester.detach();
}
