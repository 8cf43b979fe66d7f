import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanFilm } from '../../src/photos/clean-film.ts';

/** A box of ISO/IEC 14496-12: its length, its name, what it holds. */
function box(name: string, ...parts: (string | Buffer)[]): Buffer {
  const body = Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part)));
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length + 8);
  head.write(name, 4, 'latin1');
  return Buffer.concat([head, body]);
}

const PICTURES = 'the film itself, frame by frame';
/** As a telephone writes it: the place as ISO 6709 in user data, the maker in metadata, and a person in private data. */
const telling = (): Buffer =>
  Buffer.concat([
    box('ftyp', 'isom\0\0\0\0isommp42'),
    box('mdat', PICTURES),
    box(
      'moov',
      box('mvhd', 'how long it is'),
      box('trak', box('tkhd', 'how large it is'), box('udta', box('name', 'Owner Of The Camera'))),
      box('udta', box('\xa9xyz', '\0\x12\x15\xc7+51.5000-000.1166/')),
      box('meta', 'com.apple.quicktime.make Obscura SERIAL-4417'),
    ),
    box('uuid', '0123456789abcdef<x:xmpmeta>Tagged Person</x:xmpmeta>'),
  ]);
const SECRETS = ['+51.5000', 'Owner Of The Camera', 'Obscura', 'SERIAL-4417', 'Tagged Person'];

function cleaned(bytes: Uint8Array): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'asfound-film-'));
  try {
    writeFileSync(join(folder, 'reel.mp4'), bytes);
    cleanFilm(join(folder, 'reel.mp4'));
    return readFileSync(join(folder, 'reel.mp4'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('a film is published without what its camera wrote', () => {
  it('of place, maker, number and persons, and nothing of it moves', () => {
    const before = telling();
    const after = cleaned(before);
    for (const secret of SECRETS) expect([before.includes(secret), after.includes(secret)], secret).toEqual([true, false]);
    expect(after.length).toBe(before.length);
    for (const kept of [PICTURES, 'mvhd', 'how long it is', 'tkhd', 'how large it is', 'ftyp']) {
      expect(after.indexOf(kept), kept).toBe(before.indexOf(kept));
    }
    expect(after.toString('latin1').match(/free/g)).toHaveLength(4);
  });

  it('and one that is of another family, cut short or of no sense is left as it is', () => {
    const cut = telling().subarray(0, 90);
    for (const bytes of [Buffer.from('\x1aE\xdf\xa3 webm', 'latin1'), Buffer.alloc(0), Buffer.from('a film'), cut]) {
      expect(cleaned(bytes).equals(bytes)).toBe(true);
    }
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (tail) => {
        const bytes = Buffer.concat([box('ftyp', 'isom'), tail]);
        expect(cleaned(bytes).length).toBe(bytes.length);
      }),
      { numRuns: 60 },
    );
  });
});
