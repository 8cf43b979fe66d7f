/** Starts the browser that comes from a package; nothing is taken from the system. */
import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';

/** What the package sets for its own purposes and would hide faults of a page, or crash with several contexts. */
const NOT_OURS = /^--(disable-web-security|allow-running-insecure-content|single-process|no-zygote|disable-site-isolation-trials)$/;

export async function startBrowser(): Promise<Browser> {
  const args = chromium.args.filter((arg) => !NOT_OURS.test(arg));
  return driver.launch({ executablePath: await chromium.executablePath(), args, headless: true });
}
