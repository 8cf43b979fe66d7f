/** What a page costs on a telephone before anybody scrolls, on a mobile network of the fourth generation. */
import type { Bench } from './bench.ts';

export interface Weight {
  /** Heads and bodies of every answer, as they came over the wire. */
  readonly bytes: number;
  /** The same by kind: `Image`, `Font`, `Stylesheet`, … */
  readonly kinds: Readonly<Record<string, number>>;
  /** How many pictures stand on the page, loaded or not. */
  readonly pictures: number;
}

/** Ten megabits a second down; how far ahead a browser loads lazy pictures depends on what network it is told of. */
const NETWORK = {
  offline: false,
  latency: 60,
  downloadThroughput: 1_250_000,
  uploadThroughput: 400_000,
  connectionType: 'cellular4g',
} as const;

/**
 * @param page an address of the site
 * @param dots of the screen to a pixel of the page
 */
export async function weigh(bench: Bench, page: string, dots: number): Promise<Weight> {
  const viewport = { width: 390, height: 844 };
  const context = await bench.browser.newContext({ viewport, deviceScaleFactor: dots, isMobile: true, hasTouch: true });
  const tab = await context.newPage();
  const network = await context.newCDPSession(tab);
  await network.send('Network.enable');
  await network.send('Network.emulateNetworkConditions', NETWORK);
  const kindOf = new Map<string, string>();
  const kinds: Record<string, number> = {};
  network.on('Network.responseReceived', ({ requestId, type }) => kindOf.set(requestId, type));
  network.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const kind = kindOf.get(requestId) ?? 'Other';
    kinds[kind] = (kinds[kind] ?? 0) + encodedDataLength;
  });
  await tab.goto(bench.served.address + page, { waitUntil: 'networkidle' });
  const pictures = await tab.locator('main img').count();
  await context.close();
  return { bytes: Object.values(kinds).reduce((sum, one) => sum + one, 0), kinds, pictures };
}
