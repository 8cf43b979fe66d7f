import { expect, test } from 'vitest';
import { checkClips } from '../../src/photos/clips.ts';
import { evening, journal, part } from '../builders/journal.ts';
import { clip } from '../builders/observed.ts';
import { folderWith } from '../load/folder.ts';
import { box, FIRST, film, PICTURES, tabled, tellingFilm, track } from './sample-film.ts';

const JPEG = Buffer.from('\xff\xd8\xff\xe1 a picture', 'latin1');
const at = (name: string) => `sessions/2030-10-01-brakes/${name}`;

function codes(name: string, bytes: Uint8Array): string[] {
  const of = journal({ parts: [part('drum')], evenings: [evening('2030-10-01', { film: [clip(at(name), [[12, ['drum']]])] })] });
  return checkClips(of, folderWith({ [at(name)]: bytes })).map(({ code, message }) => `${code} ${message}`);
}

test('a film that can be cleaned is published without a word', () => {
  expect(codes('reel 07.mp4', film())).toEqual([]);
  expect(codes('GX010007.MP4', tellingFilm())).toEqual([]);
  expect(
    codes('REEL.MOV', Buffer.concat([box('wide'), box('mdat', PICTURES), film().subarray(FIRST.length + 8 + PICTURES.length)])),
  ).toEqual([]);
});

test.each([
  ['full.jpg', JPEG, /has an ending that no film has/],
  ['x.html', film(), /has an ending that no film has/],
  ['x.mp4', JPEG, /is really JPEG/],
  ['x.mp4', Buffer.from('<html><script>alert(1)</script>'), /is really HTML/],
  ['x.webm', Buffer.from('no film'), /is no film that is known/],
  ['x.mp4', Buffer.alloc(0), /is no film that is known/],
])('what is no film is not published: %s', (name, bytes, says) => {
  expect(codes(name, bytes)).toEqual([expect.stringMatching(/^A911/)]);
  expect(codes(name, bytes)[0]).toMatch(says);
});

test.each([
  ['a.webm', Buffer.from('\x1aE\xdf\xa3 webm', 'latin1'), /of a kind that cannot be cleaned/],
  ['a.avi', Buffer.from('RIFF\0\0\0\0AVI LIST', 'latin1'), /of a kind that cannot be cleaned/],
  ['a.mp4', film().subarray(0, film().length - 40), /cannot be followed/],
  ['a.mp4', film(track('meta')), /has a track beside picture and sound that cannot be taken out/],
  ['a.mp4', tellingFilm({}, track('sbtl')), /has a track beside picture and sound that cannot be taken out/],
  ['a.mp4', tellingFilm({}, tabled({ type: 'sbtl', id: 4, chunks: [] })), /has a track of text/],
])('what cannot be cleaned, or not of all, is published with a warning: %s', (name, bytes, says) => {
  expect(codes(name, bytes)).toEqual([expect.stringMatching(/^A912/)]);
  expect(codes(name, bytes)[0]).toMatch(says);
});
