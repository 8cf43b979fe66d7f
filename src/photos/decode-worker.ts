/**
 * Unpacks what sharp cannot: HEVC pictures, by libheif, and the first page of a PDF, by PDFium; and cleans PDFs. All
 * keep a thread busy for as long as a file makes them, so they run in a worker, one job at a time.
 */
import { parentPort } from 'node:worker_threads';
import type { PDFiumDocument, PDFiumLibrary } from '@hyzyla/pdfium';
import { cleanPdf, sealOf } from './clean-pdf.ts';
import type { DecodeJob, DecodeReply, RawPicture } from './decoder.ts';

/** In bytes. What asks for more fails, as on a machine that has no more; a page with 100 megapixels on it takes half of it. */
const MOST_FOR_PDF = 1024 ** 3;
/** Both libraries end at this by themselves. */
const MOST_FOR_HEIC = 2 * 1024 ** 3;
const PAGE = 64 * 1024;

let pdfium: Promise<PDFiumLibrary> | null = null;
let most = MOST_FOR_HEIC;

const { grow } = WebAssembly.Memory.prototype;
WebAssembly.Memory.prototype.grow = function (this: WebAssembly.Memory, pages: number): number {
  if (this.buffer.byteLength + pages * PAGE > most) throw new RangeError('more memory than a page may take');
  return grow.call(this, pages);
};

parentPort?.on('message', (job: DecodeJob) => {
  run(job).then(
    (reply) => parentPort?.postMessage(reply, reply.raw ? [reply.raw.data.buffer as ArrayBuffer] : []),
    (error: unknown) => parentPort?.postMessage({ failed: error instanceof Error ? error.message : String(error) }),
  );
});

async function run(job: DecodeJob): Promise<DecodeReply> {
  if (job.what === 'seal-pdf') return { seal: await sealOf(job.bytes) };
  if (job.what === 'clean-pdf') return { cleaned: await cleanPdf(job.bytes) };
  most = job.what === 'heic' ? MOST_FOR_HEIC : MOST_FOR_PDF;
  if (job.what === 'heic') return { raw: await unpackHeic(job.bytes) };
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
  const { originalWidth: width, originalHeight: height } = document.getPage(0).getOriginalSize();
  // A tree of pages without a page, as one that names itself, is answered by one without a size.
  if (!isSize(width) || !isSize(height)) throw new Error('its first page has no size');
  return { pages: { count: document.getPageCount(), width, height } };
}

const isSize = (side: number): boolean => side > 0 && Number.isFinite(side);

async function drawPage(document: PDFiumDocument, edge: number): Promise<DecodeReply> {
  const { pages } = measure(document);
  const longer = Math.max(pages?.width ?? 0, pages?.height ?? 0);
  const drawn = await document.getPage(0).render({ scale: edge / longer, renderFormFields: true });
  if (!isSize(drawn.width) || !isSize(drawn.height)) throw new Error('its first page is thinner than a pixel');
  return { raw: { width: drawn.width, height: drawn.height, data: Uint8Array.from(drawn.data) } };
}
