import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanFilm } from '../../src/photos/clean-film.ts';
import { tracksIn } from './read-film.mjs';
import { box, FIRST, film, handler, PICTURES, POSITIONS, tabled, tellingFilm, track } from './sample-film.ts';

/** As a telephone writes it: the place as ISO 6709 in user data, the maker in metadata, and a person in private data. */
const telling = (): Buffer =>
  Buffer.concat([
    film(
      box('udta', box('\xa9xyz', '\0\x12\x15\xc7+51.5000-000.1166/')),
      box('meta', 'com.apple.quicktime.make Obscura SERIAL-4417'),
      track('soun'),
    ),
    box('uuid', '0123456789abcdef<x:xmpmeta>Tagged Person</x:xmpmeta>'),
  ]);
const SECRETS = ['+51.5000', 'SERIAL-4417', 'Tagged Person', 'MADE', 'CHGD', 'Obscura', 'OBSC'];

function cleaned(bytes: Uint8Array): { bytes: Buffer; understood: boolean } {
  const folder = mkdtempSync(join(tmpdir(), 'asfound-film-'));
  try {
    writeFileSync(join(folder, 'reel.mp4'), bytes);
    const understood = cleanFilm(join(folder, 'reel.mp4'));
    return { bytes: readFileSync(join(folder, 'reel.mp4')), understood };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A film that hides this word in one place. */
const HIDING: readonly (readonly [where: string, bytes: Buffer])[] = [
  ['free space', Buffer.concat([FIRST, box('free', 'hidden'), film().subarray(FIRST.length)])],
  ['space to skip', Buffer.concat([film(), box('skip', 'hidden')])],
  ['a box of a position of one maker', film(box('gps ', 'hidden'))],
  ['user data of a track', film(box('trak', box('udta', 'hidden'), track().subarray(8)))],
  ['user data in the midst of a track', film(track('soun', box('udta', box('name', 'hidden'))))],
  ['a box of XMP beside the film', Buffer.concat([film(), box('XMP_', 'hidden')])],
  ['what follows the last box', Buffer.concat([film(), Buffer.from('\0\0\0\0hidden SEFT', 'latin1')])],
  ['a few bytes that follow', Buffer.concat([film(), Buffer.from('hidden')])],
  [
    'a stream that begins with `styp`',
    Buffer.concat([box('styp', 'msdh\0\0\0\0msdh'), film().subarray(FIRST.length), box('meta', 'hidden')]),
  ],
  ['a stream that begins with `pdin`', Buffer.concat([box('pdin', '\0\0\0\0'), film(), box('uuid', 'hidden')])],
  ['a preview with its date', Buffer.concat([box('pnot', 'hidden'), film().subarray(FIRST.length)])],
  ['a box nobody knows', film(box('SDLN', 'hidden'))],
];

describe('a film is published without what its camera wrote', () => {
  it('of place, time, maker, number and persons, and nothing of it moves', () => {
    const before = telling();
    const { bytes: after, understood } = cleaned(before);
    expect(understood).toBe(true);
    for (const secret of SECRETS) expect([before.includes(secret), after.includes(secret)], secret).toEqual([true, false]);
    expect(after.length).toBe(before.length);
    for (const kept of [PICTURES, 'mvhd', 'tkhd', 'ftyp', 'avc1', 'how to unpack it', 'vide', 'soun']) {
      expect(after.indexOf(kept), kept).toBe(before.indexOf(kept));
    }
    expect(cleaned(after).bytes.equals(after)).toBe(true);
  });

  it.each(HIDING)('from %s', (_, before) => {
    const { bytes: after, understood } = cleaned(before);
    expect([understood, before.includes('hidden'), after.includes('hidden')]).toEqual([true, true, false]);
    expect(after.indexOf(PICTURES)).toBe(before.indexOf(PICTURES));
  });

  it('and without its tracks of data: an outside reader finds the pictures where they were, and nothing else', async () => {
    const before = tellingFilm();
    const { bytes: after, understood } = cleaned(before);
    expect(understood).toBe(true);
    expect((await tracksIn(before)).map(({ handler }) => handler)).toEqual(['vide', 'meta', 'tmcd']);
    const [pictures, ...others] = await tracksIn(after);
    expect(others).toEqual([]);
    expect(pictures?.samples.map((bytes) => Buffer.from(bytes).toString())).toEqual(['picture one', 'picture two']);
    expect(after.length).toBe(before.length);
    for (const told of [...POSITIONS, 'GPS5', 'gpmd', 'TIME', 'tmcd']) {
      expect([before.includes(told), after.includes(told)], told).toEqual([true, false]);
    }
    expect(cleaned(after).bytes.equals(after)).toBe(true);
  });

  /** In 'tellingFilm' the first picture lies at 32. */
  it.each([
    ['share a byte with a picture', tellingFilm({ chunks: [[40, 12]] })],
    ['lie outside of what the film plays', tellingFilm({ chunks: [[4, 12]] })],
    ['lie in part behind its end', tellingFilm({ chunks: [[100, 4000]] })],
    ['have bytes of their own beside them, anywhere', tellingFilm({ more: box('saio', '\0\0\0\0\0\0\0\x01\0\0\0\x28') })],
    ['may lie in pieces of the film too', tellingFilm({}, box('mvex', box('trex', '\0'.repeat(24))))],
    [
      'are of a film with neither picture nor sound',
      Buffer.concat([FIRST, box('moov', box('mvhd', '\0'.repeat(100)), tabled({ type: 'meta', id: 1, chunks: [] }))]),
    ],
  ])('a track of data stays whose samples %s, and so does every other byte of the film', async (_, before) => {
    const { bytes: after } = cleaned(before);
    const samples = async (bytes: Buffer) => (await tracksIn(bytes)).map(({ handler, samples }) => [handler, ...samples]);
    expect(await samples(after)).toEqual(await samples(before));
  });

  it.each([
    ['is of another family', Buffer.from('\x1aE\xdf\xa3 webm', 'latin1')],
    ['is none', Buffer.from('a film')],
    ['is empty', Buffer.alloc(0)],
    ['is cut short', telling().subarray(0, telling().length - 300)],
    ['says that it is longer than it is', Buffer.concat([film(), Buffer.from('\0\0\xff\xffmdat hidden', 'latin1')])],
    ['has no track', Buffer.concat([FIRST, box('moov', box('mvhd', '\0'.repeat(30)))])],
    ['has its list of tracks packed', Buffer.concat([FIRST, box('moov', box('cmov', 'packed'))])],
    [
      'names a file elsewhere',
      film(box('trak', box('mdia', handler('vide'), box('minf', box('dinf', box('dref', '\0\0\0\0\0\0\0\x01', box('alis', 'hidden'))))))),
    ],
    ['has times cut short', film(box('trak', box('tkhd', '\0\0')))],
  ])('and one that %s is left as it is, and said not to be understood', (_, bytes) => {
    expect(cleaned(bytes)).toEqual({ bytes: Buffer.from(bytes), understood: false });
  });

  it('and no film at all ends in an error, whatever is in it', () => {
    const whole = telling();
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.uint8Array({ minLength: 1, maxLength: 12 }), fc.boolean(), (at, bytes, cut) => {
        const spoilt = Buffer.concat([whole.subarray(0, at), bytes, cut ? Buffer.alloc(0) : whole.subarray(at + bytes.length)]);
        expect(cleaned(spoilt).bytes.length).toBeLessThanOrEqual(spoilt.length);
      }),
      { numRuns: 300 },
    );
  });
});
