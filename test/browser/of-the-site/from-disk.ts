import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { oneOfEachKind } from '../built-site.ts';
import { ON_A_PHONE } from '../readers.ts';
import { brokenPictures, visiting } from './visiting.ts';

interface Width {
  readonly face: string;
  /** Of the width of the same text in the face that it stands for. */
  readonly share: number;
}

/** Runs in the page: how wide its text is in each stand-in that this machine has. */
async function widthsToOwn(): Promise<Width[]> {
  const OWN: Record<string, string> = { text: 'Source Serif 4', figures: 'Barlow Semi Condensed' };
  const pen = document.createElement('canvas').getContext('2d');
  const text = document.body.textContent.replace(/\s+/g, ' ').slice(0, 5000);
  const widthIn = (style: string, weight: string, family: string): number => {
    if (pen) pen.font = `${style} ${weight} 20px "${family}"`;
    return pen?.measureText(text).width ?? 0;
  };
  const widths: Width[] = [];
  for (const face of document.fonts) {
    const family = face.family.replaceAll('"', '');
    const own = OWN[/ as wide as (text|figures)$/.exec(family)?.[1] ?? ''];
    if (own === undefined || !(await face.load().catch(() => null))) continue;
    const weight = face.weight.startsWith('501') ? '600' : '400';
    await document.fonts.load(`${face.style} ${weight} 20px "${own}"`);
    const share = widthIn(face.style, weight, family) / widthIn(face.style, weight, own);
    widths.push({ face: `${family}, ${weight} ${face.style}`, share });
  }
  return widths;
}

export function fromDisk(bench: Bench): void {
  describe('opened from a disk', () => {
    it('each kind of page has its styles, faces and pictures, is no wider than a phone, and says nothing on the console', async () => {
      const page = await bench.page(ON_A_PHONE);
      const { problems, requests } = visiting(page);
      const root = `${pathToFileURL(bench.site.folder).href}/`;
      for (const path of oneOfEachKind(bench.site.pages)) {
        await page.goto(root + path);
        const faces = await page.evaluate(async () => {
          await document.fonts.ready;
          return [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family.replaceAll('"', ''));
        });
        const ink = await page.evaluate(() => getComputedStyle(document.body).getPropertyValue('--ink').trim());
        if (ink === '') problems.push(`${path}: no styles`);
        if (!faces.includes('Source Serif 4') || !faces.includes('Barlow Semi Condensed')) problems.push(`${path}: faces ${faces.join()}`);
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        if (width > 390) problems.push(`${path} is ${width} wide`);
        problems.push(...(await brokenPictures(page)).map((src) => `${path}: no picture ${src}`));
      }
      await page.close();
      expect(problems).toEqual([]);
      expect(requests.filter((url) => !url.startsWith(root) && !url.startsWith('data:'))).toEqual([]);
    });

    it('texts and tables are set in the faces of the record, not only loaded with them', async () => {
      const page = await bench.page();
      await page.goto(pathToFileURL(`${bench.site.folder}/register.html`).href);
      await page.evaluate(() => document.fonts.ready);
      const devtools = await page.context().newCDPSession(page);
      await devtools.send('DOM.enable');
      await devtools.send('CSS.enable');
      const { root } = await devtools.send('DOM.getDocument');
      const faceOf = async (selector: string): Promise<string[]> => {
        const { nodeId } = await devtools.send('DOM.querySelector', { nodeId: root.nodeId, selector });
        return (await devtools.send('CSS.getPlatformFontsForNode', { nodeId })).fonts.map(({ familyName }) => familyName);
      };
      expect(await faceOf('h1')).toEqual([expect.stringContaining('Source Serif 4')]);
      expect(await faceOf('.register tbody td')).toEqual([expect.stringContaining('Barlow')]);
      await page.close();
    });

    it('until its faces have come it is set in others that are as wide', async ({ skip }) => {
      const page = await bench.page();
      await page.goto(pathToFileURL(`${bench.site.folder}/register.html`).href);
      const widths = await page.evaluate(widthsToOwn);
      await page.close();
      // A machine without any of them sets nothing in them.
      if (widths.length === 0) skip();
      expect(widths.filter(({ share }) => Math.abs(share - 1) > 0.03)).toEqual([]);
    });

    it('one can walk from home to a session, to a part, to the ledger and home again', async () => {
      const page = await bench.page();
      await page.goto(pathToFileURL(`${bench.site.folder}/index.html`).href);
      await page.locator('.evenings h3 a').first().click();
      expect(page.url()).toContain('/sessions/');
      await page.goto(pathToFileURL(`${bench.site.folder}/parts.html`).href);
      await page.locator('table.parts th a').first().click();
      expect(page.url()).toContain('/parts/');
      await page.locator('.masthead nav a', { hasText: 'The account' }).click();
      await page.locator('table.account tbody td a').first().click();
      expect(page.url()).toContain('/ledger/entries/');
      await page.locator('.masthead .name').click();
      expect(page.url()).toMatch(/index\.html$/);
      await page.close();
    });
  });
}
