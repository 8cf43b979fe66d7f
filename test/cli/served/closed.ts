import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { until } from '../started.ts';
import type { Served } from './served.ts';

/** Asks for an address as it is written: `fetch` would put it in order first. */
function ask(address: string, path: string, headers: Readonly<Record<string, string>> = {}): Promise<{ status: number; text: string }> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    request({ hostname, port, path, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, text: Buffer.concat(chunks).toString('utf8') }));
    })
      .on('error', reject)
      .end();
  });
}

const CLOSED: readonly string[] = [
  '/package.json?raw',
  '/src/cli/main.ts?raw',
  '/src/cli/main.ts',
  '/src/cli/main.ts?import&raw',
  '/package.json?url',
  '/@fs/etc/passwd',
  '/@fs/etc/passwd?raw',
  '/@id/node:fs',
  '/..%2f..%2f..%2fetc/passwd',
  '/../../../../etc/passwd',
  '/%2e%2e/%2e%2e/package.json',
  '/files/../journal.yaml',
  '/files/journal.yaml',
  '/scripts/..%2f..%2f..%2fpackage.json',
  '/css/%00',
  '/%',
  '//..%2f/src/cli/main.ts',
  '/node_modules/vite/package.json',
  '/node_modules/vite/dist/client/client.mjs/..%2f..%2f..%2fpackage.json',
  '/__open-in-editor?file=/etc/passwd',
];

/** What Node keeps of code that was loaded under a name which no other run will load it by. */
function compiledForOneRun(kept: string): string[] {
  const files = readdirSync(kept, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return files.flatMap(({ parentPath, name }) => /file:[^\0]*\?t=\d+/.exec(readFileSync(join(parentPath, name), 'latin1'))?.[0] ?? []);
}

/** Ends the server. */
export function closed(at: Served): void {
  test('what is served is the site and nothing else, to this machine alone, and nothing is left behind', async () => {
    const { cwd, address, child } = at;
    await until(async () => (await ask(address, '/index.html')).status === 200);
    for (const path of [
      '/',
      '/parts/drum.html',
      '/css/page.css',
      '/icon.svg',
      '/scripts/search.js',
      '/data/register.csv',
      '/@vite/client',
    ]) {
      expect([path, (await ask(address, path)).status]).toEqual([path, 200]);
    }
    for (const path of CLOSED) {
      const { status, text } = await ask(address, path);
      expect([path, status >= 400, /root:|parseArgs|"dependencies"|time-zone/.test(text), text.includes('    at ')]).toEqual([
        path,
        true,
        false,
        false,
      ]);
    }
    expect((await ask(address, '/index.html?raw')).text).toContain('<!DOCTYPE html>');
    for (const path of ['/', '/data/register.csv', '/scripts/search.js', '/parts/drum.html']) {
      expect([path, (await ask(address, path, { host: 'elsewhere.example' })).status]).toEqual([path, 403]);
    }
    expect((await ask(address, '/', { origin: 'https://elsewhere.example' })).text).not.toContain('access-control-allow-origin');

    child.kill('SIGTERM');
    await new Promise((ended) => child.once('exit', ended));
    expect(readdirSync(join(cwd, 'cache/workshops'))).toEqual([]);
    expect(existsSync(join(cwd, 'cache/served'))).toBe(false);
    expect(compiledForOneRun(process.env.NODE_COMPILE_CACHE ?? ''), 'what it leaves of its code is used by the next').toEqual([]);
  });
}
