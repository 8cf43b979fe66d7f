/** Which primaries the colours of a HEIC or AVIF picture are in, where it says so by numbers instead of a profile. */
import { boxesBetween } from './boxes.ts';

/** Display P3 in ITU-T H.273, table 2 (SMPTE EG 432-1): colour primaries 12. */
export const DISPLAY_P3 = 12;
/** Transfer characteristics of H.273, table 3, whose brightness is not that of a screen: PQ and HLG. */
const HIGH_RANGE = new Set([16, 18]);

/**
 * Reads the first `colr` box of type `nclx` (ISO/IEC 14496-12, 12.1.5) among the item properties.
 *
 * @param bytes the whole file
 * @returns colour primaries by H.273; null when there is no such box, or its brightness is of high dynamic range
 */
export function colourPrimaries(bytes: Buffer): number | null {
  const meta = boxIn(bytes, 'meta');
  const properties = meta && boxIn(meta.subarray(4), 'iprp');
  const container = properties && boxIn(properties, 'ipco');
  for (const { name, body } of container ? boxesOf(container) : []) {
    if (name !== 'colr' || body.toString('latin1', 0, 4) !== 'nclx' || body.length < 10) continue;
    return HIGH_RANGE.has(body.readUInt16BE(6)) ? null : body.readUInt16BE(4);
  }
  return null;
}

function boxIn(bytes: Buffer, wanted: string): Buffer | null {
  return boxesOf(bytes).find(({ name }) => name === wanted)?.body ?? null;
}

function boxesOf(bytes: Buffer): { readonly name: string; readonly body: Buffer }[] {
  const boxes = boxesBetween((at, length) => bytes.subarray(at, at + length), 0, bytes.length);
  return boxes.map(({ name, at, head, length }) => ({ name, body: bytes.subarray(at + head, at + length) }));
}
