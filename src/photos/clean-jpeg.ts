/**
 * Takes out of a JPEG the segments in which cameras and programs write about it (ITU-T T.81, B.1.1 and B.2.4):
 * comments and application data, but for what decides how the pixels look: JFIF, a colour profile, and Adobe's mark.
 */

const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
const [FIRST_APPLICATION, LAST_APPLICATION] = [0xe0, 0xef];
/** APP0 with JFIF, APP2 with a profile (ICC.1, B.4), APP14 with Adobe's colour transform, by their first letters. */
const KEPT: Readonly<Record<number, string>> = { 224: 'JFIF\0', 226: 'ICC_PROFILE\0', 238: 'Adobe' };

/** @returns the same pixels; the same bytes when the segments cannot be followed */
export function cleanJpeg(bytes: Uint8Array): Uint8Array {
  const all = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kept = [all.subarray(0, 2)];
  let at = 2;
  while (at + 4 <= all.length && all[at] === 0xff) {
    const marker = all[at + 1] ?? 0;
    if (marker === START_OF_SCAN) return Buffer.concat([...kept, all.subarray(at)]);
    const end = at + 2 + all.readUInt16BE(at + 2);
    if (!tells(marker, all.subarray(at + 4, end))) kept.push(all.subarray(at, end));
    at = end;
  }
  return bytes;
}

function tells(marker: number, body: Buffer): boolean {
  if (marker === COMMENT) return true;
  if (marker < FIRST_APPLICATION || marker > LAST_APPLICATION) return false;
  const kept = KEPT[marker];
  return kept === undefined || body.toString('latin1', 0, kept.length) !== kept;
}
