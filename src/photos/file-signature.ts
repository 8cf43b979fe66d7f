/** What a file is by its first bytes, whatever its name says. */
import type { FileKind } from './facts.ts';

/** How many bytes from the start `signatureOf` needs. */
export const SIGNATURE_BYTES = 64;

const STARTS: readonly (readonly [string, string])[] = [
  ['\xff\xd8\xff', 'JPEG'],
  ['\x89PNG\r\n\x1a\n', 'PNG'],
  ['II*\0', 'TIFF'],
  ['MM\0*', 'TIFF'],
  ['%PDF-', 'PDF'],
  ['GIF8', 'GIF'],
  ['BM', 'BMP'],
  ['PK\x03\x04', 'ZIP'],
  ['<svg', 'SVG'],
  ['<!DOCTYPE html', 'HTML'],
  ['<html', 'HTML'],
];

const KINDS: Readonly<Record<string, FileKind>> = {
  JPEG: 'jpeg',
  PNG: 'png',
  TIFF: 'tiff',
  WebP: 'webp',
  AVIF: 'avif',
  HEIC: 'heic',
  PDF: 'pdf',
};

const NAMES = new Map(Object.entries(KINDS).map(([name, kind]) => [kind, name]));

/** The name of a kind as people say it: `JPEG`. */
export function nameOfKind(kind: FileKind): string {
  return NAMES.get(kind) ?? kind;
}

/**
 * @param head the first bytes of a file
 * @returns the kind when it is one that is published, and the name of what it is when that can be told
 */
export function signatureOf(head: Uint8Array): { kind: FileKind | null; name: string | null } {
  const text = Buffer.from(head).toString('latin1', 0, SIGNATURE_BYTES);
  const name = boxed(text) ?? STARTS.find(([start]) => text.startsWith(start))?.[1] ?? null;
  return { kind: name === null ? null : (KINDS[name] ?? null), name };
}

/** Kinds that say what they are a few bytes in: RIFF, and the `ftyp` box of ISO/IEC 14496-12 with its brands. */
function boxed(text: string): string | null {
  if (text.startsWith('RIFF') && text.slice(8, 12) === 'WEBP') return 'WebP';
  if (text.slice(4, 8) !== 'ftyp') return null;
  const length = [0, 1, 2, 3].reduce((sum, index) => sum * 256 + text.charCodeAt(index), 0);
  const brands = (text.slice(8, 12) + text.slice(16, length)).match(/.{4}/gsu) ?? [];
  if (brands.some((brand) => brand === 'avif' || brand === 'avis')) return 'AVIF';
  if (brands.some((brand) => /^(hei[cxms]|hev[cxms])$/u.test(brand))) return 'HEIC';
  return brands[0]?.startsWith('mif') === true ? 'HEIC' : 'film';
}
