/** Copies and their proof: secrets planted in every field that a copy may have to withhold, and looked for in all that is published. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { typeset } from '../../src/exports/typeset.ts';
import { workbookOf } from '../../src/exports/workbook.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { withheldTexts } from '../../src/journal/copy/withheld.ts';
import { LEAVE_OUT } from '../../src/journal/model.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { leaksIn, leaksOfFile } from '../../src/site/proof/prove.ts';
import { textsPublished } from '../../src/site/proof/published-texts.ts';
import { run } from '../cli/run.ts';
import { compileFiles } from '../journal/base.ts';
import { put } from '../load/folder.ts';
import { onePagePdf } from '../photos/one-page-pdf.ts';

/** Each kind of matter with secrets of its own; no other page has these words. */
const JOURNAL = `title: The van
arrived: 2031-01-01
currency: GBP
time-zone: Europe/London
vehicle: { make: A make, marks: { frame: Secret-marks-vehicle } }
keeper: secretid
people: { secretid: { name: Secret-people Person, rate: 31.37 }, secretnext: { name: Secret-people Next, rate: 0 } }
subsystems: { brakes: { name: Brakes, budget: { hours: 4321, money: 76543.21 } } }
stores: [Secret-stores shelf, bench]
milestones: { stripped: Stripped }
copies:
${LEAVE_OUT.map((kind) => `  no-${kind}: { leave-out: [${kind}] }`).join('\n')}
  nothing: { leave-out: [${LEAVE_OUT.join(', ')}] }
`;
const PARTS = `- { id: drum, name: Drum, origin: original, private: Secret-private of part, marks: Secret-marks of part }
- { id: hose, name: Hose, origin: new, for: drum, acquired: 2031-01-02, at: Secret-stores shelf }
`;
const NOTE = `---
date: 2031-01-05
title: An evening
private: Secret-private of note
hours: [{ by: secretid, on: brakes, time: 3h17m, unpaid: Secret-hours reason }]
parts:
  - { part: drum, did: removed, to: Secret-stores shelf, marks: Secret-marks as seen }
  - { part: drum, did: sent-out, to: Secret-people plater, quoted: 913.37 }
bought:
  - { what: Pin, for: drum, cost: 812.34, tax: 20%, from: Secret-people seller, paper: secret-papers-bill.pdf }
sold: [{ what: Scrap, on: brakes, price: 713.57, to: Secret-people buyer }]
received: [{ from: Secret-people client, amount: 613.59, for: deposit }]
valued: [{ of: vehicle, value: 51359.71, basis: agreed, by: Secret-people valuer }]
opens: [{ id: buy-it, kind: buy, what: Buy it, on: brakes, price: 413.61 }]
attributed: [{ part: hose, origin: donor, by: secretid, because: It says so, paper: secret-papers-letter.pdf }]
handed-over: [{ to: secretnext, how: sold, price: 8643.19 }]
papers: [{ paper: secret-papers-letter.pdf, kind: letter, what: Secret-papers letter }]
film: [{ clip: "https://example.org/secret-film.mp4", title: Secret-film title, shows: { "0:10": drum } }]
---
Nothing is told here.
`;
const FILES = { 'van/journal.yaml': JOURNAL, 'van/parts/brakes.yaml': PARTS, 'van/sessions/2031-01-05-evening.md': NOTE };
const whole = compileFiles({
  journal: JOURNAL,
  consumables: '{}',
  parts: PARTS,
  more: { 'sessions/2031-01-05-evening.md': NOTE },
  assets: ['papers/secret-papers-bill.pdf', 'papers/secret-papers-letter.pdf'],
}).record as JournalRecord;

const room = mkdtempSync(join(tmpdir(), 'asfound-copies-'));
afterAll(() => rmSync(room, { recursive: true, force: true }));

async function built(copy: string): Promise<{ exit: number; err: string; folder: string }> {
  const folder = join(room, copy);
  const ran = await run(['build', '--content', 'van', '--copy', copy, '--out', folder], { cwd: room });
  return { ...ran, folder };
}

async function saidIn(folder: string): Promise<string> {
  const own = join(folder, 'scripts');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile() && entry.parentPath !== own);
  const texts = await Promise.all(
    files.map((entry) =>
      textsPublished(join(entry.parentPath, entry.name).slice(folder.length), readFileSync(join(entry.parentPath, entry.name))),
    ),
  );
  return texts.flat().join('\n');
}

beforeAll(async () => {
  for (const [path, text] of Object.entries(FILES)) put(room, path, text);
  for (const name of ['bill', 'letter']) put(room, `van/papers/secret-papers-${name}.pdf`, await onePagePdf());
});

test('the journal has nothing else amiss', () => {
  expect(
    compileFiles({
      journal: JOURNAL,
      consumables: '{}',
      parts: PARTS,
      more: { 'sessions/2031-01-05-evening.md': NOTE },
      assets: ['papers/secret-papers-bill.pdf', 'papers/secret-papers-letter.pdf'],
    }).diagnostics.filter(({ severity }) => severity === 'error'),
  ).toEqual([]);
});

test.each(LEAVE_OUT)('a copy without %s holds no text of that kind, and all others', (kind) => {
  const copy = copyOf(whole, `no-${kind}`);
  const withheld = withheldTexts(whole, copy).map(({ text }) => text);
  const secrets = JSON.stringify([JOURNAL, PARTS, NOTE].join()).match(new RegExp(`Secret-${kind}[^",}\\]\\\\]*`, 'g')) ?? [];
  for (const secret of secrets) expect(withheld).toContain(secret.trim());
  // With the money go those who paid it, the papers that say so, and why somebody's hours were not charged.
  const goesAlong = { money: ['papers', 'people', 'hours'], 'former-private': ['private'] } as Partial<Record<string, readonly string[]>>;
  const others = LEAVE_OUT.filter((other) => other !== kind && !goesAlong[kind]?.includes(other));
  for (const other of others) expect(withheld.filter((text) => text.startsWith(`Secret-${other}`))).toEqual([]);
});

describe('published', () => {
  test('everything is in the workshop copy, so that what a copy withholds would be seen there', async () => {
    const { exit, folder } = await built('workshop');
    expect(exit).toBe(0);
    // Each leaving-out broken: the pages of the whole, held against what that copy withholds.
    for (const kind of LEAVE_OUT) {
      const leaks = await leaksIn(folder, withheldTexts(whole, copyOf(whole, `no-${kind}`)));
      expect(leaks.length, kind).toBeGreaterThan(0);
    }
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toContain('Workshop copy, with everything.');
  });

  test('a copy without hours says so where they would stand, and not that nobody wrote any down', async () => {
    const { exit, folder } = await built('no-hours');
    expect(exit).toBe(0);
    const page = (path: string) => readFileSync(join(folder, path), 'utf8').replace(/\s+/g, ' ');
    expect(page('index.html')).toContain('so far, labour left out');
    expect(page('ledger.html')).toContain('this copy leaves hours out.');
    expect(page('ledger.html')).not.toContain('are written down yet');
    expect(page('sessions/2031-01-05-evening.html')).not.toContain('none noted');
  });

  test('nothing that is left out stands in any file of a copy without it, and each page says which copy it is', async () => {
    const { exit, err, folder } = await built('nothing');
    expect([exit, err]).toEqual([0, expect.stringContaining('The site is in')]);
    const said = await saidIn(folder);
    expect(said).not.toMatch(/secret/i);
    for (const amount of ['812.34', '677', '913.37', '713.57', '613.59', '51,359', '413.61', '76,543', '8,643', '4321', '3 h 17'])
      expect(new RegExp(`\\b${amount}\\b`).test(said), amount).toBe(false);
    // The journal that goes along for any day has money in the smallest unit, and hours in minutes.
    const carried = (copy: string) => readFileSync(join(room, copy, 'any-day/record.js'), 'utf8');
    for (const figure of ['81234', '67695', '91337', '71357', '41361', '7654321', '864319', '259260', '197', '3137']) {
      expect(carried('nothing'), figure).not.toMatch(new RegExp(`\\b${figure}\\b`));
      expect(carried('workshop'), figure).toMatch(new RegExp(`\\b${figure}\\b`));
    }
    expect(readFileSync(join(folder, 'parts/drum.html'), 'utf8')).toContain('Nothing copy, without private notes, money, hours,');
  });

  test('what the writer forgot is asked in the workshop copy alone: others have no page of it and no link to one', () => {
    const pages = (copy: string) =>
      readdirSync(join(room, copy), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.html'));
    const linking = (copy: string) => pages(copy).filter((page) => readFileSync(join(room, copy, page), 'utf8').includes('forgotten.html'));
    expect([pages('workshop').includes('forgotten.html'), linking('workshop').length > 10]).toEqual([true, true]);
    expect([pages('nothing').includes('forgotten.html'), linking('nothing')]).toEqual([false, []]);
  });

  test('a withheld text that stands in the prose publishes nothing, and tells where; one that may stand is let stand', async () => {
    const told = `${NOTE}\nSecret-people seller had it.\n`;
    put(room, 'van/sessions/2031-01-05-evening.md', told);
    cpSync(join(room, 'nothing'), join(room, 'no-people'), { recursive: true });
    const refused = await built('no-people');
    expect(refused.exit).toBe(1);
    expect(refused.err).toMatch(/sessions\/2031-01-05-evening\.html: “Secret-people seller” is withheld/);
    expect(readFileSync(join(room, 'no-people/index.html'), 'utf8')).toContain('Nothing copy');
    put(room, 'van/journal.yaml', JOURNAL.replace('no-people: {', 'no-people: { may-say: [Secret-people seller],'));
    expect(await built('no-people')).toMatchObject({ exit: 0 });
  });

  test('a copy that nobody named is refused', async () => {
    expect(await built('secret')).toMatchObject({ exit: 2, err: expect.stringContaining('there is no copy `secret`') });
  });
});

describe('a text is found in whatever coding a file may have it', () => {
  const SECRET = 'Ruth & “Jó”, £5';
  const encoder = new TextEncoder();
  test.each([
    ['page.html', `<p>Ruth &amp; &#8220;J&oacute;&#x201d;, £5`.replace('&oacute;', '&#243;')],
    ['split.html', '<p>Ruth &amp; <b>“Jó”</b>,\n £5'],
    ['data.json', JSON.stringify({ a: SECRET }).replace(/[^ -~]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)],
    ['table.csv', `"${SECRET.replaceAll('"', '""')}"`],
    ['list.js', `var a="${SECRET}"`],
    [`${encodeURIComponent(SECRET)}.bin`, 'x'],
    ['page.xml', SECRET.normalize('NFD').replace('&', '&amp;')],
  ])('%s', async (name, content) => {
    expect((await textsPublished(name, encoder.encode(content))).join('\n')).toContain(SECRET);
  });

  test('and no reference to a character that there is not keeps a file from being looked through', async () => {
    const said = `&#99999999; &#x110000; &constructor; ${SECRET}`;
    expect(await textsPublished('table.csv', encoder.encode(said))).toEqual(['table.csv', said]);
  });

  test('in a workbook, in bytes of both orders', async () => {
    const book = await workbookOf([{ name: 'a', columns: ['x'], rows: [[SECRET]] }]);
    expect((await textsPublished('a.xlsx', book)).join('\n')).toContain(SECRET);
    expect((await textsPublished('a.bin', Buffer.from(SECRET, 'utf16le'))).join('\n')).toContain(SECRET);
  });

  test('in a file of many pieces, across the cut between two', async () => {
    const bytes = Buffer.alloc(9 * 1024 * 1024, 'x');
    for (const at of [4 * 1024 * 1024 - 3, 8 * 1024 * 1024 + 64 * 1024 - 5]) {
      const file = Buffer.from(bytes);
      file.write(` ${SECRET} `, at);
      expect(await leaksOfFile('a.bin', file, [{ text: SECRET, what: 'people' }])).toHaveLength(1);
    }
  });

  test('in a file that is attached to a PDF', async () => {
    const { pdf } = typeset(
      `#pdf.attach("/a.md", bytes("${SECRET} ${'and more '.repeat(200)}"), mime-type: "text/markdown", description: "a")\nNothing.`,
      {
        standard: 'a-3b',
      },
    );
    expect(Buffer.from(pdf).includes('and more and more')).toBe(false);
    expect((await textsPublished('a.pdf', pdf)).join('\n')).toContain(SECRET);
  });

  test('the program’s own scripts say its words and nothing of a journal; one that is changed by a letter is looked through', async () => {
    const own = 'say("Rounding on the bill")';
    const withheld = [{ text: 'Rounding on the bill', what: 'statements' }];
    put(room, 'own/scripts/a.js', own);
    expect(await leaksIn(join(room, 'own'), withheld, { own: [own] })).toEqual([]);
    put(room, 'own/scripts/b.js', `${own};`);
    expect((await leaksIn(join(room, 'own'), withheld, { own: [own] })).map(({ file }) => file)).toEqual(['scripts/b.js']);
  });

  test('a part of a longer word or figure is none', async () => {
    put(room, 'words/a.html', 'C 44189 and C 4418.');
    const found = await leaksIn(join(room, 'words'), [{ text: 'C 4418', what: 'marks' }]);
    expect(found.map(({ there }) => there)).toEqual(['C 44189 and C 4418.']);
    put(room, 'words/a.html', 'C 44189 only');
    expect(await leaksIn(join(room, 'words'), [{ text: 'C 4418', what: 'marks' }])).toEqual([]);
  });
});
