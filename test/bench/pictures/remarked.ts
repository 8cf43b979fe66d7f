/** A JPEG with a comment behind its first marker (ITU-T T.81, B.2.4.5). */
export function remarked(jpeg: Buffer, comment: string): Buffer {
  const text = Buffer.from(comment);
  const segment = Buffer.from([0xff, 0xfe, 0, text.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), segment, text, jpeg.subarray(2)]);
}
