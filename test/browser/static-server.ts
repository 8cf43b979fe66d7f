/** Serves a folder as any plain web server would, below a path of its own: the site must not care where it lies. A browser may keep what is no page. */
import { createReadStream, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.pdf': 'application/pdf',
  '.woff2': 'font/woff2',
};

export interface Served {
  /** Ends in `/`. */
  readonly address: string;
  stop(): Promise<void>;
}

/** @param below the path the folder is served under, `/` or `/some/where/` */
export async function serveFolder(folder: string, below = '/'): Promise<Served> {
  const server: Server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const file = pathname.startsWith(below) ? fileAt(folder, pathname.slice(below.length)) : null;
    if (file === null) {
      response.writeHead(404).end();
      return;
    }
    const kept = extname(file) === '.html' ? 'no-cache' : 'max-age=600';
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream', 'cache-control': kept });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${below}`,
    stop: () => new Promise((done) => server.close(() => done())),
  };
}

function fileAt(folder: string, path: string): string | null {
  const file = join(folder, normalize(decodeURIComponent(path === '' || path.endsWith('/') ? `${path}index.html` : path)));
  if (!file.startsWith(folder)) return null;
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
}
