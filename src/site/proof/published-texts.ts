/** Everything that a published file says, as a reader or a program could get at it: its text in every coding it may have there. */
import { inflateSync } from 'node:zlib';
import { unzipSync } from 'fflate';
import { folded } from '../../journal/copy/withheld.ts';

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00a0' };

/** @returns texts to look through, white space folded; each file gives at least one */
export async function textsPublished(path: string, bytes: Uint8Array): Promise<string[]> {
  const ending = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  const own = [decodedAddress(path)];
  if (ending === 'pdf') return [...own, ...raw(bytes), ...(await textOfPdf(bytes)), ...attachedTexts(bytes)].map(folded);
  if (ending === 'xlsx' || ending === 'zip') {
    const held = Object.entries(unzipSync(bytes));
    const inside = await Promise.all(held.map(([name, content]) => textsPublished(name, content)));
    return [...own.map(folded), ...inside.flat()];
  }
  if (TEXT.has(ending)) return [...own, ...codings(new TextDecoder().decode(bytes))].map(folded);
  return [...own, ...raw(bytes)].map(folded);
}

const TEXT = new Set(['html', 'xml', 'svg', 'json', 'jsonld', 'js', 'css', 'csv', 'txt', 'md', 'yaml', 'rels', 'atom']);

/** A text as it stands, with marks of markup, of scripts, of tables and of addresses undone. Between elements words do not touch. */
function codings(text: string): string[] {
  const entities = text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal: string, hex: string, name: string) => {
    if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    return ENTITIES[name] ?? whole;
  });
  const plain = entities.replace(/<[^>]*>/g, '');
  const script = text
    .replace(/\\u([0-9a-f]{4})/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\(["'\\/])/g, '$1')
    .replace(/\\[nrt]/g, ' ');
  return [text, entities, plain, script, text.replaceAll('""', '"'), decodedAddress(text)];
}

function decodedAddress(text: string): string {
  return text.replace(/(?:%[0-9a-f]{2})+/gi, (coded) => {
    try {
      return decodeURIComponent(coded);
    } catch {
      return coded;
    }
  });
}

/** What stands readable in bytes: as Latin letters, in UTF-8 and in UTF-16 of both orders. */
function raw(bytes: Uint8Array): string[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const swapped = Buffer.from(buffer.subarray(0, buffer.length - (buffer.length % 2))).swap16();
  return [buffer.toString('latin1'), buffer.toString('utf8'), buffer.toString('utf16le'), swapped.toString('utf16le')];
}

/** Files attached to a PDF: streams that are packed, each with what kind it is (ISO 32000-2, 7.11.4). */
function attachedTexts(bytes: Uint8Array): string[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const texts: string[] = [];
  for (let at = buffer.indexOf('/EmbeddedFile'); at >= 0; at = buffer.indexOf('/EmbeddedFile', at + 1)) {
    const begin = buffer.indexOf('stream', at);
    const end = buffer.indexOf('endstream', begin);
    const start = begin + 'stream'.length + (buffer[begin + 'stream'.length] === 13 ? 2 : 1);
    // The list of all attached files has the same name, and no stream of its own.
    if (begin < 0 || end < 0 || buffer.subarray(at, begin).includes('endobj')) continue;
    texts.push(...codings(unpacked(buffer.subarray(start, end)).toString('utf8')));
  }
  return texts;
}

function unpacked(packed: Buffer): Buffer {
  try {
    return inflateSync(packed);
  } catch {
    return packed;
  }
}

async function textOfPdf(bytes: Uint8Array): Promise<string[]> {
  const { PDFiumLibrary } = await import('@hyzyla/pdfium');
  const library = await PDFiumLibrary.init();
  try {
    const document = await library.loadDocument(Buffer.from(bytes));
    const pages = [...document.pages()].map((page) => page.getText());
    document.destroy();
    return pages;
  } catch {
    return [];
  } finally {
    library.destroy();
  }
}
