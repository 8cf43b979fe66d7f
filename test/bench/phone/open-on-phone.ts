/** A page opened on a phone's screen over a mobile network of the fourth generation, with nothing in its cache. */
import type { Browser, BrowserContext } from 'playwright-core';

export interface Opened {
  /** Of 1,000 bytes: heads and bodies of every answer before anybody scrolls. */
  readonly kilobytes: number;
  /** First contentful paint, in seconds from the start of going there. */
  readonly paint: number;
  /** Cumulative layout shift. */
  readonly shift: number;
}

/** "Fast 4G" of Chromium's developer tools: nine tenths of 9 and 1.5 Mbit/s, 60 ms times 2.75. From memory. */
const NETWORK = {
  offline: false,
  latency: 165,
  downloadThroughput: (8.1 * 1e6) / 8,
  uploadThroughput: (1.35 * 1e6) / 8,
  connectionType: 'cellular4g',
} as const;
/** What a page may still fetch or move once all is loaded. */
const SETTLED_MS = 2000;

export function phoneContext(browser: Browser): Promise<BrowserContext> {
  return browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true });
}

/** @param slower how many times slower than this processor */
export async function openOnPhone(browser: Browser, address: string, slower: number): Promise<Opened> {
  const context = await phoneContext(browser);
  const tab = await context.newPage();
  const protocol = await context.newCDPSession(tab);
  await protocol.send('Network.enable');
  await protocol.send('Network.emulateNetworkConditions', NETWORK);
  await protocol.send('Emulation.setCPUThrottlingRate', { rate: slower });
  let bytes = 0;
  protocol.on('Network.loadingFinished', ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  await tab.goto(address, { waitUntil: 'load' });
  await tab.waitForTimeout(SETTLED_MS);
  const { paint, shift } = await tab.evaluate(
    () =>
      new Promise<{ paint: number; shift: number }>((told) => {
        const painted = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN;
        let moved = 0;
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) moved += (entry as PerformanceEntry & { readonly value: number }).value;
        }).observe({ type: 'layout-shift', buffered: true });
        // What was buffered is handed over in a task of its own.
        setTimeout(() => told({ paint: painted / 1000, shift: moved }), 100);
      }),
  );
  await context.close();
  return { kilobytes: bytes / 1000, paint, shift };
}
