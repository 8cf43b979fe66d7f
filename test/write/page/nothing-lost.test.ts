/** Lost connections, sleeping phones, killed servers, two devices, and notes that change meanwhile: nothing that was typed is lost. */
import { globSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startBrowser } from '../../browser/browser.ts';
import { standForWriting, type WritingStand } from '../journal-for-writing.ts';
import { begin, type Hands, handsAt, makeButton, makeNote, sent } from './hands.ts';

let browser: Browser;
let stand: WritingStand;
let hands: Hands;
beforeAll(async () => {
  browser = await startBrowser();
  return () => browser.close();
});
beforeEach(async () => {
  stand = await standForWriting();
  hands = await handsAt(browser, stand);
});
afterEach(async () => {
  await hands.context.close();
  await stand.remove();
});

const NOTE = 'sessions/2031-03-10-first-look.md';
const textOf = (path: string): string => readFileSync(join(stand.folder, path), 'utf8');
const sessions = (): string[] => readdirSync(join(stand.folder, 'sessions')).sort();

async function correct({ page, tap }: Hands): Promise<void> {
  await tap(page.getByRole('button', { name: '2031-03-10 First look' }));
  await page.getByRole('heading', { name: /^Correct/ }).waitFor();
}

describe('a draft', () => {
  test('is there again after the page was put away and opened anew, whole, though the server never had the end of it', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    await hands.context.setOffline(true);
    await hands.page.getByLabel('In words').fill('It came off with two pulls.');
    await hands.page.getByText('The server cannot be reached').waitFor();
    await hands.page.close();
    await hands.context.setOffline(false);
    hands = await handsAt(browser, stand, hands.context);
    await hands.tap(hands.page.getByRole('button', { name: 'Go on with 2031-03-12 Drum off' }));
    expect(await hands.page.getByLabel('In words').inputValue()).toBe('It came off with two pulls.');
    expect(textOf(await makeNote(hands))).toBe('---\ndate: 2031-03-12\ntitle: Drum off\n---\n\nIt came off with two pulls.\n');
  });

  test('outlives the server, on the device and on disk', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    await stand.serving.close();
    await hands.page.getByLabel('In words').fill('Typed while nobody listened.');
    await hands.page.getByText('The server cannot be reached').waitFor();
    await stand.restart();
    expect(sessions()).toEqual(['2031-03-10-first-look.md']);
    hands = await handsAt(browser, stand, hands.context);
    await hands.tap(hands.page.getByRole('button', { name: 'Go on with 2031-03-12 Drum off' }));
    expect(textOf(await makeNote(hands))).toContain('Typed while nobody listened.');
  });

  test('of another device can be gone on with here', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    const desk = await handsAt(browser, stand);
    await desk.tap(desk.page.getByRole('button', { name: 'Go on with 2031-03-12 Drum off' }));
    expect(await desk.page.getByLabel('Title').inputValue()).toBe('Drum off');
    await desk.context.close();
  });

  test('that two devices changed is shown from both, and either or both are kept', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    const desk = await handsAt(browser, stand);
    await desk.tap(desk.page.getByRole('button', { name: 'Go on with 2031-03-12 Drum off' }));
    await desk.page.getByLabel('In words').fill('Written at the desk.');
    await desk.page.getByText('Kept on this device and by the server').waitFor();
    await hands.page.getByLabel('In words').fill('Written at the phone.');
    await hands.page.getByRole('heading', { name: 'This draft was changed on another device' }).waitFor();
    expect(await hands.page.locator('pre').allTextContents()).toEqual([
      expect.stringContaining('Written at the phone.'),
      expect.stringContaining('Written at the desk.'),
    ]);
    await hands.tap(hands.page.getByRole('button', { name: 'Keep both: make this one a draft of its own' }));
    expect(textOf(await makeNote(hands))).toContain('Written at the phone.');
    expect(textOf(await makeNote(desk))).toContain('Written at the desk.');
    expect(sessions()).toEqual(['2031-03-10-first-look.md', '2031-03-12-drum-off', '2031-03-12-drum-off-2']);
    await desk.context.close();
  });

  test('of which the answer was lost on its way is no other one when it is sent again', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    const lost = { times: 1 };
    await hands.page.route(
      /api\/drafts\/[0-9a-f]+$/,
      async (route) => {
        await route.fetch();
        await route.abort();
      },
      lost,
    );
    await hands.page.getByLabel('In words').fill('It came off.');
    await hands.page.getByText('The server cannot be reached').waitFor();
    await hands.page.getByLabel('In words').fill('It came off with two pulls.');
    await sent(hands);
    expect(textOf(await makeNote(hands))).toContain('It came off with two pulls.');
  });

  test('becomes one note though the answer was lost on its way', async () => {
    await begin(hands, 'Drum off');
    await sent(hands);
    await hands.page.route(
      '**/api/drafts/*/note',
      async (route) => {
        await route.fetch();
        await route.abort();
      },
      { times: 1 },
    );
    await hands.tap(makeButton(hands));
    await hands.page.getByText('The server cannot be reached').waitFor();
    await hands.tap(makeButton(hands));
    await hands.page.getByRole('heading', { name: /It is a note now|has become a note/ }).waitFor();
    expect(sessions()).toEqual(['2031-03-10-first-look.md', '2031-03-12-drum-off']);
  });
});

describe('a picture', () => {
  test('of which the network is cut in the middle arrives once, as a whole, when there is one again', async () => {
    const bytes = await sharp({
      create: { width: 1500, height: 1500, channels: 3, background: 'black', noise: { type: 'gaussian', mean: 128, sigma: 60 } },
    })
      .jpeg({ quality: 95 })
      .toBuffer();
    expect(bytes.length).toBeGreaterThan(1_000_000);
    await begin(hands, 'Drum off');
    await sent(hands);
    const network = await hands.context.newCDPSession(hands.page);
    await network.send('Network.enable');
    await network.send('Network.emulateNetworkConditions', {
      offline: false,
      latency: 0,
      downloadThroughput: -1,
      uploadThroughput: 100_000,
    });
    const pictures = await hands.bring('Pictures');
    await pictures.locator('input[type=file]').setInputFiles({ name: 'drum.jpg', mimeType: 'image/jpeg', buffer: bytes });
    // What is under way is not heeded by the browser's own switch, so the connection is cut at its other end.
    const waiting = (): string[] => globSync(join(stand.cache, 'drafts/*/*/picture/*'));
    await expect.poll(() => waiting().some((file) => file.includes('unfinished'))).toBe(true);
    await stand.serving.close();
    await expect.poll(waiting).toEqual([]);
    await hands.tap(makeButton(hands));
    await hands.page.getByText('still on the way').waitFor();
    await hands.page.close();
    await stand.restart();
    hands = await handsAt(browser, stand, hands.context);
    await hands.tap(hands.page.getByRole('button', { name: 'Go on with 2031-03-12 Drum off' }));
    await hands.page.getByText('drum.jpg').waitFor();
    await makeNote(hands);
    const laid = globSync(join(stand.folder, 'sessions/2031-03-12-drum-off/*.jpg'));
    expect(laid.map((file) => readFileSync(file).equals(bytes))).toEqual([true]);
    expect(textOf('sessions/2031-03-12-drum-off/index.md')).toContain('- { file: drum.jpg }');
  });

  test('that is no picture is told, in words, and the rest goes on', async () => {
    await begin(hands, 'Drum off');
    const pictures = await hands.bring('Pictures');
    await pictures.locator('input[type=file]').setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('<script>') });
    await hands.page.getByText('Not taken: It is no picture').waitFor();
    await hands.tap(pictures.getByRole('button', { name: 'Take this one away' }));
    expect(textOf(await makeNote(hands))).toBe('---\ndate: 2031-03-12\ntitle: Drum off\n---\n');
  });
});

describe('a note that is corrected', () => {
  test('keeps every comment and every other letter, byte for byte', async () => {
    const before = textOf(NOTE);
    await correct(hands);
    await hands.type(hands.page.getByLabel('Title'), 'First look, by lamp');
    await hands.tap(hands.group('Parts').locator('summary').first());
    await hands.tap(hands.open('Parts').getByRole('button', { name: '3', exact: true }));
    await makeNote(hands);
    expect(textOf(NOTE)).toBe(before.replace('title: First look ', 'title: First look, by lamp ').replace('condition: 2', 'condition: 3'));
  });

  test('and was changed on disk meanwhile is shown beside what would be written, and is not touched', async () => {
    await correct(hands);
    await hands.page.getByLabel('In words').fill('Looked at it with a better lamp.');
    const edited = textOf(NOTE).replace('# tea included', '# no tea');
    writeFileSync(join(stand.folder, NOTE), edited);
    await hands.tap(makeButton(hands));
    await hands.page.getByRole('heading', { name: 'The note was changed on disk meanwhile' }).waitFor();
    expect(await hands.page.locator('pre').allTextContents()).toEqual([
      expect.stringContaining('better lamp'),
      expect.stringContaining('# no tea'),
    ]);
    expect(textOf(NOTE)).toBe(edited);
    await hands.tap(hands.page.getByRole('button', { name: 'Go on with mine: write it in place of that' }));
    await hands.page.getByRole('heading', { name: 'It is a note now' }).waitFor();
    expect(textOf(NOTE)).toBe(edited.replace('Looked at it   all, with a lamp.', 'Looked at it with a better lamp.'));
  });

  test('and was taken away meanwhile can be made again', async () => {
    const { rmSync } = await import('node:fs');
    await correct(hands);
    await hands.page.getByLabel('In words').fill('Still here.');
    await sent(hands);
    rmSync(join(stand.folder, NOTE));
    await hands.tap(makeButton(hands));
    await hands.tap(hands.page.getByRole('button', { name: 'Make a note of mine again' }));
    await hands.page.getByRole('heading', { name: 'It is a note now' }).waitFor();
    expect(textOf('sessions/2031-03-10-first-look/index.md')).toContain('Still here.');
  });
});
