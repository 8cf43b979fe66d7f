/** Pictures made for the tests: one scene that looks different from every side, stored in any way a camera might. */
import sharp from 'sharp';

/** Upright size of the scene. */
export const SCENE = { width: 320, height: 200 } as const;
export type Rgb = readonly [number, number, number];

/** A scene without symmetry: four coloured quarters, and a dark bar across the upper left. */
export function scene(width: number = SCENE.width, height: number = SCENE.height): Buffer {
  const data = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) data.set(sceneColour(x / width, y / height), (y * width + x) * 3);
  }
  return data;
}

function sceneColour(x: number, y: number): Rgb {
  if (y > 0.1 && y < 0.2 && x < 0.7) return [20, 20, 30];
  const shade = Math.round(60 * x);
  if (y < 0.5) return x < 0.5 ? [200 - shade, 60, 50] : [230, 190 + shade, 80];
  return x < 0.5 ? [40, 90 + shade, 60] : [60, 80, 150 + shade];
}

/**
 * Where a stored pixel is seen, for each value of the EXIF tag Orientation: the tag says at which sides of the
 * upright picture the first stored row and column lie (EXIF 2.3, 4.6.4, tag 0x0112).
 */
const SEEN_AT: Readonly<Record<number, (row: number, column: number, width: number, height: number) => readonly [x: number, y: number]>> = {
  1: (row, column) => [column, row],
  2: (row, column, width) => [width - 1 - column, row],
  3: (row, column, width, height) => [width - 1 - column, height - 1 - row],
  4: (row, column, _, height) => [column, height - 1 - row],
  5: (row, column) => [row, column],
  6: (row, column, width) => [width - 1 - row, column],
  7: (row, column, width, height) => [width - 1 - row, height - 1 - column],
  8: (row, column, _, height) => [row, height - 1 - column],
};

/** The scene as a camera held that way stores it: pixels of `stored` size that come out upright when the tag is obeyed. */
export function storedFor(orientation: number): { data: Buffer; width: number; height: number } {
  const { width, height } = SCENE;
  const upright = scene();
  const seenAt = SEEN_AT[orientation] ?? SEEN_AT[1];
  if (!seenAt) throw new Error('no orientation 1');
  const stored = orientation >= 5 && orientation <= 8 ? { width: height, height: width } : { width, height };
  const data = Buffer.alloc(width * height * 3);
  for (let row = 0; row < stored.height; row += 1) {
    for (let column = 0; column < stored.width; column += 1) {
      const [x, y] = seenAt(row, column, width, height);
      upright.copy(data, (row * stored.width + column) * 3, (y * width + x) * 3, (y * width + x) * 3 + 3);
    }
  }
  return { data, ...stored };
}

/** What a telling camera writes, all of it invented. */
export const TELLING = {
  IFD0: { Make: 'Obscura', Model: 'Obscura Nine', Artist: 'Owner Of The Camera', Copyright: 'Owner Of The Camera', Orientation: '1' },
  IFD2: {
    DateTimeOriginal: '2031:03:12 21:10:00',
    OffsetTimeOriginal: '+00:00',
    BodySerialNumber: 'SERIAL-4417',
    CameraOwnerName: 'Owner Of The Camera',
  },
  IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '0/1 7/1 0/1' },
};

/** A face tagged with a name, by the region schema of the Metadata Working Group. */
export const FACE_TAG = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:mwg-rs="http://www.metadataworkinggroup.com/schemas/regions/"><mwg-rs:Regions rdf:parseType="Resource">
<mwg-rs:RegionList><rdf:Bag><rdf:li mwg-rs:Name="Tagged Person" mwg-rs:Type="Face"/></rdf:Bag></mwg-rs:RegionList></mwg-rs:Regions></rdf:Description>
</rdf:RDF></x:xmpmeta>`;

/** A JPEG of the scene whose Orientation tag holds any number, a nonsense one too. */
export async function orientedJpeg(orientation: number): Promise<Buffer> {
  const { data, width, height } = storedFor(orientation);
  const jpeg = await sharp(data, { raw: { width, height, channels: 3 } })
    .withExif(TELLING)
    .jpeg({ quality: 95 })
    .toBuffer();
  return withOrientation(jpeg, orientation);
}

/** A JPEG of the scene taken at a time, `YYYY:MM:DD HH:MM:SS`; different text gives different bytes. */
export async function jpegTaken(clock: string, offset: string | null, width: number = SCENE.width): Promise<Buffer> {
  const height = Math.round((width * SCENE.height) / SCENE.width);
  const zone = offset === null ? {} : { OffsetTimeOriginal: offset };
  return sharp(scene(width, height), { raw: { width, height, channels: 3 } })
    .withExif({ IFD2: { DateTimeOriginal: clock, ...zone } })
    .jpeg()
    .toBuffer();
}

/** Sets tag 0x0112 in the first directory of the EXIF block (TIFF 6.0, section 2). */
function withOrientation(jpeg: Buffer, orientation: number): Buffer {
  const patched = Buffer.from(jpeg);
  const tiff = patched.indexOf('Exif\0\0', 0, 'latin1') + 6;
  const little = patched.toString('latin1', tiff, tiff + 2) === 'II';
  const short = (at: number): number => (little ? patched.readUInt16LE(at) : patched.readUInt16BE(at));
  const directory = tiff + (little ? patched.readUInt32LE(tiff + 4) : patched.readUInt32BE(tiff + 4));
  for (let entry = 0; entry < short(directory); entry += 1) {
    const at = directory + 2 + entry * 12;
    if (short(at) !== 0x0112) continue;
    if (little) patched.writeUInt16LE(orientation, at + 8);
    else patched.writeUInt16BE(orientation, at + 8);
    return patched;
  }
  throw new Error('no Orientation tag');
}
