import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { clipFiles, placeClips } from '../../src/site/place-clips.ts';
import { evening, journal, part } from '../builders/journal.ts';
import { clip } from '../builders/observed.ts';
import { folderWith, put } from '../load/folder.ts';
import { box, film, PICTURES } from '../photos/sample-film.ts';

const REEL = 'sessions/2030-10-01-brakes/reel 07.mp4';
const of = journal({
  parts: [part('drum')],
  evenings: [
    evening('2030-10-01', { film: [clip(REEL, [[12, ['drum']]]), clip('https://example.org/a.mp4', [[3, ['drum']]])] }),
    evening('2030-10-05', { film: [clip(REEL, [[40, ['drum']]])] }),
  ],
});

/** A journal folder, a cache and a place for the site. */
function room(bytes: string | Uint8Array = 'a film') {
  const cwd = folderWith({ [`van/${REEL}`]: bytes });
  const at = (...names: string[]) => join(cwd, ...names);
  const place = (site: string) => placeClips(of, at('van'), at('cache'), at(site), 0);
  return { cwd, at, place, placed: (site: string) => at(site, 'files', REEL) };
}

test('a clip of the journal that two notes name is one file; one elsewhere is none', async () => {
  expect(clipFiles(of)).toEqual([REEL]);
});

test('it lies in the site byte for byte, where the pages link to it, and is no longer the file of the journal', async () => {
  const { at, place, placed } = room();
  await place('site');
  expect(readFileSync(placed('site'), 'utf8')).toBe('a film');
  expect(statSync(placed('site')).ino).not.toBe(statSync(at('van', REEL)).ino);
});

test('what its camera wrote is blanked in the site, and the file of the journal is not touched', async () => {
  const theirs = film(box('udta', '+51.50-0.12/'));
  const { at, place, placed } = room(theirs);
  await place('site');
  expect(readFileSync(placed('site')).equals(theirs)).toBe(false);
  expect(readFileSync(placed('site'), 'latin1')).toContain(PICTURES);
  expect(readFileSync(placed('site'), 'latin1')).not.toContain('+51.50');
  expect(readFileSync(at('van', REEL)).equals(theirs)).toBe(true);
});

test('a second site takes the copy of the first; a film that changed is copied anew, and the old copy is dropped', async () => {
  const { cwd, at, place, placed } = room();
  await place('site');
  const [copy = ''] = readdirSync(at('cache/film'));
  await place('again');
  expect(statSync(placed('again')).ino).toBe(statSync(at('cache/film', copy, 'film')).ino);

  // Another build may be linking from what was used in the last hour.
  utimesSync(at('cache/film', copy), 1, 1);
  put(cwd, `van/${REEL}`, 'b film');
  utimesSync(at('van', REEL), 1, 1);
  await place('third');
  expect([readFileSync(placed('third'), 'utf8'), readFileSync(placed('site'), 'utf8')]).toEqual(['b film', 'a film']);
  expect(readdirSync(at('cache/film'))).toHaveLength(1);
  expect(existsSync(at('cache/film', copy))).toBe(false);
});

test('what is removed from the site leaves the journal and the next site whole', async () => {
  const { at, place, placed } = room();
  await place('site');
  rmSync(at('site'), { recursive: true });
  await place('next');
  expect([readFileSync(at('van', REEL), 'utf8'), readFileSync(placed('next'), 'utf8')]).toEqual(['a film', 'a film']);
});

test('what was done to the film of a site, or to that of the cache, does not reach the next site', async () => {
  for (const spoil of ['site', 'cache'] as const) {
    const { at, place, placed } = room(film());
    await place('site');
    const clean = readFileSync(placed('site'));
    const [copy = ''] = readdirSync(at('cache/film'));
    const file = spoil === 'site' ? placed('site') : at('cache/film', copy, 'film');
    writeFileSync(file, Buffer.concat([clean.subarray(0, 20), Buffer.from('spoilt'), clean.subarray(26)]));
    await place('next');
    expect(readFileSync(placed('next')).equals(clean), spoil).toBe(true);
  }
});

test('a film that another build is half through with is left to it', async () => {
  const { at, place } = room(film());
  const theirs = at('cache/film', `unfinished-${process.ppid}-0123456789ab`);
  mkdirSync(theirs, { recursive: true });
  writeFileSync(join(theirs, 'film'), 'half');
  utimesSync(theirs, 1, 1);
  await place('site');
  expect(readdirSync(theirs)).toEqual(['film']);
});
