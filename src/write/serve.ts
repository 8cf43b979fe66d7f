/** The page and its server, at an address of this machine until the process is stopped. */
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { reasonOf } from '../load/problems.ts';
import { PROGRAM } from '../site/tool-digest.ts';
import { NoSuchDraft, writeApi } from './api.ts';
import { bundlePage } from './bundle.ts';
import { type DeskOptions, openDesk } from './desk.ts';
import { newSecret, ofThisPage, withHeaders, withSecret } from './guard.ts';
import { LeadsOut } from './make-note.ts';

export interface ServeOptions extends DeskOptions {
  /** The address to listen on. */
  readonly host: string;
  /** The first port that is tried; 0 for any. */
  readonly port: number;
  /** Told of faults of the tool's own, in one line. */
  tell(text: string): void;
}

export interface Serving {
  /** Where the page is, with the secret behind a `#`, which no browser sends anywhere. */
  readonly address: string;
  readonly secret: string;
  close(): Promise<void>;
}

/** How many ports are tried behind the first one. */
const PORTS = 10;

/** @throws the file system's or the network's error */
export async function serveWriting(options: ServeOptions): Promise<Serving> {
  const secret = newSecret();
  let hosts: readonly string[] = [];
  const app = await pageApp(options, secret, () => hosts);
  const server = createServer(
    { maxHeaderSize: 16 * 1024, requestTimeout: 10 * 60 * 1000, headersTimeout: 30_000 },
    // The rest of the program reads and fetches by Node's own.
    getRequestListener(app.fetch, { overrideGlobalObjects: false }),
  );
  const port = await listen(server, options.host, options.port);
  const names = isLoopback(options.host)
    ? ['localhost', '127.0.0.1', '[::1]']
    : [options.host.includes(':') ? `[${options.host}]` : options.host];
  hosts = names.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));
  return {
    address: `http://${hosts[0]}/#${secret}`,
    secret,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

async function pageApp(options: ServeOptions, secret: string, hosts: () => readonly string[]): Promise<Hono> {
  const desk = openDesk(options);
  const app = new Hono();
  app.use(withHeaders, ofThisPage(hosts));
  const files = await pageFiles();
  for (const [path, { type, body }] of files) {
    app.get(path, (context) => context.body(body, 200, { 'Content-Type': type }));
  }
  app.use('/api/*', withSecret(secret));
  app.route('/api', writeApi(desk));
  app.notFound((context) => context.text('There is nothing here.\n', 404));
  app.onError((error, context) => {
    if (error instanceof NoSuchDraft) return context.text('There is no such draft.\n', 404);
    if (error instanceof LeadsOut) return context.text(`It was not written: ${error.message}. Nothing is lost.\n`, 403);
    options.tell(`${error.message}\n`);
    const isOfDisk = (error as { code?: string }).code !== undefined;
    return context.text(
      isOfDisk ? `It was not written: ${reasonOf(error)}. Nothing is lost.\n` : 'This went wrong. Nothing is lost.\n',
      500,
    );
  });
  return app;
}

interface PageFile {
  readonly type: string;
  readonly body: string | Uint8Array<ArrayBuffer>;
}

/** All that the page is made of; nothing else of the program can be asked for. */
async function pageFiles(): Promise<ReadonlyMap<string, PageFile>> {
  const own = join(PROGRAM, 'src/write/page');
  const published = join(PROGRAM, 'public');
  const faces = [
    'barlow-semi-condensed-latin-400-normal',
    'barlow-semi-condensed-latin-500-normal',
    'barlow-semi-condensed-latin-600-normal',
    'barlow-semi-condensed-latin-ext-400-normal',
    'barlow-semi-condensed-latin-ext-500-normal',
    'barlow-semi-condensed-latin-ext-600-normal',
    'source-serif-4-latin-wght-normal',
    'source-serif-4-latin-wght-italic',
    'source-serif-4-latin-ext-wght-normal',
    'source-serif-4-latin-ext-wght-italic',
  ];
  return new Map<string, PageFile>([
    ['/', { type: 'text/html; charset=utf-8', body: readFileSync(join(own, 'page.html'), 'utf8') }],
    ['/write.js', { type: 'text/javascript; charset=utf-8', body: await bundlePage(join(own, 'write.ts')) }],
    ['/css/write.css', { type: 'text/css; charset=utf-8', body: readFileSync(join(own, 'write.css'), 'utf8') }],
    ['/css/type.css', { type: 'text/css; charset=utf-8', body: readFileSync(join(published, 'css/type.css'), 'utf8') }],
    ['/icon.svg', { type: 'image/svg+xml', body: readFileSync(join(published, 'icon.svg'), 'utf8') }],
    ...faces.map(
      (face) =>
        [
          `/fonts/${face}.woff2`,
          { type: 'font/woff2', body: new Uint8Array(readFileSync(join(published, 'fonts', `${face}.woff2`))) },
        ] as const,
    ),
  ]);
}

/** @returns the port; the first one that is free */
async function listen(server: Server, host: string, first: number): Promise<number> {
  for (let port = first; ; port += 1) {
    const error = await new Promise<NodeJS.ErrnoException | null>((done) => {
      server.once('error', done);
      server.listen(port, host, () => done(null));
    });
    server.removeAllListeners('error');
    if (error === null) return (server.address() as AddressInfo).port;
    if (error.code !== 'EADDRINUSE' || first === 0 || port >= first + PORTS) throw error;
  }
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host.startsWith('127.');
}
