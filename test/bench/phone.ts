/**
 * What a site asks of a phone: the demo's pages over a mobile network, and the register of 2,000 positions while it is scrolled.
 * Headless Chromium draws by software and shows no screen, so frames that a screen would show are not told by it; what the main
 * thread does for a frame is, and is counted in time of the processor, which other programs do not lengthen.
 */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { startBrowser } from '../browser/browser.ts';
import { serveFolder } from '../browser/static-server.ts';
import type { Aim } from './aims.ts';
import { asfound, freshFolder } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { measureProcess } from './measure-process.ts';
import { openOnPhone } from './phone/open-on-phone.ts';
import { scrollOnPhone } from './phone/scroll-on-phone.ts';

const DEMO = join(import.meta.dirname, '../../content');
const HOME = 'index.html';
/** Parts with long lives and pictures, and pages that hold much. */
const PAGES = [HOME, 'parts/front-drum-near.html', 'register.html', 'ledger.html'];
const AIM_OF_HOME_KB = 300;
const AIM_OF_PAINT = 1;
/** Of the share of the window times how far it moved: less than a pixel of one line. */
const AIM_OF_SHIFT = 0.001;
/** A frame of sixty in a second. */
const AIM_OF_FRAME_MS = 16.7;

/** What the register is measured with. */
export interface PhoneRun {
  readonly positions: number;
  readonly sessions: number;
  readonly seed: number;
}

export async function measurePhone(folder: string, run: PhoneRun): Promise<Aim[]> {
  const demo = await built(DEMO, join(folder, 'demo'));
  const journal = join(folder, 'journal');
  await writeJournal(journal, run.sessions, run.seed, { positions: run.positions });
  const long = await built(journal, join(folder, 'long'));
  const browser = await startBrowser();
  try {
    return [...(await pagesOf(browser, demo)), ...(await registerOf(browser, long, run))];
  } finally {
    await browser.close();
  }
}

async function built(journal: string, work: string): Promise<string> {
  const ours = asfound(journal, work);
  await freshFolder(ours);
  await measureProcess(ours.build, work);
  return ours.site;
}

async function pagesOf(browser: Browser, site: string): Promise<Aim[]> {
  const served = await serveFolder(site);
  const session = (await readdir(join(site, 'sessions'))).filter((name) => /^2.*\.html$/.test(name)).at(-1);
  const aims: Aim[] = [];
  for (const page of [...PAGES, `sessions/${session}`]) {
    const { kilobytes, paint, shift } = await openOnPhone(browser, served.address + page, 1);
    const slow = await openOnPhone(browser, served.address + page, 4);
    aims.push(
      { what: `phone, ${page}: before scrolling`, figure: kilobytes, below: page === HOME ? AIM_OF_HOME_KB : null, unit: ' kB' },
      { what: `phone, ${page}: first paint at 8.1 Mbit/s, 165 ms`, figure: paint, below: AIM_OF_PAINT, unit: ' s' },
      { what: `phone, ${page}: the same, processor slowed 4 times`, figure: slow.paint, below: null, unit: ' s' },
      { what: `phone, ${page}: layout shift`, figure: Math.max(shift, slow.shift), below: AIM_OF_SHIFT, unit: '' },
    );
  }
  await served.stop();
  return aims;
}

async function registerOf(browser: Browser, site: string, { positions }: PhoneRun): Promise<Aim[]> {
  const served = await serveFolder(site);
  const what = (told: string): string => `phone, register of ${positions} positions, scrolled: ${told}`;
  const { frames, usual, heavy, heaviest, late } = await scrollOnPhone(browser, `${served.address}register.html`);
  await served.stop();
  return [
    { what: what(`work for the middle one of ${frames} frames`), figure: usual, below: AIM_OF_FRAME_MS, unit: ' ms' },
    { what: what('work for one frame of a hundred is over'), figure: heavy, below: AIM_OF_FRAME_MS, unit: ' ms' },
    { what: what('work for the heaviest frame'), figure: heaviest, below: null, unit: ' ms' },
    { what: what('share of frames over 25 ms after the last, by this machine'), figure: late, below: null, unit: '' },
  ];
}
