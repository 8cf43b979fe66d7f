/** One thumb, a keyboard, a screen reader; what the schema says, and what the check says, at its field. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { entries, fields, maybe, oneOf, prose } from '../../../src/journal/schema/fields.ts';
import { sessionSchema } from '../../../src/journal/schema/session.ts';
import { formOf } from '../../../src/write/form.ts';
import { bringAxe } from '../../browser/axe.ts';
import { startBrowser } from '../../browser/browser.ts';
import { jpegTaken } from '../../photos/sample-pictures.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';
import { begin, type Hands, handsAt, makeNote, sent } from './hands.ts';

/** WCAG 2.5.5, target size (enhanced): 44 by 44 CSS pixels; a target in a line of text is exempt. */
const TARGET = 44;

let browser: Browser;
let stand: WritingStand;
beforeAll(async () => {
  browser = await startBrowser();
  // A field and a group of fields that the format does not have.
  const madeUp = fields({ mood: oneOf(['merry', 'grim']), why: maybe(prose) });
  stand = await standForWriting({
    form: [...formOf(sessionSchema), ...formOf(z.object({ weather: maybe(prose), moods: entries(madeUp) }))],
  });
});
afterAll(async () => {
  await browser?.close();
  await stand?.remove();
});

async function inHand(act: (hands: Hands) => Promise<void>): Promise<void> {
  const hands = await handsAt(browser, stand);
  try {
    await act(hands);
  } finally {
    await hands.context.close();
  }
}

/** An evening with something of every kind on the page. */
async function busy(hands: Hands): Promise<void> {
  await begin(hands, 'Busy');
  await hands.tap(hands.group('Hours').getByRole('button', { name: 'Add to hours' }));
  await hands.tap(hands.group('Parts').getByRole('button', { name: 'Front brake drum, nearside' }));
  for (const name of ['Bags', 'Opens', 'Bills', 'Film']) {
    const group = await hands.bring(name);
    await hands.tap(group.getByRole('button', { name: `Add to ${name.toLowerCase()}` }).first());
  }
  const pictures = await hands.bring('Pictures');
  const buffer = await jpegTaken('2031:03:12 19:32:00', null);
  await pictures.locator('input[type=file]').setInputFiles({ name: 'drum.jpg', mimeType: 'image/jpeg', buffer });
  await pictures.getByText('drum.jpg').waitFor();
}

async function faults(page: Page): Promise<unknown[]> {
  await bringAxe(page);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe.run(),
  );
  return violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html.slice(0, 160))]);
}

describe('the page in the hand', () => {
  test.each(['light', 'dark'] as const)('has no fault that axe-core finds, in the %s', async (colorScheme) => {
    await inHand(async (hands) => {
      await hands.page.emulateMedia({ colorScheme });
      expect(await faults(hands.page)).toEqual([]);
      await busy(hands);
      await sent(hands);
      expect(await faults(hands.page)).toEqual([]);
    });
  });

  test('offers for what hours were spent on both parts and subsystems, and as whom a bill is from the firms of earlier notes', async () => {
    const own = await standForWriting({
      files: {
        'sessions/2031-03-11-bill.md': `---
date: 2031-03-11
title: A bill
bought: [{ what: Cord, for: front-drum-near, cost: 3.00, from: A chandler }]
parts: [{ part: front-drum-near, did: [removed, sent-out], to: A plater, work: plated }]
opens: [{ id: hoses, kind: waiting, what: Hoses, from: a CHANDLER }, { id: rim, kind: waiting, what: A rim, from: Rim and Son }]
---
`,
      },
    });
    const hands = await handsAt(browser, own);
    try {
      await begin(hands, 'Offered');
      await hands.tap(hands.group('Hours').getByRole('button', { name: 'Add to hours' }));
      const on = hands.open('Hours').getByRole('group', { name: 'On: offered' });
      await on.getByRole('button', { name: 'Brakes', exact: false }).first().waitFor();
      const ids = await on.getByRole('button').evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset.id));
      expect(ids).toHaveLength(8);
      expect(ids.slice(0, 2)).toEqual(['front-drum-near', 'brakes']);
      const bills = await hands.bring('Bills');
      await hands.tap(bills.getByRole('button', { name: 'Add to bills' }).first());
      expect(
        await bills
          .getByLabel('From')
          .evaluate((input) => [...((input as HTMLInputElement).list?.options ?? [])].map(({ value }) => value)),
      ).toEqual(['Rim and Son', 'a CHANDLER', 'A plater']);
    } finally {
      await hands.context.close();
      await own.remove();
    }
  });

  test('has targets of 44 px, and nothing wider than the phone', async () => {
    await inHand(async (hands) => {
      await busy(hands);
      const small = await hands.page.locator('button, input:not([type=file]), textarea, summary, label.as-button').evaluateAll(
        (all, least) =>
          all
            .filter((one) => (one as HTMLElement).checkVisibility())
            .map((one) => ({ words: one.textContent?.slice(0, 40), tag: one.tagName, box: one.getBoundingClientRect() }))
            .filter(({ box }) => box.height < least || box.width < least)
            .map(({ words, tag, box }) => `${tag} ${words} ${box.width}x${box.height}`),
        TARGET,
      );
      expect(small).toEqual([]);
      expect(await hands.page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    });
  });

  test('is written on by keyboard alone', async () => {
    await inHand(async ({ page }) => {
      const { keyboard } = page;
      const until = async (name: string): Promise<void> => {
        for (let n = 0; n < 200; n += 1) {
          await keyboard.press('Tab');
          const is = await page.evaluate(() => {
            const on = document.activeElement as HTMLElement;
            return (
              (on instanceof HTMLInputElement || on instanceof HTMLTextAreaElement
                ? on.labels?.[0]?.textContent
                : on.textContent
              )?.trim() ?? ''
            );
          });
          if (is === name) return;
        }
        throw new Error(`no way to ${name}`);
      };
      await page.getByRole('heading', { name: 'Write an evening' }).waitFor();
      await until('Write tonight, the evening of Wednesday 12 March 2031');
      await keyboard.press('Enter');
      await until('Title');
      await keyboard.type('By keyboard');
      await until('Add to parts');
      await keyboard.type('drum near');
      await keyboard.press('Enter');
      await page.locator('details.entry[open]').waitFor();
      await keyboard.press('Shift+Tab');
      await page.getByRole('button', { name: 'cleaned', exact: true }).focus();
      await keyboard.press('Space');
      await page.getByText('Kept on this device and by the server').waitFor();
      await until('Make it a note');
      await keyboard.press('Enter');
      await page.getByRole('heading', { name: 'It is a note now' }).waitFor();
      const path = (await page.locator('#written-to').textContent()) ?? '';
      expect(readFileSync(join(stand.folder, path), 'utf8')).toContain('- { part: front-drum-near, did: cleaned }');
    });
  });

  test('offers a field and a group that the schema was given, and writes them', async () => {
    await inHand(async (hands) => {
      await begin(hands, 'New fields');
      await hands.bring('Weather');
      await hands.type(hands.page.getByLabel('Weather'), 'Rain.');
      const moods = await hands.bring('Moods');
      await hands.tap(moods.getByRole('button', { name: 'Add to moods' }));
      await hands.tap(moods.getByRole('button', { name: 'grim' }));
      await hands.type(moods.getByLabel('Why'), 'The cold.');
      // The check knows nothing of them.
      const text = readFileSync(join(stand.folder, await makeNote(hands, true)), 'utf8');
      expect(text).toContain('weather: Rain.\nmoods:\n  - { mood: grim, why: The cold. }\n');
    });
  });

  test('says what the check says at the field that it is about, and no longer when it is mended', async () => {
    await inHand(async (hands) => {
      await begin(hands, 'A slip');
      await hands.tap(hands.group('Parts').getByRole('button', { name: 'Front brake drum, nearside' }));
      await hands.tap(hands.open('Parts').getByRole('button', { name: 'fitted', exact: true }));
      const problem = hands.open('Parts').locator('.problem [data-code]');
      await problem.first().waitFor();
      expect(await problem.first().textContent()).toMatch(/fitted/);
      await hands.tap(hands.open('Parts').getByRole('button', { name: 'fitted', exact: true }));
      await hands.tap(hands.open('Parts').getByRole('button', { name: 'inspected', exact: true }));
      await problem.first().waitFor({ state: 'detached' });
    });
  });

  test('says it at the right entry, though one before it was left empty', async () => {
    await inHand(async (hands) => {
      await begin(hands, 'An empty one');
      const opens = await hands.bring('Opens');
      await hands.tap(opens.getByRole('button', { name: 'Add to opens' }));
      await hands.tap(opens.getByRole('button', { name: 'Add to opens' }));
      await hands.tap(hands.open('Opens').getByRole('button', { name: 'task', exact: true }));
      await opens.locator('.problem [data-code]').first().waitFor();
      expect(await opens.locator('[data-way="opens/0"] [data-code]').count()).toBe(0);
      expect(await opens.locator('[data-way="opens/1"] [data-code]').count()).toBeGreaterThan(0);
    });
  });

  test('takes a place in a picture by touch', async () => {
    await inHand(async (hands) => {
      await busy(hands);
      await hands.tap(hands.open('Pictures').getByRole('button', { name: 'Points' }));
      await hands.tap(hands.open('Pictures').getByRole('button', { name: 'Add to points' }));
      const board = hands.group('Pictures').locator('.board');
      await board.scrollIntoViewIfNeeded();
      await expect.poll(async () => (await board.boundingBox())?.height ?? 0).toBeGreaterThan(100);
      const box = (await board.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
      await hands.page.touchscreen.tap(box.x + box.width / 4, box.y + box.height / 2);
      expect(await hands.group('Pictures').getByLabel(/^At/).inputValue()).toBe('25,50');
    });
  });
});
