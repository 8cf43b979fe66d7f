/** The typical evening: six parts touched, two bags, a decision, a bill with its paper, three pictures. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDesk } from '../../../src/write/desk.ts';
import { startBrowser } from '../../browser/browser.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';
import { begin, type Hands, handsAt, makeNote } from './hands.ts';

/** What an evening may take besides its words. */
const MOST_TAPS = 90;

const DEMO = new URL('../../../content/', import.meta.url).pathname;
const [PAPER = '', ...PICTURES] = globSync(`${DEMO}sessions/*/*.jpg`).sort().slice(0, 4);

let browser: Browser;
let stand: WritingStand;
beforeAll(async () => {
  browser = await startBrowser();
  stand = await standForWriting();
});
afterAll(async () => {
  await browser?.close();
  await stand?.remove();
});

const TOUCHED = [
  ['drum near', 'Front brake drum, nearside', ['removed', 'inspected'], 'shelf B2'],
  ['shoes', 'Brake shoes, nearside', ['removed'], 'bag 1'],
  ['cyl', 'Wheel cylinder, nearside', ['removed', 'inspected'], 'bag 2'],
  ['studs', 'Wheel studs, nearside', ['inspected', 'cleaned'], null],
  ['splash', 'Splash plate, nearside', ['cleaned'], null],
  ['hub', 'Hub cap, nearside', ['removed'], 'loft'],
] as const;

async function fillBags(hands: Hands): Promise<void> {
  const bags = await hands.bring('Bags');
  for (const [holds, off, back] of [
    ['2 shoes\n2 pull-off springs', 'Brake shoes, nearside', 'long leg to the leading shoe'],
    ['2 bolts 5/16 UNF\n2 spring washers', 'Wheel cylinder, nearside', 'heads inboard'],
  ] as const) {
    await hands.tap(bags.getByRole('button', { name: 'Add to bags' }));
    await hands.type(hands.open('Bags').getByLabel('Holds, one on each line'), holds);
    await hands.tap(hands.open('Bags').getByRole('button', { name: off }));
    await hands.type(hands.open('Bags').getByLabel('Goes back'), back);
  }
}

async function touchParts(hands: Hands): Promise<void> {
  const parts = hands.group('Parts');
  for (const [letters, name, did, to] of TOUCHED) {
    await hands.type(parts.getByLabel('Add to parts', { exact: true }), letters);
    await hands.tap(parts.getByRole('group', { name: 'Add to parts: offered' }).getByRole('button', { name }));
    for (const word of did) await hands.tap(hands.open('Parts').getByRole('button', { name: word, exact: true }));
    if (to !== null) await hands.tap(hands.open('Parts').locator('[data-way$="/to"]').getByRole('button', { name: to }));
  }
}

async function decide(hands: Hands): Promise<void> {
  const decisions = await hands.bring('Decisions');
  const offered = decisions.getByRole('group', { name: 'Add to decisions: offered' });
  await hands.tap(offered.getByRole('button', { name: 'Wheel cylinder, nearside' }));
  await hands.tap(hands.open('Decisions').getByRole('button', { name: 'repair', exact: true }));
  await hands.type(hands.open('Decisions').getByLabel('Because'), 'The bore will hone out.');
}

async function payBill(hands: Hands): Promise<void> {
  const bills = await hands.bring('Bills');
  await hands.tap(bills.getByRole('button', { name: 'Add to bills' }));
  await hands.type(bills.getByLabel('From'), 'a seller');
  await hands.take(bills, [PAPER]);
  await hands.type(bills.getByLabel('Total'), '12.50');
  await hands.type(bills.getByLabel('What'), 'Seal kit');
  await hands.tap(bills.getByRole('button', { name: 'Wheel cylinder, nearside' }));
  await hands.tap(bills.getByRole('button', { name: 'Cost', exact: true }));
  await hands.type(bills.getByLabel('Cost', { exact: true }), '12.50');
}

async function takePictures(hands: Hands): Promise<void> {
  const pictures = await hands.bring('Pictures');
  await hands.take(pictures, PICTURES);
  await pictures.locator('details.entry').nth(2).waitFor();
  for (const [n, name] of ['Front brake drum, nearside', 'Wheel cylinder, nearside', 'Brake shoes, nearside'].entries()) {
    const entry = pictures.locator('details.entry').nth(n);
    if ((await entry.getAttribute('open')) === null) await hands.tap(entry.locator('summary'));
    await hands.tap(entry.getByRole('button', { name }));
    await hands.type(entry.getByLabel('Caption'), 'As it came off.');
  }
}

describe('a typical evening at a phone', () => {
  let hands: Hands;
  let path = '';
  beforeAll(async () => {
    hands = await handsAt(browser, stand);
    await begin(hands, 'Front brake apart, nearside');
    await hands.tap(hands.group('Hours').getByRole('button', { name: 'Add to hours' }));
    await hands.page.clock.setFixedTime(new Date(2031, 2, 12, 19, 10));
    await hands.tap(hands.group('Hours').getByRole('button', { name: 'Start the clock' }));
    await fillBags(hands);
    await touchParts(hands);
    await decide(hands);
    await payBill(hands);
    await takePictures(hands);
    await hands.type(hands.page.getByLabel('In words'), 'All came apart with two pulls.');
    await hands.page.clock.setFixedTime(new Date(2031, 2, 12, 21, 40));
    await hands.tap(hands.group('Hours').getByRole('button', { name: 'Stop the clock' }));
    await hands.page.getByText('On its way to the server.').first().waitFor({ state: 'detached' });
    path = await makeNote(hands);
  });
  afterAll(() => hands?.context.close());

  test(`takes at most ${MOST_TAPS} taps besides its words`, () => {
    expect(hands.taps).toBeGreaterThan(40);
    expect(hands.taps).toBeLessThanOrEqual(MOST_TAPS);
  });

  test('is the note that a person would have written', () => {
    expect(path).toBe('sessions/2031-03-12-front-brake-apart-nearside/index.md');
    const text = readFileSync(join(stand.folder, path), 'utf8');
    expect(text.replaceAll(/(?<=file: )[^,]+/g, 'FILE').replace(/(?<=paper: )[^,]+/, 'PAPER')).toBe(`---
date: 2031-03-12
title: Front brake apart, nearside
hours:
  - { by: rh, time: 19:10-21:40 }
parts:
  - { part: front-drum-near, did: [removed, inspected], to: shelf B2 }
  - { part: brake-shoes-near, did: removed, to: bag 1 }
  - { part: wheel-cylinder-near, did: [removed, inspected], to: bag 2 }
  - { part: wheel-studs-near, did: [inspected, cleaned] }
  - { part: splash-plate-near, did: cleaned }
  - { part: hub-cap-near, did: removed, to: loft }
decisions:
  - { part: wheel-cylinder-near, verdict: repair, because: The bore will hone out. }
bills:
  - { from: a seller, paper: PAPER, total: 12.50, lines: [{ what: Seal kit, for: wheel-cylinder-near, cost: 12.50 }] }
bags:
  - { bag: 1, holds: [2 shoes, 2 pull-off springs], off: brake-shoes-near, goes-back: long leg to the leading shoe }
  - { bag: 2, holds: [2 bolts 5/16 UNF, 2 spring washers], off: wheel-cylinder-near, goes-back: heads inboard }
pictures:
  - { file: FILE, shows: [front-drum-near], caption: As it came off. }
  - { file: FILE, shows: [wheel-cylinder-near], caption: As it came off. }
  - { file: FILE, shows: [brake-shoes-near], caption: As it came off. }
---

All came apart with two pulls.
`);
  });

  test('has its pictures and its paper where they belong, byte for byte as the camera made them', () => {
    const made = (pattern: string): Buffer[] => globSync(join(stand.folder, pattern)).map((file) => readFileSync(file));
    const given = (files: readonly string[]): Buffer[] => files.map((file) => readFileSync(file));
    const sorted = (all: Buffer[]): string[] => all.map((bytes) => bytes.toString('base64')).sort();
    expect(sorted(made('sessions/2031-03-12-*/*.jpg'))).toEqual(sorted(given(PICTURES)));
    expect(sorted(made('papers/*'))).toEqual(sorted(given([PAPER])));
  });

  test('passes the check', () => {
    const desk = openDesk({ folder: stand.folder, cache: stand.cache, today: () => '2031-03-12', evening: () => '2031-03-12' });
    expect(desk.journal().diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(stand.told).toEqual([]);
  });
});
