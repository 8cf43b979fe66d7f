/** The program as it is started: by the Node at hand, and by one that is too old to run it. */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { finished, serving, unread } from './started.ts';

/** A Node on this machine that is older than what the program is written for; null when there is none. */
function oldNode(): string | null {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const node = join(folder, 'node');
    if (folder.includes('node_modules') || !existsSync(node)) continue;
    const [major = 0, minor = 0] = execFileSync(node, ['-p', 'process.versions.node'], { encoding: 'utf8' }).split('.').map(Number);
    if (major >= 18 && (major < 22 || (major === 22 && minor < 18))) return node;
  }
  return null;
}

const old = oldNode();

describe.each([
  ['the Node of the packages', process.execPath],
  ['an older Node', old],
])('started by %s', (_name, node) => {
  test.skipIf(node === null)('passes on arguments, output and exit codes, and no warning of Node itself', () => {
    const cwd = folderWith(JOURNAL);
    const good = finished(['check', '--content', 'van'], cwd, node ?? '');
    expect([good.status, good.stdout, good.stderr]).toEqual([0, '', 'no errors, no warnings in 1 note\n']);
    expect(finished(['check', '--content', 'a folder'], cwd, node ?? '').status).toBe(3);
    expect(finished(['chek'], cwd, node ?? '').status).toBe(2);
    expect(JSON.parse(finished(['check', '--content', 'van', '--format', 'json'], cwd, node ?? '').stdout).notes).toBe(1);
  });

  test.skipIf(node === null)(
    'ends when it is told to',
    async () => {
      const cwd = folderWith(JOURNAL);
      const { child } = await serving(['--content', 'van'], cwd, node ?? '');
      const ended = new Promise<number | null>((resolve) => child.on('exit', (code) => resolve(code)));
      child.kill('SIGTERM');
      expect([0, 143]).toContain(await ended);
    },
    60_000,
  );
});

test('whoever reads it may stop reading: it does what it was asked and says nothing of that', async () => {
  const cwd = folderWith(JOURNAL);
  const child = unread(['rename', 'store', 'shelf A1', 'attic', '--content', 'van'], cwd);
  let said = '';
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  expect([code, said]).toEqual([0, expect.stringMatching(/^\d+ mentions? in \d+ files? changed\.\n$/)]);
});

test('without its packages it says so in a sentence, and puts nothing there', () => {
  const folder = folderWith({});
  cpSync(new URL('../../src', import.meta.url), join(folder, 'src'), { recursive: true });
  const { status, stderr } = spawnSync(process.execPath, [join(folder, 'src/cli/asfound.mjs'), 'check'], { encoding: 'utf8' });
  expect([status, stderr.trimEnd()]).toEqual([
    70,
    `This cannot run: its packages are not installed. Run \`npm install\` in ${folder}/ first.`,
  ]);
  expect(readdirSync(folder)).toEqual(['src']);
});
