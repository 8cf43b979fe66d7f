import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { rangeOf, sendClip } from '../../src/cli/send-clip.ts';
import { folderWith } from '../load/folder.ts';

// Source: RFC 9110, sections 14.1.2 and 14.2, with its own examples for a thing of 10,000 bytes.
test.each([
  ['bytes=0-499', { start: 0, end: 499 }],
  ['bytes=500-999', { start: 500, end: 999 }],
  ['bytes=-500', { start: 9500, end: 9999 }],
  ['bytes=9500-', { start: 9500, end: 9999 }],
  ['bytes=9500-99999', { start: 9500, end: 9999 }],
  ['bytes=-20000', { start: 0, end: 9999 }],
  ['bytes=10000-', 'none'],
  ['bytes=7-3', 'none'],
  ['bytes=0-0,-1', null],
  ['lines=1-2', null],
  ['bytes=-', null],
  [undefined, null],
])('of 10,000 bytes, %s is %o', (header, range) => expect(rangeOf(header, 10_000)).toEqual(range));

test('a player gets the whole of a clip, a stretch of it, or is told that there is none', async () => {
  const file = join(folderWith({ 'reel.mp4': '0123456789' }), 'reel.mp4');
  const server = createServer((request, response) => sendClip(file, request, response));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  onTestFinished(() => void server.close());
  const ask = async (range?: string) => {
    const answer = await fetch(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`, range ? { headers: { range } } : {});
    return [answer.status, answer.headers.get('content-range'), answer.headers.get('content-type'), await answer.text()];
  };
  expect(await ask()).toEqual([200, null, 'video/mp4', '0123456789']);
  expect(await ask('bytes=4-6')).toEqual([206, 'bytes 4-6/10', 'video/mp4', '456']);
  expect(await ask('bytes=20-')).toEqual([416, 'bytes */10', 'video/mp4', '']);
});
