/** Starts the browser that comes from a package; nothing is taken from the system. */
import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';

/** What the package sets for its own purposes and would hide faults of a page, or crash with several contexts. */
const NOT_OURS = /^--(disable-web-security|allow-running-insecure-content|single-process|no-zygote|disable-site-isolation-trials)$/;

/** Milliseconds that only what hangs can take, on however busy a machine. */
const LIMIT = 200_000;

export async function startBrowser(): Promise<Browser> {
  const args = chromium.args.filter((arg) => !NOT_OURS.test(arg));
  const browser = await driver.launch({ executablePath: await chromium.executablePath(), args, headless: true, timeout: LIMIT });
  return browser.on('context', (context) => context.setDefaultTimeout(LIMIT));
}
