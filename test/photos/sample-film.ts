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
function pictureEntry(unpacking = 'how to unpack it'): Buffer {
  const entry = box(
    'avc1',
    '\0'.repeat(6),
    '\0\x01',
    '\0'.repeat(4),
    'OBSC',
    '\0'.repeat(26),
    '\x0cObscura AVC9'.padEnd(32, '\0'),
    '\0\x18\xff\xff',
    box('avcC', unpacking),
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

const uint32 = (...numbers: readonly number[]): Buffer => {
  const bytes = Buffer.alloc(numbers.length * 4);
  for (const [n, number] of numbers.entries()) bytes.writeUInt32BE(number, n * 4);
  return bytes;
};

export interface Tabled {
  readonly type: string;
  readonly id: number;
  /** Where each chunk of one sample lies, in the file. */
  readonly chunks: readonly (readonly [from: number, length: number])[];
  /** The four letters of its description. */
  readonly entry?: string;
  /** A kind of reference, and the track that it names. */
  readonly names?: readonly [kind: string, id: number];
  /** More in its table of samples. */
  readonly more?: Buffer;
}

/** A track with all its tables, as a reader needs them that goes by them. */
export function tabled({ type, id, chunks, entry = 'avc1', names, more = Buffer.alloc(0) }: Tabled): Buffer {
  // No set of parameters, which is sound by its form (ISO/IEC 14496-15, 5.3.3.1).
  const described = type === 'vide' ? pictureEntry('\x01\x64\0\x0a\xff\xe0\0') : box(entry, '\0'.repeat(6), '\0\x01', '\0'.repeat(20));
  const tables = [
    box('stsd', NO_FLAGS, uint32(1), described),
    box('stts', NO_FLAGS, uint32(1, chunks.length, 1)),
    box('stsc', NO_FLAGS, uint32(1, 1, 1, 1)),
    box('stsz', NO_FLAGS, uint32(0, chunks.length, ...chunks.map(([, length]) => length))),
    box('stco', NO_FLAGS, uint32(chunks.length, ...chunks.map(([from]) => from))),
  ];
  const here = box('dinf', box('dref', NO_FLAGS, uint32(1), box('url ', uint32(1))));
  const about = box(type === 'vide' ? 'vmhd' : 'nmhd', NO_FLAGS, type === 'vide' ? '\0'.repeat(8) : '');
  const media = box('minf', about, here, box('stbl', ...tables, more));
  const head = box('tkhd', NO_FLAGS, 'MADECHGD', uint32(id, 0, 1), '\0'.repeat(60));
  const times = box('mdhd', NO_FLAGS, 'MADECHGD', uint32(1000, 1), '\x55\xc4\0\0');
  const reference = names ? [box('tref', box(names[0], uint32(names[1])))] : [];
  return box('trak', head, ...reference, box('mdia', times, handler(type), media));
}

/** What a camera writes of where it is between its pictures. */
export const POSITIONS = ['GPS5 +51.5000 -000.1166', 'GPS5 +51.5001 -000.1167'] as const;
const FRAMES = ['picture one', 'picture two'] as const;

/** A film with a track of positions (ISO/IEC 14496-12, 12.3: timed metadata), whose samples lie between the pictures, and one of timecode. */
export function tellingFilm(changed: Partial<Tabled> = {}, ...more: readonly Buffer[]): Buffer {
  const media = [FRAMES[0], POSITIONS[0], FRAMES[1], POSITIONS[1], 'TIME'];
  const from = FIRST.length + 8;
  const chunk = (n: number) => [from + media.slice(0, n).join('').length, media[n]?.length ?? 0] as const;
  const movie = box(
    'moov',
    box('mvhd', NO_FLAGS, 'MADECHGD', uint32(1000, 2), uint32(0x10000), '\x01\0', '\0'.repeat(10), '\0'.repeat(60), uint32(9)),
    tabled({ type: 'vide', id: 1, chunks: [chunk(0), chunk(2)], names: ['tmcd', 3] }),
    tabled({ type: 'meta', id: 2, entry: 'gpmd', chunks: [chunk(1), chunk(3)], names: ['cdsc', 1], ...changed }),
    tabled({ type: 'tmcd', id: 3, entry: 'tmcd', chunks: [chunk(4)] }),
    ...more,
  );
  return Buffer.concat([FIRST, box('mdat', media.join('')), movie]);
}
