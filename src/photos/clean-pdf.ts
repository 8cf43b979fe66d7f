/**
 * Takes out of a PDF what it says of who made it, when and with what: the information dictionary but for its
 * title, XMP metadata, private data of programs, the identifier of the file, what earlier editions of it left, and what
 * cameras wrote into JPEG pictures (ISO 32000-1, 7.5.6, 14.3 to 14.5); and the scripts and programs that it would
 * run (12.6.4). What its pages show stays as it is.
 */
import type { PDFContext, PDFDict, PDFDocument, PDFObject, PDFRef } from '@cantoo/pdf-lib';
import { cleanJpeg } from './clean-jpeg.ts';
import { isBeyondBounds } from './packed-streams.ts';

type PdfLibrary = typeof import('@cantoo/pdf-lib');

/** All of the library in the one file that it comes in as well: as its many files, each worker is three times as long in reading it. */
const pdfLibrary = (): Promise<PdfLibrary> => import(new URL('../dist/pdf-lib.esm.min.js', import.meta.resolve('@cantoo/pdf-lib')).href);

/**
 * Why a PDF is left as it is: a change would break its signature, it is locked, it is too large to be taken into
 * memory, it unpacks to more than any paper holds, or it cannot be followed well enough to be written again. `parts`: it
 * is cleaned, and there are files or pictures in it that cannot be looked into.
 */
export type Seal = 'signed' | 'locked' | 'large' | 'unpacks' | 'unread' | 'parts';

/** In bytes; a scanned book is smaller. */
export const LARGEST_PDF = 128 * 1024 * 1024;

/** In digits: the reader tries a number anew from each of them, and no number of a PDF is longer (ISO 32000-1, annex C). */
const LONGEST_NUMBER = 1000;

/** Keys that may stand in any dictionary. */
const TELLING = [
  'Metadata',
  'PieceInfo',
  'LastModified',
  'JavaScript',
  'AA',
  'XFA',
  'CreationDate',
  'ModDate',
  'Producer',
  'Creator',
  'Author',
];
/** Actions that run something, or send or fetch something, without being seen. */
const RUNNING = ['JavaScript', 'Launch', 'SubmitForm', 'ImportData', 'RichMediaExecute', 'Rendition'];
/** Files in the file: attached, or played. */
const HOLDING_FILES = ['EmbeddedFiles', 'EF', 'RichMediaContent', 'AF'];

export async function sealOf(bytes: Uint8Array): Promise<Seal | null> {
  const opened = await open(bytes);
  if (typeof opened === 'string') return opened;
  return holdsMore(opened.context, await pdfLibrary()) ? 'parts' : null;
}

/** @returns the PDF without metadata; the same bytes when it is sealed as a whole */
export async function cleanPdf(bytes: Uint8Array): Promise<Uint8Array> {
  const document = await open(bytes);
  if (typeof document === 'string') return bytes;
  const library = await pdfLibrary();
  const { context } = document;
  const title = titleOf(context, library);
  for (const [ref, object] of context.enumerateIndirectObjects()) cleanObject(context, ref, object, library);
  delete context.trailerInfo.Info;
  delete context.trailerInfo.ID;
  if (title !== undefined) context.trailerInfo.Info = context.register(context.obj({ Title: title }));
  dropUnreached(context, library);
  return await document.save({ addDefaultPage: false, updateFieldAppearances: false });
}

async function open(bytes: Uint8Array): Promise<PDFDocument | Seal> {
  if (bytes.length > LARGEST_PDF) return 'large';
  if (isBeyondBounds(bytes)) return 'unpacks';
  if (longestNumberIn(bytes) > LONGEST_NUMBER) return 'unread';
  const library = await pdfLibrary();
  try {
    const document = await library.PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true });
    if (document.getPageCount() === 0) return 'unread';
    const objects = document.context.enumerateIndirectObjects();
    return objects.some(([, object]) => dictOf(object, library)?.has(library.PDFName.of('ByteRange'))) ? 'signed' : document;
  } catch {
    // The trailer of a locked one names its dictionary of encryption, and is itself never encrypted (7.6.1).
    return Buffer.from(bytes).includes('/Encrypt') ? 'locked' : 'unread';
  }
}

function longestNumberIn(bytes: Uint8Array): number {
  let [longest, digits] = [0, 0];
  for (const byte of bytes) {
    digits = byte >= 0x30 && byte <= 0x39 ? digits + 1 : 0;
    if (digits > longest) longest = digits;
  }
  return longest;
}

function dictOf(object: PDFObject, { PDFDict, PDFStream }: PdfLibrary): PDFDict | null {
  if (object instanceof PDFDict) return object;
  return object instanceof PDFStream ? object.dict : null;
}

function titleOf(context: PDFContext, { PDFDict, PDFName }: PdfLibrary): PDFObject | undefined {
  const info = context.lookup(context.trailerInfo.Info);
  return info instanceof PDFDict ? info.lookup(PDFName.of('Title')) : undefined;
}

function cleanObject(context: PDFContext, ref: PDFRef, object: PDFObject, library: PdfLibrary): void {
  const { PDFRawStream } = library;
  eachDict(object, library, (dict) => cleanDict(dict, library));
  if (!(object instanceof PDFRawStream) || !isJpeg(object.dict, library)) return;
  const cleaned = cleanJpeg(object.contents);
  if (cleaned !== null) context.assign(ref, PDFRawStream.of(object.dict, cleaned));
}

/** An action that would run something becomes an empty one, which does nothing. */
function cleanDict(dict: PDFDict, { PDFName }: PdfLibrary): void {
  for (const key of TELLING) dict.delete(PDFName.of(key));
  const does = dict.lookup(PDFName.of('S'));
  if (!dict.has(PDFName.of('JS')) && !RUNNING.some((name) => does === PDFName.of(name))) return;
  for (const key of dict.keys()) dict.delete(key);
}

/** The dictionary of an object, and those that are written out inside it. */
function eachDict(object: PDFObject, library: PdfLibrary, visit: (dict: PDFDict) => void): void {
  const { PDFArray, PDFDict, PDFStream } = library;
  if (object instanceof PDFArray) for (const each of object.asArray()) eachDict(each, library, visit);
  const dict = object instanceof PDFStream ? object.dict : object instanceof PDFDict ? object : null;
  if (dict === null) return;
  visit(dict);
  for (const each of dict.values()) eachDict(each, library, visit);
}

/** Whether there is something in it that is not cleaned: a file, or a picture that is no plain JPEG and may tell of its camera. */
function holdsMore(context: PDFContext, library: PdfLibrary): boolean {
  const { PDFName, PDFRawStream } = library;
  let found = false;
  for (const [, object] of context.enumerateIndirectObjects()) {
    eachDict(object, library, (dict) => {
      found ||= HOLDING_FILES.some((key) => dict.has(PDFName.of(key)));
    });
    if (!(object instanceof PDFRawStream)) continue;
    const filters = filtersOf(object.dict, library);
    const only = filters.length === 1;
    found ||= filters.includes('/JPXDecode') || (filters.includes('/DCTDecode') && !(only && cleanJpeg(object.contents) !== null));
  }
  return found;
}

/** Whether a stream is a JPEG as it stands: its one filter is that of JPEG, named alone or in a list of one. */
function isJpeg(dict: PDFDict, library: PdfLibrary): boolean {
  const filters = filtersOf(dict, library);
  return filters.length === 1 && filters[0] === '/DCTDecode';
}

function filtersOf(dict: PDFDict, { PDFArray, PDFName }: PdfLibrary): string[] {
  const filter = dict.lookup(PDFName.of('Filter'));
  if (filter instanceof PDFArray) return filter.asArray().map((_, n) => String(filter.lookup(n)));
  return filter === undefined ? [] : [String(filter)];
}

/** Deletes every object that no way leads to from the trailer. */
function dropUnreached(context: PDFContext, library: PdfLibrary): void {
  const { PDFArray, PDFRef } = library;
  const reached = new Set<PDFRef>();
  const left: (PDFObject | undefined)[] = [context.trailerInfo.Root, context.trailerInfo.Info];
  for (let object = left.pop(); object !== undefined || left.length > 0; object = left.pop()) {
    if (object instanceof PDFRef) {
      if (reached.has(object)) continue;
      reached.add(object);
      left.push(context.lookup(object));
    } else if (object instanceof PDFArray) {
      left.push(...object.asArray());
    } else if (object !== undefined) {
      left.push(...(dictOf(object, library)?.values() ?? []));
    }
  }
  for (const [ref] of context.enumerateIndirectObjects()) if (!reached.has(ref)) context.delete(ref);
}
