import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'vitest';
import { put } from '../../load/folder.ts';
import { until } from '../started.ts';
import { NOTE, note, type Served } from './served.ts';

export function savedNotes(at: Served): void {
  test('a saved note is on its page, a new one gets a page, a removed one loses it, and a mistake passes', async () => {
    const { cwd, address, said } = at;
    const page = async (path: string): Promise<string> => {
      const response = await fetch(address + path);
      return response.status === 200 ? await response.text() : `${response.status}`;
    };
    const shows = (path: string, text: string) => until(async () => (await page(path)).includes(text));

    await shows('sessions/2031-03-02-drum.html', 'Off it came.');
    await shows('', 'The van');
    await shows('index.html', 'The van');
    await shows('parts/drum.html', 'Front drum');
    await shows('data/register.csv', 'drum');

    put(cwd, NOTE, note.replace('Off it came.', 'Off it came at last.'));
    await shows('sessions/2031-03-02-drum.html', 'at last.');

    put(cwd, 'van/sessions/2031-03-05-pipe.md', '---\ndate: 2031-03-05\ntitle: The pipe\n---\n\nBent.\n');
    await shows('sessions/2031-03-05-pipe.html', 'Bent.');
    await shows('sessions.html', 'The pipe');

    put(cwd, NOTE, note.replace('did: removed', 'did: remove'));
    await until(async () => said().includes('error A'));
    await shows('sessions/2031-03-02-drum.html', 'at last.');

    put(cwd, NOTE, note.replace('Off it came.', 'Mended.'));
    await shows('sessions/2031-03-02-drum.html', 'Mended.');

    rmSync(join(cwd, 'van/sessions/2031-03-05-pipe.md'));
    await until(async () => (await page('sessions/2031-03-05-pipe.html')) === '404');
  });
}
