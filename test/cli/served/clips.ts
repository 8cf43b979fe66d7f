import { expect, test } from 'vitest';
import { until } from '../started.ts';
import type { Served } from './served.ts';

export function clips(at: Served): void {
  test('while a journal is served, a player gets the stretch of a clip that it asks for', async () => {
    const { address } = at;
    const clip = `${address}files/sessions/2031-03-03-film/reel%2007.mp4`;
    await until(async () => (await fetch(`${address}film.html`)).status === 200);
    const answer = await fetch(clip, { headers: { range: 'bytes=4-7' } });
    expect([answer.status, answer.headers.get('content-type'), await answer.text()]).toEqual([206, 'video/mp4', 'ftyp']);
    expect((await fetch(`${address}files/journal.yaml`)).status).toBe(404);
  });
}
