/**
 * Takes out of a PDF what it says of who made it, when and with what: the information dictionary but for its
 * title, XMP metadata, private data of programs, what earlier editions of the file left in it, and what cameras
 * wrote into JPEG pictures (ISO 32000-1, 7.5.6, 14.3 and 14.5). What its pages show stays as it is.
 */
import type { PDFContext, PDFDict, PDFDocument, PDFObject, PDFRef } from '@cantoo/pdf-lib';
import { cleanJpeg } from './clean-jpeg.ts';

type PdfLibrary = typeof import('@cantoo/pdf-lib');

/**
 * Why a PDF is left as it is: a change would break its signature, it is locked, it is too large to be taken into
 * memory, or it cannot be followed well enough to be written again.
 */
export type Seal = 'signed' | 'locked' | 'large' | 'unread';

/** In bytes; a scanned book is smaller. */
export const LARGEST_PDF = 128 * 1024 * 1024;

/** Keys that may stand in any dictionary. */
const TELLING = ['Metadata', 'PieceInfo', 'LastModified'];

export async function sealOf(bytes: Uint8Array): Promise<Seal | null> {
  const opened = await open(bytes);
  return typeof opened === 'string' ? opened : null;
}

/** @returns the PDF without metadata; the same bytes when it is sealed */
export async function cleanPdf(bytes: Uint8Array): Promise<Uint8Array> {
  const document = await open(bytes);
  if (typeof document === 'string') return bytes;
  const library = await import('@cantoo/pdf-lib');
  const { context } = document;
  const title = titleOf(context, library);
  for (const [ref, object] of context.enumerateIndirectObjects()) cleanObject(context, ref, object, library);
  delete context.trailerInfo.Info;
  if (title !== undefined) context.trailerInfo.Info = context.register(context.obj({ Title: title }));
  dropUnreached(context, library);
  return await document.save({ addDefaultPage: false, updateFieldAppearances: false });
}

async function open(bytes: Uint8Array): Promise<PDFDocument | Seal> {
  if (bytes.length > LARGEST_PDF) return 'large';
  const library = await import('@cantoo/pdf-lib');
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

function dictOf(object: PDFObject, { PDFDict, PDFStream }: PdfLibrary): PDFDict | null {
  if (object instanceof PDFDict) return object;
  return object instanceof PDFStream ? object.dict : null;
}

function titleOf(context: PDFContext, { PDFDict, PDFName }: PdfLibrary): PDFObject | undefined {
  const info = context.lookup(context.trailerInfo.Info);
  return info instanceof PDFDict ? info.lookup(PDFName.of('Title')) : undefined;
}

function cleanObject(context: PDFContext, ref: PDFRef, object: PDFObject, library: PdfLibrary): void {
  const { PDFName, PDFRawStream } = library;
  const dict = dictOf(object, library);
  for (const key of TELLING) dict?.delete(PDFName.of(key));
  if (!(object instanceof PDFRawStream) || !isJpeg(object.dict, library)) return;
  context.assign(ref, PDFRawStream.of(object.dict, cleanJpeg(object.contents)));
}

/** Whether a stream is a JPEG as it stands: its one filter is that of JPEG, named alone or in a list of one. */
function isJpeg(dict: PDFDict, { PDFArray, PDFName }: PdfLibrary): boolean {
  const filter = dict.lookup(PDFName.of('Filter'));
  const only = filter instanceof PDFArray && filter.size() === 1 ? filter.lookup(0) : filter;
  return only === PDFName.of('DCTDecode');
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
