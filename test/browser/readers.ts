/** Readers of a site: each kind of them with a browser's store of its own, which keeps what it has fetched from page to page. */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';

/** With one hand, in a garage. */
export const ON_A_PHONE: BrowserContextOptions = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };

/** A new page of a reader of this kind, which the test closes; without a kind, as browsers come. */
export type Opening = (kind?: BrowserContextOptions) => Promise<Page>;

export function openingIn(browser: Browser): Opening {
  const known = new Map<string, Promise<BrowserContext>>();
  return async (kind = {}) => {
    const name = JSON.stringify(kind);
    const context = known.get(name) ?? browser.newContext(kind);
    known.set(name, context);
    return (await context).newPage();
  };
}
