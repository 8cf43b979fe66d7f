import { appendFileSync, readFileSync, statSync, truncateSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync, inflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFRawStream, PDFString } from '@cantoo/pdf-lib';
import exifr from 'exifr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { cleanJpeg } from '../../src/photos/clean-jpeg.ts';
import { cleanPdf, LARGEST_PDF, sealOf } from '../../src/photos/clean-pdf.ts';
import { type Decoder, openDecoder } from '../../src/photos/decoder.ts';
import { sealedPapers } from '../../src/photos/picture-diagnostics.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';
import { darkRoom } from './dark-room.ts';
import { distance, fingerprint } from './fingerprint.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { FACE_TAG, orientedJpeg, SCENE, scene, TELLING } from './sample-pictures.ts';

const SECRETS = [
  'Owner Of The Camera',
  'SERIAL-4417',
  'Tagged Person',
  'Obscura',
  'Exif\0',
  'http://ns.adobe.com',
  'Secret Writer',
  'Scanning Program',
];

/** A PDF of two pages by a telling writer, with a picture from a telling camera; of two editions, the first of which told more. */
async function tellingPdf(filterInList = false): Promise<Buffer> {
  const document = await PDFDocument.create();
  document.setTitle('Invoice 14');
  document.setAuthor('Secret Writer');
  document.setCreator('Scanning Program');
  const { context } = document;
  const jpeg = await sharp(scene(), { raw: { ...SCENE, channels: 3 } })
    .withExif(TELLING)
    .withXmp(FACE_TAG)
    .jpeg()
    .toBuffer();
  const page = document.addPage([300, 200]);
  const image = await document.embedJpg(jpeg);
  page.drawImage(image, { x: 10, y: 10, width: 160, height: 100 });
  await image.embed();
  const stream = context.lookup(image.ref);
  if (!(stream instanceof PDFRawStream)) throw new Error('the picture is no stream');
  if (filterInList) stream.dict.set(PDFName.of('Filter'), context.obj(['DCTDecode']));
  page.node.set(PDFName.of('PieceInfo'), context.obj({ Scanner: PDFString.of('Scanning Program') }));
  document.addPage([200, 300]);
  document.catalog.set(PDFName.of('Metadata'), context.register(context.stream(FACE_TAG, { Type: 'Metadata', Subtype: 'XML' })));
  context.register(context.obj({ LeftOver: PDFString.of('Secret Writer') }));
  return Buffer.from(await document.save({ useObjectStreams: false }));
}

/** All that a PDF holds, its compressed streams unpacked (ISO 32000-1, 7.4.4), by nothing but zlib. */
function everything(pdf: Buffer): string {
  const text = pdf.toString('latin1');
  const streams = [...text.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].map(([, body = '']) => {
    try {
      return inflateSync(Buffer.from(body, 'latin1')).toString('latin1');
    } catch {
      return '';
    }
  });
  return [text, ...streams].join('\n');
}

async function drawn(decoder: Decoder, pdf: Buffer): Promise<boolean[]> {
  const { data, width, height } = await decoder.drawPdf(Uint8Array.from(pdf), 600);
  return fingerprint(
    await sharp(data, { raw: { width, height, channels: 4 } })
      .png()
      .toBuffer(),
  );
}

describe('a PDF is published without what it says of who made it', () => {
  it('which it does say before, in its dictionary, its XMP, its picture and its leavings', async () => {
    const all = everything(await tellingPdf());
    for (const secret of SECRETS) expect(all.includes(secret) || all.includes(utf16(secret)), secret).toBe(true);
  });

  it.each([false, true])('and looks the same, with its title and every page; the filter of its picture in a list: %s', async (inList) => {
    using room = darkRoom();
    const telling = await tellingPdf(inList);
    room.add('papers/bill.pdf', telling);
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    const paper = plan.paper('papers/bill.pdf');
    const cleaned = readFileSync(room.at(paper?.file ?? ''));
    const all = everything(cleaned);
    for (const secret of SECRETS) expect(all.includes(secret) || all.includes(utf16(secret)), secret).toBe(false);
    expect(all.includes(utf16('Invoice 14')) || all.includes('Invoice 14')).toBe(true);
    expect(paper).toMatchObject({ pages: 2, bytes: cleaned.length });
    const decoder = openDecoder();
    expect(await decoder.measurePdf(Uint8Array.from(cleaned))).toEqual({ count: 2, width: 300, height: 200 });
    expect(distance(await drawn(decoder, cleaned), await drawn(decoder, telling))).toBe(0);
    await decoder.close();
  });

  it('once: a second build cleans nothing, and the cleaned one is clean', async () => {
    using room = darkRoom();
    room.add('papers/bill.pdf', await tellingPdf());
    await room.build();
    const file = room.names('site').find((name) => name.endsWith('.pdf')) ?? '';
    const first = readFileSync(room.at(file));
    await room.build();
    expect(readFileSync(room.at(file)).equals(first)).toBe(true);
    expect(room.names('cache').filter((name) => name.endsWith('paper.pdf'))).toHaveLength(1);
  });

  it('but not when it is signed, locked or odd: then it is left byte for byte, with a warning at its place', async () => {
    using room = darkRoom();
    const signature = '<< /Type /Sig /ByteRange [0 10 20 30] /Contents <00> >>';
    const signed = Buffer.from(
      onePagePdf('Secret Writer').toString('latin1').replace('<< /Author (Secret Writer) >>', signature),
      'latin1',
    );
    const document = await PDFDocument.load(onePagePdf('Secret Writer'));
    document.encrypt({ userPassword: 'open', ownerPassword: 'own' });
    const locked = Buffer.from(await document.save());
    const odd = Buffer.from('%PDF-1.4\nnothing that a reader could follow\n%%EOF\n');
    expect([await sealOf(signed), await sealOf(locked), await sealOf(odd), await sealOf(onePagePdf())]).toEqual([
      'signed',
      'locked',
      'unread',
      null,
    ]);
    expect(await sealOf(Buffer.alloc(LARGEST_PDF + 1))).toBe('large');
    for (const bytes of [signed, locked, odd]) expect(Buffer.from(await cleanPdf(bytes)).equals(bytes)).toBe(true);
    for (const [name, bytes] of Object.entries({ signed, locked, odd, fine: onePagePdf() })) room.add(`papers/${name}.pdf`, bytes);
    const fields =
      'papers:\n  - { paper: signed.pdf, kind: receipt }\n  - { paper: locked.pdf, kind: receipt }\n  - { paper: odd.pdf, kind: receipt }\n  - { paper: fine.pdf, kind: receipt }';
    const { record } = compileFiles({ more: { [NOTE]: note(fields) }, assets: room.names('journal') });
    if (record === null) throw new Error('the journal of the test does not compile');
    const { facts } = await room.inspect('header');
    expect(sealedPapers(record.journal, facts).map(({ code, severity, place, message }) => [code, severity, place.line, message])).toEqual([
      ['A910', 'warning', 5, 'papers/signed.pdf is signed, so it is published as it is.'],
      ['A910', 'warning', 6, 'papers/locked.pdf is locked with a password, so it is published as it is.'],
      ['A910', 'warning', 7, 'papers/odd.pdf cannot be followed well enough to be written again, so it is published as it is.'],
    ]);
  });
});

describe('a PDF', () => {
  /** The one-page PDF with more in its catalogue. */
  const holding = (more: string): Buffer =>
    Buffer.from(onePagePdf().toString('latin1').replace('/Type /Catalog', `/Type /Catalog ${more}`), 'latin1');

  it.each([
    ['an action when it is opened', '/OpenAction << /S /JavaScript /JS (hidden) >>'],
    ['an action of a page or of the whole', '/AA << /WC << /S /JavaScript /JS (hidden) >> >>'],
    ['a list of scripts', '/Names << /JavaScript << /Names [(a) << /S /JavaScript /JS (hidden) >>] >> >>'],
    ['a program that it starts', '/OpenAction << /S /Launch /F (hidden) >>'],
    ['a form that runs', '/AcroForm << /Fields [] /XFA (hidden) >>'],
    ['an action after another', '/OpenAction << /S /GoTo /D [3 0 R /Fit] /Next [<< /S /JavaScript /JS (hidden) >>] >>'],
    ['private data deep inside', '/Extensions << /More << /PieceInfo << /Scanner (hidden) >> >> >>'],
  ])('is published without what it would run, or keeps for itself: %s', async (_, more) => {
    expect(await sealOf(holding(more))).toBeNull();
    const all = everything(Buffer.from(await cleanPdf(holding(more))));
    expect([holding(more).includes('hidden'), all.includes('hidden')]).toEqual([true, false]);
  });

  it('is published without the identifier of its file', async () => {
    const telling = Buffer.from(onePagePdf().toString('latin1').replace('/Root 1 0 R', '/Root 1 0 R /ID [<4a1f> <4a1f>]'), 'latin1');
    expect(everything(Buffer.from(await cleanPdf(telling)))).not.toContain('/ID');
  });

  it('whose objects unpack to hundreds of megabytes is left as it is, and does not fill the memory', async () => {
    const packed = deflateSync(Buffer.alloc(200 * 1024 * 1024, ' '));
    const objects = `6 0 obj\n<< /Type /ObjStm /N 1 /First 5 /Filter /FlateDecode /Length ${packed.length} >>\nstream\n`;
    const bomb = Buffer.concat([onePagePdf(), Buffer.from(objects), packed, Buffer.from('\nendstream\nendobj\n')]);
    const before = process.memoryUsage().arrayBuffers;
    expect(await sealOf(bomb)).toBe('unpacks');
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(190e6);
    expect(Buffer.from(await cleanPdf(bomb)).equals(bomb)).toBe(true);
  });

  it('with a number without end is left as it is, and its reader does not begin it at each of its digits', async () => {
    const endless = Buffer.concat([onePagePdf(), Buffer.from(`\n${'9'.repeat(40_000)} 0 obj\n`)]);
    expect(await sealOf(endless)).toBe('unread');
    expect(Buffer.from(await cleanPdf(endless)).equals(endless)).toBe(true);
  });

  it('that is too large to be taken into memory is published all the same', async () => {
    using room = darkRoom();
    room.add('papers/scan.pdf', onePagePdf());
    truncateSync(join(room.root, 'papers/scan.pdf'), LARGEST_PDF + 1);
    appendFileSync(join(room.root, 'papers/scan.pdf'), '%%EOF\n');
    utimesSync(join(room.root, 'papers/scan.pdf'), 1000, 1000);
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    expect(statSync(room.at(plan.paper('papers/scan.pdf')?.file ?? '')).size).toBe(LARGEST_PDF + 7);
  });

  it('that holds a file, or a picture that cannot be followed, is cleaned and published with a warning', async () => {
    expect(await sealOf(holding('/Names << /EmbeddedFiles << /Names [] >> >>'))).toBe('parts');
    const picture = (filter: string) =>
      holding(`/Kept 6 0 R`)
        .toString('latin1')
        .replace('xref', `6 0 obj\n<< /Filter ${filter} /Length 4 >>\nstream\nodd!\nendstream\nendobj\nxref`);
    for (const filter of ['/DCTDecode', '/JPXDecode', '[/FlateDecode /DCTDecode]']) {
      expect(await sealOf(Buffer.from(picture(filter), 'latin1')), filter).toBe('parts');
    }
  });
});

describe('a JPEG inside a PDF', () => {
  it('keeps its pixels and its colour profile, and tells an independent reader nothing', async () => {
    const telling = await sharp(await orientedJpeg(1))
      .withIccProfile('p3')
      .withXmp(FACE_TAG)
      .jpeg()
      .toBuffer();
    const cleaned = cleanJpeg(telling) ?? Buffer.alloc(0);
    expect(await exifr.parse(telling, { xmp: true })).toBeDefined();
    expect(await exifr.parse(Buffer.from(cleaned), { tiff: true, xmp: true, iptc: true })).toBeUndefined();
    expect((await sharp(cleaned).metadata()).icc?.length).toBeGreaterThan(100);
    expect((await sharp(cleaned).raw().toBuffer()).equals(await sharp(telling).raw().toBuffer())).toBe(true);
  });

  it('is not understood when its segments cannot be followed', async () => {
    const picture = await orientedJpeg(1);
    const scan = picture.indexOf(Buffer.from([0xff, 0xda]));
    for (const bytes of [
      Buffer.alloc(0),
      Buffer.from([0xff, 0xd8]),
      Buffer.from('no picture at all'),
      picture.subarray(0, scan),
      Buffer.concat([picture.subarray(0, 2), Buffer.from([0xff, 0xf3, 0, 4, 1, 2]), picture.subarray(2)]),
      Buffer.concat([picture.subarray(0, 2), Buffer.from('odd'), picture.subarray(2)]),
    ])
      expect(cleanJpeg(bytes)).toBeNull();
  });

  it.each(['fill bytes', 'between scans', 'after the end', 'small picture', 'no end'])(
    'keeps no segment of a camera: %s',
    async (where) => {
      const picture = await sharp(scene(), { raw: { ...SCENE, channels: 3 } })
        .jpeg({ progressive: true })
        .toBuffer();
      const secret = Buffer.from('\xff\xe1\0\x10Exif\0\0hidden..', 'latin1');
      const [second = 0] = [...scansOf(picture)].slice(1);
      const joined = (at: number, ...parts: Buffer[]) => Buffer.concat([picture.subarray(0, at), ...parts, picture.subarray(at)]);
      const small = Buffer.from('\xff\xe0\0\x16JFIF\0\x01\x01\0\0\x48\0\x48\x01\x01hidden', 'latin1');
      const telling = {
        'fill bytes': joined(2, Buffer.from([0xff, 0xff, 0xff]), secret),
        'between scans': joined(second, secret),
        'after the end': Buffer.concat([picture, Buffer.from('hidden')]),
        'small picture': joined(2, small),
        'no end': joined(2, secret).subarray(0, picture.length + secret.length - 2),
      }[where];
      if (telling === undefined) throw new Error('no such case');
      expect(telling.includes('hidden')).toBe(true);
      const cleaned = Buffer.from(cleanJpeg(telling) ?? telling);
      expect(cleaned.includes('hidden')).toBe(false);
      const pixels = (bytes: Buffer) => sharp(bytes, { failOn: 'none' }).raw().toBuffer();
      expect((await pixels(cleaned)).equals(await pixels(picture))).toBe(true);
      expect(Buffer.from(cleanJpeg(cleaned) ?? '').equals(cleaned)).toBe(true);
    },
  );
});

/** Where tables or scans begin that follow the first scan of a progressive picture. */
function* scansOf(picture: Buffer): Generator<number> {
  for (let at = picture.indexOf(Buffer.from([0xff, 0xda])); at !== -1; at = picture.indexOf(Buffer.from([0xff, 0xda]), at + 1)) yield at;
}

/** Text of a PDF may be written in UTF-16, in hexadecimal (ISO 32000-1, 7.9.2.2). */
function utf16(text: string): string {
  return [...text].map((letter) => letter.charCodeAt(0).toString(16).padStart(4, '0').toUpperCase()).join('');
}
