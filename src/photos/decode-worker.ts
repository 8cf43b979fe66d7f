/**
 * Unpacks what sharp cannot: HEVC pictures, by libheif, and the first page of a PDF, by PDFium. Both are
 * WebAssembly and keep a thread busy, so they run in a worker, one job at a time.
 */
import { parentPort } from 'node:worker_threads';
import type { PDFiumDocument, PDFiumLibrary } from '@hyzyla/pdfium';
import type { DecodeJob, DecodeReply, RawPicture } from './decoder.ts';

let pdfium: Promise<PDFiumLibrary> | null = null;

parentPort?.on('message', (job: DecodeJob) => {
  run(job).then(
    (reply) => parentPort?.postMessage(reply, reply.raw ? [reply.raw.data.buffer as ArrayBuffer] : []),
    (error: unknown) => parentPort?.postMessage({ failed: error instanceof Error ? error.message : String(error) }),
  );
});

async function run(job: DecodeJob): Promise<DecodeReply> {
  if (job.what === 'heic') return { raw: await unpackHeic(job.bytes), pages: null };
  return await withDocument(job.bytes, (document) => ('edge' in job ? drawPage(document, job.edge) : measure(document)));
}

/**
 * The picture that the file says to show, of however many it holds. libheif turns and mirrors as the container
 * says; nothing is left to do for the orientation in EXIF.
 */
async function unpackHeic(bytes: Uint8Array): Promise<RawPicture> {
  const { default: libheif } = await import('libheif-js/wasm-bundle.js');
  const decoder = new libheif.HeifDecoder();
  const images = decoder.decode(bytes);
  try {
    const primary = images.find((image) => image.is_primary()) ?? images[0];
    if (!primary) throw new Error('it is not a HEIC picture that can be read');
    const [width, height] = [primary.get_width(), primary.get_height()];
    const data = new Uint8ClampedArray(width * height * 4);
    const filled = await new Promise((resolve) => primary.display({ data, width, height }, resolve));
    if (filled === null) throw new Error('its pixels are damaged');
    return { width, height, data: new Uint8Array(data.buffer) };
  } finally {
    for (const image of images) image.free();
    libheif.heif_context_free(decoder.decoder);
  }
}

async function withDocument<T>(bytes: Uint8Array, use: (document: PDFiumDocument) => Promise<T> | T): Promise<T> {
  pdfium ??= import('@hyzyla/pdfium').then(({ PDFiumLibrary }) => PDFiumLibrary.init());
  const document = await (await pdfium).loadDocument(bytes);
  try {
    return await use(document);
  } finally {
    document.destroy();
  }
}

function measure(document: PDFiumDocument): DecodeReply {
  const { originalWidth, originalHeight } = document.getPage(0).getOriginalSize();
  return { raw: null, pages: { count: document.getPageCount(), width: originalWidth, height: originalHeight } };
}

async function drawPage(document: PDFiumDocument, edge: number): Promise<DecodeReply> {
  const page = document.getPage(0);
  const { originalWidth, originalHeight } = page.getOriginalSize();
  const drawn = await page.render({ scale: edge / Math.max(originalWidth, originalHeight), renderFormFields: true });
  return { raw: { width: drawn.width, height: drawn.height, data: Uint8Array.from(drawn.data) }, pages: null };
}
