/** Starts the browser that comes from a package; nothing is taken from the system. */
import { existsSync, statfsSync } from 'node:fs';
import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';

/** What the package sets for its own purposes and would hide faults of a page, or crash with several contexts. */
const NOT_OURS = /^--(disable-web-security|allow-running-insecure-content|single-process|no-zygote|disable-site-isolation-trials)$/;

/** A graphics processor that the package has the processor play: pages are painted just the same without it, in a third of the time. */
const PLAYED_GRAPHICS = /^--(use-gl|use-angle|enable-unsafe-swiftshader|ignore-gpu-blocklist|in-process-gpu)/;

/** Milliseconds that only what hangs can take, on however busy a machine. */
const LIMIT = 200_000;

/** The driver has what the processes of the browser share lie on the disk, for machines with little room in memory: others need not. */
const ON_DISK = '--disable-dev-shm-usage';
const SHARED_MEMORY = '/dev/shm';
const ROOM = 2 ** 30;

function hasRoomInMemory(): boolean {
  if (!existsSync(SHARED_MEMORY)) return false;
  const { bavail, bsize } = statfsSync(SHARED_MEMORY);
  return bavail * bsize > ROOM;
}

/** Unpacks the browser into the temporary folder, once: two that did so at the same time would spoil it for each other. */
export async function unpackBrowser(): Promise<void> {
  await chromium.executablePath();
}

export async function startBrowser(): Promise<Browser> {
  const args = chromium.args.filter((arg) => !NOT_OURS.test(arg) && !PLAYED_GRAPHICS.test(arg)).concat('--disable-gpu');
  const browser = await driver.launch({
    executablePath: await chromium.executablePath(),
    args,
    ignoreDefaultArgs: hasRoomInMemory() ? [ON_DISK] : [],
    headless: true,
    timeout: LIMIT,
  });
  return browser.on('context', (context) => context.setDefaultTimeout(LIMIT));
}
