/** Everything that a published file says, as a reader or a program could get at it: its text in every coding it may have there. */
import { inflateSync } from 'node:zlib';
import { unzipSync } from 'fflate';
import { folded } from '../../journal/copy/withheld.ts';
import { isBeyondBounds } from '../../photos/packed-streams.ts';
import { PAPERS_FOLDER } from '../../photos/plan-pictures.ts';
import { codings, decodedAddress, readAsPage } from './codings.ts';
import { textOfPdf, Unproved } from './text-of-pdf.ts';

/**
 * What a text is: `prose` as people read it, `marked` text with marks of some format between its words, and `bytes` of a
 * file that is no text or of a style sheet, in which chance makes short words.
 */
export type TextKind = 'prose' | 'marked' | 'bytes';

export interface PublishedText {
  readonly text: string;
  readonly kind: TextKind;
}

/** @returns texts to look through, white space folded; each file gives at least one */
export async function textsPublished(path: string, bytes: Uint8Array): Promise<string[]> {
  const texts: string[] = [];
  for await (const { text } of eachText(path, bytes)) texts.push(folded(text));
  return texts;
}

/** Whether anything that is looked for may stand in a file of text, and in one of bytes. */
export interface WhatIsOfUse {
  mayStandInText(bytes: Uint8Array): boolean;
  mayStandInBytes(bytes: Uint8Array): boolean;
}

const EVERYTHING: WhatIsOfUse = { mayStandInText: () => true, mayStandInBytes: () => true };

/**
 * The same, one after the other and as they stand, so that of a large file only a piece is held at a time.
 *
 * @param isOfUse what it says no of is passed over
 */
export async function* eachText(path: string, bytes: Uint8Array, isOfUse = EVERYTHING): AsyncGenerator<PublishedText> {
  const ending = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  yield { text: decodedAddress(path), kind: 'marked' };
  if (ending === 'xlsx' || ending === 'zip') {
    for (const [name, content] of Object.entries(unzipSync(bytes))) yield* eachText(name, content, isOfUse);
  } else if (TEXT.has(ending)) {
    if (isOfUse.mayStandInText(bytes)) yield* textFile(ending, new TextDecoder().decode(bytes));
  } else {
    if (isOfUse.mayStandInBytes(bytes)) for (const text of raw(bytes)) yield { text, kind: 'bytes' };
    if (ending === 'pdf') {
      if (path.startsWith(`${PAPERS_FOLDER}/`) && isBeyondBounds(bytes))
        throw new Unproved(path, 'it unpacks to more than any paper holds');
      for await (const text of textOfPdf(path, bytes)) yield { text, kind: 'prose' };
      for (const text of attachedTexts(path, bytes)) yield { text, kind: 'marked' };
    }
  }
}

function* textFile(ending: string, text: string): Generator<PublishedText> {
  const kind = ending === 'css' ? 'bytes' : 'marked';
  for (const coded of codings(text)) yield { text: coded, kind };
  if (PAGES.has(ending)) yield { text: readAsPage(text), kind: 'prose' };
  else if (PROSE.has(ending)) yield { text, kind: 'prose' };
}

const PAGES = new Set(['html', 'svg', 'atom', 'xml']);
const PROSE = new Set(['txt', 'md', 'yaml']);
const TEXT = new Set(['html', 'xml', 'svg', 'json', 'jsonld', 'js', 'css', 'csv', 'txt', 'md', 'yaml', 'rels', 'atom']);

/** So much of a file is looked through at once; pieces overlap by more than anything that is withheld is long. Both are even. */
const PIECE = 4 * 1024 * 1024;
const OVERLAP = 64 * 1024;

/** What stands readable in bytes: as Latin letters, in UTF-8 and in UTF-16 of both orders. */
function* raw(bytes: Uint8Array): Generator<string> {
  for (let start = 0; start === 0 || start + OVERLAP < bytes.length; start += PIECE) {
    const piece = Buffer.from(bytes.buffer, bytes.byteOffset + start, Math.min(PIECE + OVERLAP, bytes.length - start));
    const swapped = Buffer.from(piece.subarray(0, piece.length - (piece.length % 2))).swap16();
    yield piece.toString('latin1');
    yield piece.toString('utf8');
    yield piece.toString('utf16le');
    yield swapped.toString('utf16le');
  }
}

/** Files attached to a PDF: streams that are packed, each with what kind it is (ISO 32000-2, 7.11.4). */
function* attachedTexts(path: string, bytes: Uint8Array): Generator<string> {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = buffer.indexOf('/EmbeddedFile'); at >= 0; at = buffer.indexOf('/EmbeddedFile', at + 1)) {
    const begin = buffer.indexOf('stream', at);
    const end = buffer.indexOf('endstream', begin);
    const start = begin + 'stream'.length + (buffer[begin + 'stream'.length] === 13 ? 2 : 1);
    // The list of all attached files has the same name, and no stream of its own.
    if (begin < 0 || end < 0 || buffer.subarray(at, begin).includes('endobj')) continue;
    yield* codings(unpacked(path, buffer.subarray(start, end)).toString('utf8'));
  }
}

/** In bytes; what is attached to a paper is a bill in another format, or a table. */
const MOST_ATTACHED = 256 * 1024 * 1024;

function unpacked(path: string, packed: Buffer): Buffer {
  try {
    return inflateSync(packed, { maxOutputLength: MOST_ATTACHED });
  } catch (error) {
    if ((error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE') throw new Unproved(path, 'a file in it unpacks to too much');
    return packed;
  }
}
