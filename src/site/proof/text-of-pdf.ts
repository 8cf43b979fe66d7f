import type { PDFiumLibrary } from '@hyzyla/pdfium';

/** A file could not be looked through to its end, so nothing may be published. */
export class Unproved extends Error {
  /** @param file from the root of what would be published */
  constructor(file: string, reason: string) {
    super(`the text of ${file} could not be read for the proof (${reason}). Nothing is published unproved.`);
  }
}

/** What the reader says of a file that is no PDF, or one that nobody reads without its password. */
const NOTHING_TO_READ = new Set([
  'File not in PDF format or corrupted',
  'Password required or incorrect password',
  'Unsupported security scheme',
]);

/**
 * What the pages of a PDF say, one after the other; nothing of a file that holds no text which anybody could read.
 *
 * @throws Unproved when the reader cannot be started or gives up: a page that was not read may say anything
 */
export async function* textOfPdf(file: string, bytes: Uint8Array): AsyncGenerator<string> {
  const library = await opened(file);
  try {
    const document = await library.loadDocument(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    for (const page of document.pages()) yield page.getText();
    document.destroy();
  } catch (error) {
    if (!NOTHING_TO_READ.has(reasonIn(error))) throw new Unproved(file, reasonIn(error));
  } finally {
    library.destroy();
  }
}

async function opened(file: string): Promise<PDFiumLibrary> {
  try {
    const { PDFiumLibrary: reader } = await import('@hyzyla/pdfium');
    return await reader.init();
  } catch (error) {
    throw new Unproved(file, reasonIn(error));
  }
}

const reasonIn = (error: unknown): string => ((error instanceof Error ? error.message : String(error)).split('\n')[0] ?? '').trim();
