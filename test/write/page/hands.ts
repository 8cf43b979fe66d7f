/** A phone in the hand of somebody who writes: every tap is counted. */
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import type { WritingStand } from '../journal-for-writing.ts';

export interface Hands {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Taps besides letters; a tap into a field counts. */
  taps: number;
  tap(on: Locator): Promise<void>;
  type(into: Locator, words: string): Promise<void>;
  /** Takes pictures, or chooses them: one tap on the button. */
  take(at: Locator, files: readonly string[]): Promise<void>;
  /** A group of entries, by its heading. */
  group(name: string): Locator;
  /** The entry of a group that is open. */
  open(name: string): Locator;
  /** Brings a group onto the page that is not there by itself. */
  bring(name: string): Promise<Locator>;
}

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

export async function handsAt(browser: Browser, stand: WritingStand, context?: BrowserContext): Promise<Hands> {
  const own = context ?? (await browser.newContext(PHONE));
  const page = await own.newPage();
  await page.goto(stand.serving.address);
  const hands: Hands = {
    context: own,
    page,
    taps: 0,
    async tap(on) {
      hands.taps += 1;
      await on.tap();
    },
    async type(into, words) {
      await hands.tap(into);
      await into.fill(words);
    },
    async take(at, files) {
      hands.taps += 1;
      await at
        .locator('input[type=file]')
        .first()
        .setInputFiles([...files]);
    },
    group: (name) => page.getByRole('region', { name, exact: true }),
    open: (name) => hands.group(name).locator('details.entry[open]').last(),
    async bring(name) {
      const own = hands.group(name).locator('> details.fold > summary');
      if ((await own.count()) > 0) await hands.tap(own);
      else {
        const more = page.locator('.note > details.fold');
        if ((await more.getAttribute('open')) === null) await hands.tap(more.locator('> summary'));
        await hands.tap(more.getByRole('button', { name, exact: true }));
      }
      return hands.group(name);
    },
  };
  return hands;
}

/** Begins the evening of today, with its title. */
export async function begin(hands: Hands, title: string): Promise<void> {
  await hands.tap(hands.page.getByRole('button', { name: 'Write tonight' }));
  await hands.type(hands.page.getByLabel('Title'), title);
}

export const makeButton = ({ page }: Hands): Locator => page.getByRole('button', { name: /^(Make it a note|Write it into the note)$/ });

/** Until the server has all of it. */
export function sent({ page }: Hands): Promise<void> {
  return page.getByText(/Kept on this device and by the server|Kept\. /).waitFor();
}

/** @param asItIs with a fault in it, which takes a second tap */
export async function makeNote(hands: Hands, asItIs = false): Promise<string> {
  await hands.tap(makeButton(hands));
  if (asItIs) await hands.tap(hands.page.getByRole('button', { name: 'Write it as it is' }));
  await hands.page.getByRole('heading', { name: 'It is a note now' }).waitFor();
  return (await hands.page.locator('#written-to').textContent()) ?? '';
}
