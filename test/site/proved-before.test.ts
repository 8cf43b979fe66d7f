/** What was looked through for the last site is known for the next; nothing that could hold a withheld text is. */
import { linkSync, mkdtempSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import type { Withheld } from '../../src/journal/copy/withheld.ts';
import { mayMeetDay } from '../../src/site/proof/day-in-pages.ts';
import { leaksIn } from '../../src/site/proof/prove.ts';
import { provedBefore } from '../../src/site/proof/proved-before.ts';

const room = mkdtempSync(join(tmpdir(), 'asfound-proved-'));
afterAll(() => rmSync(room, { recursive: true }));

const SECRET: Withheld = { text: 'Had of a widow', what: 'parts / drum / private' };
let cache = '';
let site = '';
let nth = 0;
beforeEach(() => {
  nth += 1;
  cache = join(room, `cache-${nth}`);
  site = mkdtempSync(join(room, 'site-'));
});

const put = (name: string, text: string) => writeFileSync(join(site, name), text);
const proved = (day: string, withheld: readonly Withheld[] = [SECRET]) => provedBefore({ cache, site: ['van'], day }, withheld);
const page = (day: string, said = 'The drum is sound.') => `<p>${said}</p><footer>As on ${day}.</footer>`;

async function leaks(day: string, withheld: readonly Withheld[] = [SECRET]): Promise<readonly string[]> {
  return (await leaksIn(site, withheld, { before: proved(day, withheld) })).map(({ file }) => file);
}

/** Which files are known before any is looked through. */
function known(day: string, names: readonly string[], withheld: readonly Withheld[] = [SECRET]): readonly string[] {
  const before = proved(day, withheld);
  return names.filter((name) => {
    const path = join(site, name);
    return (before.unread(name, path) ?? before.read(name, path, readBytes(path))) !== undefined;
  });
}

const readBytes = (path: string) => new Uint8Array(readFileSync(path));

describe('a page that was looked through', () => {
  beforeEach(async () => {
    put('a.html', page('1 May 2031'));
    expect(await leaks('1 May 2031')).toEqual([]);
  });

  test('is known as long as it says the same, whatever day it is of', () => {
    expect(known('1 May 2031', ['a.html'])).toEqual(['a.html']);
    put('a.html', page('2 May 2031'));
    expect(known('2 May 2031', ['a.html'])).toEqual(['a.html']);
    put('a.html', page('2 May 2031', 'The drum was sound.'));
    expect(known('2 May 2031', ['a.html'])).toEqual([]);
  });

  test('is looked through again for anything else that is withheld', async () => {
    const both = [SECRET, { text: 'drum is sound', what: 'sessions / private' }];
    expect(known('1 May 2031', ['a.html'], both)).toEqual([]);
    expect(await leaks('1 May 2031', both)).toEqual(['a.html']);
  });

  test('and then says what is withheld is told, in that build and in the next', async () => {
    put('a.html', page('2 May 2031', 'Had of a widow.'));
    expect(await leaks('2 May 2031')).toEqual(['a.html']);
    expect(await leaks('2 May 2031')).toEqual(['a.html']);
  });

  test('is looked through again under another name, which is published too', () => {
    put('b.html', page('1 May 2031'));
    expect(known('1 May 2031', ['b.html'])).toEqual([]);
  });

  test('is looked through again where what is withheld may end in the day', async () => {
    const dated = [{ text: 'sound on 2 May', what: 'private' }];
    put('a.html', '<p>It was sound on 1 May 2031</p>');
    expect(await leaks('1 May 2031', dated)).toEqual([]);
    put('a.html', '<p>It was sound on 2 May 2031</p>');
    expect(await leaks('2 May 2031', dated)).toEqual(['a.html']);
  });

  test('is looked through again where another day ends like the one that it is of', async () => {
    const lot = [{ text: 'lot 12', what: 'private' }];
    put('a.html', '<p>It was lot 11 May 2031</p>');
    expect(await leaks('1 May 2031', lot)).toEqual([]);
    put('a.html', '<p>It was lot 12 May 2031</p>');
    expect(await leaks('2 May 2031', lot)).toEqual(['a.html']);
  });

  test('that is in the way of nothing is forgotten when it is there no more', async () => {
    const text = page('1 May 2031');
    rmSync(join(site, 'a.html'));
    put('b.html', text);
    expect(await leaks('1 May 2031')).toEqual([]);
    put('a.html', text);
    expect(known('1 May 2031', ['a.html', 'b.html'])).toEqual(['b.html']);
  });
});

test('a picture that was placed by a second name is known without being read, until it is another file', async () => {
  const kept = join(room, `kept-${nth}.jpg`);
  writeFileSync(kept, 'a picture');
  linkSync(kept, join(site, 'a.jpg'));
  expect(await leaks('1 May 2031')).toEqual([]);
  const path = join(site, 'a.jpg');
  expect(proved('2 May 2031').unread('a.jpg', path)).toEqual([]);
  const { atime, mtime } = statSync(path);
  writeFileSync(path, 'another 1');
  utimesSync(path, atime, new Date(mtime.getTime() + 1));
  expect(proved('2 May 2031').unread('a.jpg', path)).toBeUndefined();
  rmSync(path);
  put('a.jpg', 'a picture');
  expect(proved('2 May 2031').unread('a.jpg', path)).toBeUndefined();
  expect(known('2 May 2031', ['a.jpg'])).toEqual(['a.jpg']);
});

test('a word that a known page says in small letters still tells that another is a word of any page', async () => {
  const may: Withheld = { text: 'Rowan', what: 'people', as: 'word' };
  put('a.html', page('1 May 2031', 'Handles of rowan.'));
  put('b.txt', 'Rowan is first.');
  const told = async () =>
    (await leaksIn(site, [may], { before: proved('1 May 2031', [may]) })).map(({ file, perhaps }) => [file, perhaps]);
  expect(await told()).toEqual([['b.txt', true]]);
  expect(known('1 May 2031', ['a.html'], [may])).toEqual(['a.html']);
  expect(await told()).toEqual([['b.txt', true]]);
});

test.each([
  ['Had of a widow', false],
  ['In May we met', false],
  ['lot 12', false],
  ['May', true],
  ['may', true],
  ['sold on 2', true],
  ['sold on 2 May', true],
  ['2031 was dear', true],
  ['1 was dear', false],
  ['no. 1', false],
  ['no. 22', false],
  ['on 2 May 2031 he came', true],
  ['2 May 2031', true],
])('whether %j may stand in, begin or end in 2 May 2031: %j', (text, meets) => {
  expect(mayMeetDay([{ text, what: 'private' }], '2 May 2031')).toBe(meets);
});
