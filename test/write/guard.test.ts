/** Who may ask the server, for what, and how much of it. */
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { standForWriting, type WritingStand } from './journal-for-writing.ts';

const NODES_OWN = [globalThis.Request, globalThis.Response];

let stand: WritingStand;
beforeAll(async () => {
  stand = await standForWriting();
});
afterAll(() => stand?.remove());

interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
  /** Goes without the secret. */
  readonly open?: boolean;
}
interface Answered {
  readonly status: number;
  readonly text: string;
  readonly headers: Readonly<Record<string, unknown>>;
}

/** The path goes out as it is written here: a browser's library would tidy it first. */
function ask(path: string, { method = 'GET', headers = {}, body, open = false }: Asked = {}): Promise<Answered> {
  const { host, port, origin } = new URL(stand.serving.address);
  const secret = open ? {} : { Authorization: `Bearer ${stand.serving.secret}` };
  const own = method === 'GET' ? {} : { Origin: origin, 'Content-Length': String(Buffer.byteLength(body ?? '')) };
  return new Promise((done, fail) => {
    const asking = request(
      { host: '127.0.0.1', agent: false, port, path, method, headers: { Host: host, ...own, ...secret, ...headers } },
      (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk: Buffer) => chunks.push(chunk));
        answer.on('end', () => done({ status: answer.statusCode ?? 0, text: Buffer.concat(chunks).toString(), headers: answer.headers }));
      },
    );
    asking.on('error', fail);
    asking.end(body);
  });
}

const KEY = '0123456789abcdef';
const draft = (more: object = {}): string =>
  JSON.stringify({
    key: KEY,
    writer: KEY,
    revision: 0,
    corrects: null,
    became: null,
    fields: { date: '2031-03-12', title: 'T' },
    prose: '',
    ...more,
  });
const filesBelow = (folder: string): string[] => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

describe('the server answers the page and nobody else', () => {
  test('the page itself comes with a policy that allows nothing inline and nothing from elsewhere', async () => {
    const { status, headers, text } = await ask('/', { open: true });
    expect(status).toBe(200);
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['content-security-policy']).not.toContain('unsafe');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(text).not.toMatch(/ style=|<style|<script>|onclick/);
  });

  test.each([['other.example'], ['other.example:80'], ['127.0.0.1']])('a request for the host `%s` is refused', async (host) => {
    const refused = await ask('/', { headers: { Host: host } });
    expect([refused.status, refused.text]).toEqual([403, expect.stringContaining('Open the page anew at that address')]);
    expect((await ask('/api/journal', { headers: { Host: host } })).status).not.toBe(200);
  });

  test.each([
    { Origin: 'http://other.example' },
    { Origin: 'null' },
    { Origin: 'https://127.0.0.1' },
    { 'Sec-Fetch-Site': 'cross-site' },
    { 'Sec-Fetch-Site': 'same-site' },
  ])('a request that another page makes is refused, with the secret too: %o', async (headers) => {
    expect((await ask('/api/journal', { headers })).status).toBe(403);
    expect((await ask(`/api/drafts/${KEY}`, { method: 'PUT', body: draft(), headers })).status).toBe(403);
    expect(existsSync(join(stand.cache, 'drafts'))).toBe(false);
  });

  test('what writes must say which page it comes from', async () => {
    const { port, host } = new URL(stand.serving.address);
    const headers = { Host: host, Authorization: `Bearer ${stand.serving.secret}` };
    const status = await new Promise((done) => {
      request({ host: '127.0.0.1', agent: false, port, path: `/api/drafts/${KEY}`, method: 'DELETE', headers }, (answer) =>
        done(answer.statusCode),
      ).end();
    });
    expect(status).toBe(403);
  });

  test.each(['/api/journal', '/api/note?path=sessions/2031-03-10-first-look.md', '/api/picture?path=papers/a.jpg'])(
    '%s is not told without the secret, nor with another',
    async (path) => {
      expect((await ask(path, { open: true })).status).toBe(401);
      expect((await ask(path, { open: true, headers: { Authorization: `Bearer ${'A'.repeat(22)}` } })).status).toBe(401);
      expect((await ask(`${path}${path.includes('?') ? '&' : '?'}secret=${stand.serving.secret}`, { open: true })).status).toBe(401);
    },
  );

  test('the secret is new at each start, and stands behind the # of the address only', async () => {
    const { secret, address } = stand.serving;
    expect(address.endsWith(`/#${secret}`)).toBe(true);
    expect(Buffer.from(secret, 'base64url').length).toBeGreaterThanOrEqual(16);
    await stand.restart();
    expect(stand.serving.secret).not.toBe(secret);
    expect(stand.told.join('')).not.toContain(secret);
  });
});

describe('nothing outside the journal is read or written', () => {
  test.each([
    '/../package.json',
    '/..%2f..%2fetc/passwd',
    '/fonts/../../package.json',
    '/css/%2e%2e/%2e%2e/package.json',
    '//etc/passwd',
    '/write.ts',
  ])('the path %s leads nowhere', async (path) => {
    expect((await ask(path)).status).toBe(404);
  });

  test.each([
    'journal.yaml',
    '../journal/sessions/2031-03-10-first-look.md',
    '/etc/passwd',
    'sessions/../journal.yaml',
    'sessions/2031-03-10-first-look.md/../../journal.yaml',
  ])('the note %s is none', async (path) => {
    expect((await ask(`/api/note?path=${encodeURIComponent(path)}`)).status).toBe(404);
    expect((await ask(`/api/picture?path=${encodeURIComponent(path)}`)).status).toBe(404);
  });

  test('a symbolic link that leads out is followed neither to read nor to write', async () => {
    const outside = join(dirname(stand.folder), 'outside');
    mkdirSync(outside);
    writeFileSync(join(outside, 'secret.md'), '---\ndate: 2031-03-11\ntitle: Elsewhere\n---\n');
    writeFileSync(join(outside, 'a.jpg'), await picture('red'));
    symlinkSync(join(outside, 'secret.md'), join(stand.folder, 'sessions/2031-03-11-link.md'));
    symlinkSync(outside, join(stand.folder, 'papers'));
    expect((await ask('/api/note?path=sessions/2031-03-11-link.md')).status).toBe(404);
    expect((await ask('/api/picture?path=papers/a.jpg')).status).toBe(404);
    const corrects = { path: 'sessions/2031-03-11-link.md', digest: '' };
    await ask(`/api/drafts/${KEY}`, { method: 'PUT', body: draft({ corrects }) });
    expect((await ask(`/api/drafts/${KEY}/note`, { method: 'POST' })).status).toBeGreaterThanOrEqual(400);
    const key = 'fedcba9876543210';
    await ask(`/api/drafts/${key}/paper?name=bill.jpg`, { method: 'PUT', body: await picture('blue') });
    await ask(`/api/drafts/${key}`, { method: 'PUT', body: draft({ key }) });
    expect((await ask(`/api/drafts/${key}/note`, { method: 'POST' })).status).toBe(403);
    expect(filesBelow(outside)).toEqual(['a.jpg', 'secret.md']);
    expect(readFileSync(join(outside, 'secret.md'), 'utf8')).toContain('Elsewhere');
  });

  test.each(['../../../escape', '..%2f..%2fescape', 'ABC', '0123', '0123456789abcdeg'])('the key %s of a draft is none', async (key) => {
    const before = filesBelow(dirname(stand.folder));
    expect((await ask(`/api/drafts/${key}`, { method: 'PUT', body: draft({ key }) })).status).toBeGreaterThanOrEqual(400);
    expect(filesBelow(dirname(stand.folder))).toEqual(before);
  });

  test('a draft that would correct what is no note corrects nothing', async () => {
    const key = '00000000000000aa';
    for (const path of ['journal.yaml', '../outside/secret.md', 'sessions/../journal.yaml']) {
      const before = readFileSync(join(stand.folder, 'journal.yaml'), 'utf8');
      await ask(`/api/drafts/${key}`, { method: 'PUT', body: draft({ key, corrects: { path, digest: '' } }) });
      expect((await ask(`/api/drafts/${key}/note`, { method: 'POST' })).status).toBeGreaterThanOrEqual(400);
      expect(readFileSync(join(stand.folder, 'journal.yaml'), 'utf8')).toBe(before);
      await ask(`/api/drafts/${key}`, { method: 'DELETE' });
    }
  });
});

describe('what is sent is bounded', () => {
  const send = (name: string, body: Buffer, what = 'picture', headers: Record<string, string> = {}): Promise<Answered> =>
    ask(`/api/drafts/00000000000000bb/${what}?name=${encodeURIComponent(name)}`, { method: 'PUT', body, headers });

  test('a draft of more than any note is refused', async () => {
    const body = draft({ prose: 'x'.repeat(3 * 1024 * 1024) });
    expect((await ask(`/api/drafts/${KEY}`, { method: 'PUT', body })).status).toBe(413);
  });

  test('a file that says it is larger than is taken is refused before it is read', async () => {
    const status = await new Promise((done) => {
      const { port, host, origin } = new URL(stand.serving.address);
      const headers = { Host: host, Origin: origin, Authorization: `Bearer ${stand.serving.secret}`, 'Content-Length': String(1024 ** 3) };
      const path = '/api/drafts/00000000000000bb/picture?name=a.jpg';
      const asking = request({ host: '127.0.0.1', agent: false, port, path, method: 'PUT', headers }, (answer) => {
        done(answer.statusCode);
        asking.destroy();
      });
      asking.on('error', () => undefined);
      asking.flushHeaders();
    });
    expect(status).toBe(413);
  });

  test.each([
    ['a script by the name of a picture', 'a.jpg', Buffer.from('<script>alert(1)</script>'), /no picture/],
    ['a drawing that can hold scripts', 'a.svg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), /SVG/],
    ['a PDF where a picture belongs', 'a.pdf', Buffer.from('%PDF-1.7\n'), /PDF/],
    ['a picture that was cut short', 'a.jpg', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]), /cut short|damaged/],
  ])('%s is not taken', async (_, name, body, why) => {
    const { status, text } = await send(name, body);
    expect([status, text]).toEqual([415, expect.stringMatching(why)]);
    expect(filesBelow(stand.cache).filter((path) => /\.(jpg|svg|pdf)$|unfinished/.test(path) && path.includes('00bb'))).toEqual([]);
  });

  test('a picture is called by what it is, and a second one of the same name by a number; the same one twice is one', async () => {
    const [red, green] = [await picture('red'), await picture('green')];
    const names = [await send('../../IMG 1.png', red), await send('IMG 1.jpeg', green), await send('again.jpg', red)];
    expect(names.map(({ text }) => JSON.parse(text).name)).toEqual(['img-1.jpg', 'img-1-2.jpg', 'img-1.jpg']);
  });
});

function picture(colour: string): Promise<Buffer> {
  return sharp({ create: { width: 40, height: 30, channels: 3, background: colour } })
    .jpeg()
    .toBuffer();
}

test('what else the program does has the requests and answers of Node, not those of the server', () => {
  expect(globalThis.Request).toBe(NODES_OWN[0]);
  expect(globalThis.Response).toBe(NODES_OWN[1]);
});
