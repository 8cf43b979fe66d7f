/** Films made of boxes, as cameras and telephones write them. */

/** A box of ISO/IEC 14496-12: its length, its name, what it holds. */
export function box(name: string, ...parts: (string | Buffer)[]): Buffer {
  const body = Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part)));
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length + 8);
  head.write(name, 4, 'latin1');
  return Buffer.concat([head, body]);
}

export const PICTURES = 'the film itself, frame by frame';
const NO_FLAGS = '\0\0\0\0';

/** A header with two times of 1904 onwards, here in letters. */
const header = (name: string): Buffer => box(name, NO_FLAGS, 'MADECHGD', '\0\0\0\x01', '\0'.repeat(80));

export const handler = (type: string, name = 'Obscura Handler'): Buffer =>
  box('hdlr', NO_FLAGS, '\0\0\0\0', type, '\0'.repeat(12), `${name}\0`);

/** A description of pictures: 86 bytes, the maker at 20 and the name of a program at 50. */
function pictureEntry(): Buffer {
  const entry = box(
    'avc1',
    '\0'.repeat(6),
    '\0\x01',
    '\0'.repeat(4),
    'OBSC',
    '\0'.repeat(26),
    '\x0cObscura AVC9'.padEnd(32, '\0'),
    '\0\x18\xff\xff',
    box('avcC', 'how to unpack it'),
  );
  return entry;
}

export function track(type = 'vide', ...more: Buffer[]): Buffer {
  const entry = type === 'vide' ? pictureEntry() : box('mp4a', '\0'.repeat(6), '\0\x01', '\0'.repeat(4), 'OBSC', '\0'.repeat(12));
  return box(
    'trak',
    header('tkhd'),
    box(
      'mdia',
      header('mdhd'),
      handler(type),
      box(
        'minf',
        box('vmhd', NO_FLAGS),
        box('dinf', box('dref', NO_FLAGS, '\0\0\0\x01', box('url ', '\0\0\0\x01'))),
        box('stbl', box('stsd', NO_FLAGS, '\0\0\0\x01', entry), box('stco', NO_FLAGS, '\0\0\0\0'), ...more),
      ),
    ),
  );
}

export const FIRST = box('ftyp', 'isom\0\0\0\0isommp42');
/** A film that tells nothing more than films must. */
export function film(...more: Buffer[]): Buffer {
  return Buffer.concat([FIRST, box('mdat', PICTURES), box('moov', header('mvhd'), track(), ...more)]);
}
