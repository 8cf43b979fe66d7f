/** Opens pages and writes down what went wrong: console errors, failed or foreign requests. */
import type { BrowserContext, Page } from 'playwright-core';

export interface Visit {
  readonly page: Page;
  readonly problems: string[];
  readonly requests: string[];
}

/** A new page that notes everything a reader's browser would complain of. */
export async function visiting(context: BrowserContext): Promise<Visit> {
  const page = await context.newPage();
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
  return { page, problems, requests };
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
