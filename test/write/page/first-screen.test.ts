/** What every evening needs stands on the first screen; nothing with a fault is written by one tap. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startBrowser } from '../../browser/browser.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';
import { begin, handsAt, makeButton } from './hands.ts';

const SENT = '---\ndate: 2031-03-11\ntitle: Out\nparts: [{ part: hub-cap-near, did: [removed, sent-out], to: a plater }]\n---\n';

const TWO = `title: The van
arrived: 2031-01-01
currency: GBP
people: { rh: Ruth, jm: Jory }
subsystems: { brakes: Brakes }
stores: [loft]
`;

let browser: Browser;
let stand: WritingStand;
beforeAll(async () => {
  browser = await startBrowser();
  stand = await standForWriting({ files: { 'journal.yaml': TWO, 'sessions/2031-03-11-out.md': SENT } });
});
afterAll(async () => {
  await browser?.close();
  await stand?.remove();
});

test.each([
  [390, 844],
  [1400, 900],
])('at %d by %d px', async (width, height) => {
  const hands = await handsAt(browser, stand, await browser.newContext({ viewport: { width, height }, hasTouch: true }));
  const { page } = hands;
  await begin(hands, 'First screen');
  const bar = (await page.locator('#bar').boundingBox())?.y ?? 0;
  const needed = [
    page.getByLabel('Date'),
    page.getByLabel('Title'),
    page.getByRole('button', { name: 'Add to hours' }),
    page.getByLabel('In words'),
    page.getByLabel('Add to parts', { exact: true }),
  ];
  for (const one of needed) {
    const box = await one.boundingBox();
    expect(box && box.y + box.height, await one.evaluate((element) => element.outerHTML)).toBeLessThan(bar);
  }
  expect(await hands.group('Decisions').getByLabel('Add to decisions', { exact: true }).isVisible()).toBe(false);
  expect(await page.getByRole('button', { name: 'Bags', exact: true }).isVisible()).toBe(false);
  await hands.context.close();
});

test('a fault is led to first, and written only by a second tap', async () => {
  const hands = await handsAt(browser, stand);
  await begin(hands, 'A slip');
  await hands.tap(hands.group('Parts').getByRole('button', { name: 'Front brake drum, nearside' }));
  await hands.tap(hands.open('Parts').getByRole('button', { name: 'fitted', exact: true }));
  await hands.tap(makeButton(hands));
  await hands.page.getByText('One thing is to mend, and stands at its field. Nothing was written yet.').waitFor();
  expect(existsSync(join(stand.folder, 'sessions/2031-03-12-a-slip'))).toBe(false);
  await hands.tap(hands.page.getByRole('button', { name: 'Write it as it is' }));
  await hands.page.getByRole('heading', { name: 'It is a note now' }).waitFor();
  expect(existsSync(join(stand.folder, 'sessions/2031-03-12-a-slip/index.md'))).toBe(true);
  await hands.context.close();
});

test('a second entry of hours is of whoever has none yet, and one may be of both', async () => {
  const hands = await handsAt(browser, stand);
  await begin(hands, 'Two at work');
  for (const name of ['Ruth', 'Jory', 'Ruth']) {
    await hands.tap(hands.group('Hours').getByRole('button', { name: 'Add to hours' }));
    await hands
      .open('Hours')
      .getByRole('button', { name: `${name}: take away` })
      .waitFor();
  }
  const by = hands.open('Hours').locator('[data-way$="/by"]');
  await hands.type(by.getByRole('textbox'), 'jo');
  await hands.tap(by.getByRole('button', { name: /^Jory/ }).first());
  await hands.open('Hours').getByRole('button', { name: 'Jory: take away' }).waitFor();
  expect(await hands.open('Hours').getByRole('button', { name: 'Ruth: take away' }).isVisible()).toBe(true);
  await hands.context.close();
});

test('a part that comes back without a place says so at its field, until it has one', async () => {
  const hands = await handsAt(browser, stand);
  await begin(hands, 'Back');
  await hands.type(hands.group('Parts').getByLabel('Add to parts', { exact: true }), 'hub');
  await hands.tap(hands.group('Parts').getByRole('button', { name: 'Hub cap, nearside' }).first());
  await hands.tap(hands.open('Parts').getByRole('button', { name: 'returned', exact: true }));
  const said = hands.open('Parts').locator('[data-way$="/to"]').getByText('Where it lies now is not said');
  await said.waitFor();
  await hands.tap(hands.open('Parts').locator('[data-way$="/to"]').getByRole('button', { name: 'loft' }));
  await said.waitFor({ state: 'detached' });
  await hands.context.close();
});
