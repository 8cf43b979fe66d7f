/** Starts the browser that comes from a package; nothing is taken from the system. */
import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';

/** What the package sets for its own purposes and would hide faults of a page, or crash with several contexts. */
const NOT_OURS = /^--(disable-web-security|allow-running-insecure-content|single-process|no-zygote|disable-site-isolation-trials)$/;

/** A graphics processor that the package has the processor play: pages are painted just the same without it, in a third of the time. */
const PLAYED_GRAPHICS = /^--(use-gl|use-angle|enable-unsafe-swiftshader|ignore-gpu-blocklist|in-process-gpu)/;

/** Milliseconds that only what hangs can take, on however busy a machine. */
const LIMIT = 200_000;

export async function startBrowser(): Promise<Browser> {
  const args = chromium.args.filter((arg) => !NOT_OURS.test(arg) && !PLAYED_GRAPHICS.test(arg)).concat('--disable-gpu');
  const browser = await driver.launch({ executablePath: await chromium.executablePath(), args, headless: true, timeout: LIMIT });
  return browser.on('context', (context) => context.setDefaultTimeout(LIMIT));
}
