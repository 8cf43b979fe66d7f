/** A picture as the page shows it: upright, small, and of a kind that every browser knows. */
import { readFile } from 'node:fs/promises';
import { type Decoder, withDecoder } from '../photos/decoder.ts';
import { type FileKind, kindByName, type PictureFacts } from '../photos/facts.ts';
import { inspectFile } from '../photos/inspect-file.ts';
import { sharp } from '../photos/uncached-sharp.ts';
import { unpack } from '../photos/unpack.ts';

const LONGER_EDGE = 1000;

/** @returns a JPEG without metadata; null for what cannot be shown */
export async function previewOf(file: string): Promise<Buffer | null> {
  const kind = kindByName(file);
  if (kind === null) return null;
  const { facts } = await inspectFile(file, file);
  if (facts === null || facts.seal === 'unpacks') return null;
  return withDecoder((decoder) => drawn(file, kind, facts, decoder)).catch(() => null);
}

async function drawn(file: string, kind: FileKind, facts: Pick<PictureFacts, 'width' | 'height'>, decoder: Decoder): Promise<Buffer> {
  const bytes = await readFile(file);
  const { width, height } = kind === 'pdf' ? await decoder.measurePdf(bytes) : facts;
  const share = LONGER_EDGE / Math.max(width, height, kind === 'pdf' ? 0 : LONGER_EDGE);
  const size = { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
  const { data, ...raw } = await unpack(bytes, kind, size, decoder);
  return await sharp(data, { raw: { width: raw.width, height: raw.height, channels: raw.channels } })
    .jpeg({ quality: 80 })
    .toBuffer();
}
