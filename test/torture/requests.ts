/** Requests that nobody honest makes, to the server that shows a journal while it is written. */
import { mkdirSync, symlinkSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import type { Random } from '../bench/random.ts';
import { journalIn, put, start } from './stand.ts';
import type { Outcome, Part } from './torture.ts';

const STEPS = [
  '..',
  '%2e%2e',
  '%2e.',
  '..%2f',
  '..\\',
  '..%5c',
  '%252e%252e',
  '.',
  '',
  'files',
  'sessions',
  'pictures',
  'papers',
  'scripts',
  'css',
  'src',
  '@fs',
  '@id',
  'node_modules',
];
const ENDS = [
  'etc/passwd',
  'package.json',
  'src/cli/main.ts',
  'van/journal.yaml',
  'journal.yaml',
  'secret.txt',
  'index.html',
  'cli/main.ts',
  '%00',
  '%',
  'a'.repeat(5000),
];
const BEHIND = ['', '', '?raw', '?url', '?import&raw', '?inline', '?t=1', '#x', '?raw??', '?import&url&raw'];
const HOSTS = ['localhost', '127.0.0.1', 'elsewhere.example', 'localhost.elsewhere.example', '169.254.169.254', '[::1]', ''];
const LEAKS = /root:x|parseArgs|"dependencies"|time-zone: Europe|kept outside| {4}at /;

export const requests: Part = {
  name: 'requests',
  shows:
    'no request gets at anything but the site: not by traversal, another name of the host, another origin, or a link out of the journal',
  usual: 400,
  run: async ({ folder, amount, random, isOver, progress }): Promise<Outcome> => {
    const cwd = join(folder, 'one');
    mkdirSync(cwd);
    await journalIn(cwd);
    put(cwd, 'secret.txt', 'kept outside');
    symlinkSync('../../secret.txt', join(cwd, 'van/sessions/out.jpg'));
    symlinkSync('../../..', join(cwd, 'van/sessions/2031-03-05-shown/up'));
    const { child, ended } = start(['dev', '--content', 'van', '--port', '0'], cwd);
    const failures: string[] = [];
    const counts: Record<string, number> = {};
    try {
      const port = await portOf(child);
      for (let n = 0; n < amount && !isOver(); n += 1) {
        const [path, host, origin] = [pathBy(random), random.pick(HOSTS), random.chance(0.3) ? 'https://elsewhere.example' : null];
        const { status, text, allowed } = await ask(port, path, host, origin);
        counts[status] = (counts[status] ?? 0) + 1;
        const told = `${path.slice(0, 120)} of ${host}: ${status}`;
        if (LEAKS.test(text)) failures.push(`${told} tells ${LEAKS.exec(text)?.[0]}`);
        if (status === 200 && host.includes('elsewhere')) failures.push(`${told}, to another name of the host`);
        if (allowed !== undefined && allowed !== 'http://localhost') failures.push(`${told}, allowed to ${allowed}`);
        if (n % 50 === 0) progress(`${n} of ${amount}`);
      }
      if ((await ask(port, '/index.html', 'localhost', null)).status !== 200) failures.push('it serves no more');
    } finally {
      child.kill('SIGTERM');
      await ended;
    }
    return { counts, failures };
  },
};

function pathBy(random: Random): string {
  const steps = Array.from({ length: random.below(7) }, () => random.pick(STEPS));
  return `/${[...steps, random.pick(ENDS)].join('/')}${random.pick(BEHIND)}`;
}

function portOf(child: ReturnType<typeof start>['child']): Promise<number> {
  return new Promise((resolve, reject) => {
    child.once('exit', () => reject(new Error('it ended')));
    child.stderr?.on('data', (text) => {
      const port = /http:\/\/\S+:(\d+)\//.exec(String(text))?.[1];
      if (port !== undefined) resolve(Number(port));
    });
  });
}

function ask(
  port: number,
  path: string,
  host: string,
  origin: string | null,
): Promise<{ status: number; text: string; allowed: string | undefined }> {
  const headers = { host: host === '' ? `localhost:${port}` : `${host}:${port}`, ...(origin === null ? {} : { origin }) };
  return new Promise((resolve) => {
    const asked = request({ host: 'localhost', port, path, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const allowed = response.headers['access-control-allow-origin'];
        resolve({ status: response.statusCode ?? 0, text: Buffer.concat(chunks).toString('utf8'), allowed });
      });
    });
    // One that is refused before it is read.
    asked.on('error', () => resolve({ status: 0, text: '', allowed: undefined }));
    asked.end();
  });
}
