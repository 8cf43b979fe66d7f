/** Opens pages and writes down what went wrong: console errors, failed or foreign requests. */
import type { Page } from 'playwright-core';

export interface Visit {
  readonly problems: string[];
  readonly requests: string[];
}

/** Notes from now on everything on a page that a reader's browser would complain of. */
export function visiting(page: Page): Visit {
  const problems: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(`${page.url()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`${page.url()}: ${error.message}`));
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText ?? '';
    // Whoever leaves a page leaves what was still on its way to it.
    if (why !== 'net::ERR_ABORTED') problems.push(`${page.url()}: ${request.url()} failed: ${why}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) problems.push(`${page.url()}: ${response.url()} answered ${response.status()}`);
  });
  page.on('request', (request) => requests.push(request.url()));
  return { problems, requests };
}

/** Brings every picture of a page into being, lazy ones too, and gives those that did not come. */
export async function brokenPictures(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const images = [...document.images];
    for (const image of images) image.loading = 'eager';
    await Promise.all(images.map((image) => image.decode().catch(() => undefined)));
    return images.filter((image) => image.naturalWidth === 0).map((image) => image.currentSrc || image.src);
  });
}
