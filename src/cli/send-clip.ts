/** Sends a clip, or the stretch of it that a player asks for: a player jumps to a mark without the whole of it. */
import { createReadStream, statSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.mp4': 'video/mp4',
  '.m4v': 'video/mp4',
  '.mov': 'video/quicktime',
  '.webm': 'video/webm',
  '.ogv': 'video/ogg',
  '.mp3': 'audio/mpeg',
};

/** Answers a whole request or a range of bytes (RFC 9110, section 14). */
export function sendClip(file: string, request: IncomingMessage, response: ServerResponse): void {
  const { size } = statSync(file);
  const range = rangeOf(request.headers.range, size);
  response.setHeader('Content-Type', TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream');
  response.setHeader('Accept-Ranges', 'bytes');
  if (range === 'none') {
    response.writeHead(416, { 'Content-Range': `bytes */${size}` }).end();
    return;
  }
  const { start, end } = range ?? { start: 0, end: size - 1 };
  const part = range === null ? {} : { 'Content-Range': `bytes ${start}-${end}/${size}` };
  response.writeHead(range === null ? 200 : 206, { 'Content-Length': Math.max(0, end - start + 1), ...part });
  if (size === 0) response.end();
  else createReadStream(file, { start, end }).pipe(response);
}

/** `bytes=0-99`, `bytes=100-`, `bytes=-100`; null for no range, or for several, which may be answered as none. */
export function rangeOf(header: string | undefined, size: number): { readonly start: number; readonly end: number } | 'none' | null {
  const [, from = '', to = ''] = /^bytes=(\d*)-(\d*)$/.exec(header ?? '') ?? [];
  if (from === '' && to === '') return null;
  const start = from === '' ? Math.max(0, size - Number(to)) : Number(from);
  const end = from === '' || to === '' ? size - 1 : Math.min(size - 1, Number(to));
  return start > end ? 'none' : { start, end };
}
