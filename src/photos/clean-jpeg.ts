/**
 * Takes out of a JPEG what cameras and programs write about it (ITU-T T.81, B.1.1 and B.2): comments, application
 * data, and whatever follows the end; but for what decides how the pixels look: JFIF, a colour profile, and Adobe's mark.
 */

const [MARK, START_OF_IMAGE, END_OF_IMAGE, START_OF_SCAN] = [0xff, 0xd8, 0xd9, 0xda];
const COMMENT = 0xfe;
const [FIRST_APPLICATION, LAST_APPLICATION] = [0xe0, 0xef];
/** Frames, tables, scans and the like: what pictures are made of (table B.1). */
const [FIRST_OF_PICTURE, LAST_OF_PICTURE] = [0xc0, 0xdf];
/** APP0 with JFIF, APP2 with a profile (ICC.1, B.4), APP14 with Adobe's colour transform: how they begin, and how much of them stays. */
const KEPT: Readonly<Record<number, readonly [begins: string, most: number]>> = {
  // Without the small picture that may follow (JFIF 1.02).
  224: ['JFIF\0', 12],
  226: ['ICC_PROFILE\0', 0xffff],
  238: ['Adobe', 12],
};

/** @returns the same pixels; null when it cannot be followed to its end */
export function cleanJpeg(bytes: Uint8Array): Uint8Array | null {
  const all = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (all[0] !== MARK || all[1] !== START_OF_IMAGE) return null;
  const kept = [all.subarray(0, 2)];
  let scanned = false;
  for (let at = 2; ; ) {
    // Any number of fill bytes may stand before a marker.
    while (all[at] === MARK && all[at + 1] === MARK) at += 1;
    const marker = all[at] === MARK ? all[at + 1] : undefined;
    // Some writers leave out the end; of the last scan nothing is missing then.
    if (at >= all.length && scanned) return Buffer.concat(kept);
    if (marker === END_OF_IMAGE) return scanned ? Buffer.concat([...kept, Buffer.from([MARK, END_OF_IMAGE])]) : null;
    const end = at + 4 <= all.length ? at + 2 + all.readUInt16BE(at + 2) : Number.POSITIVE_INFINITY;
    if (marker === undefined || end > all.length || end < at + 4) return null;
    const segment = keptOf(marker, all.subarray(at + 4, end));
    if (segment === null) return null;
    kept.push(segment);
    at = end;
    if (marker !== START_OF_SCAN) continue;
    const stop = endOfScan(all, at);
    kept.push(all.subarray(at, stop));
    at = stop;
    scanned = true;
  }
}

/** @returns what stays of a segment, which may be nothing; null for one that no picture has */
function keptOf(marker: number, body: Buffer): Buffer | null {
  if (marker === COMMENT) return Buffer.alloc(0);
  if (marker >= FIRST_OF_PICTURE && marker <= LAST_OF_PICTURE && marker !== START_OF_IMAGE) return segmentOf(marker, body);
  if (marker < FIRST_APPLICATION || marker > LAST_APPLICATION) return null;
  const [begins, most] = KEPT[marker] ?? ['', 0];
  if (begins === '' || body.toString('latin1', 0, begins.length) !== begins) return Buffer.alloc(0);
  return marker === FIRST_APPLICATION
    ? segmentOf(marker, Buffer.concat([body.subarray(0, most), Buffer.alloc(2)]))
    : segmentOf(marker, body.subarray(0, most));
}

function segmentOf(marker: number, body: Buffer): Buffer {
  const head = Buffer.from([MARK, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** Within a scan a marker byte stands before a zero, or is one of the eight that a scan may begin anew with. */
function endOfScan(all: Buffer, from: number): number {
  for (let at = all.indexOf(MARK, from); at !== -1; at = all.indexOf(MARK, at + 1)) {
    const next = all[at + 1];
    if (next === undefined) return at;
    if (next !== 0 && next !== MARK && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return all.length;
}
