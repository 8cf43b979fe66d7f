/** The command that serves the page to write on. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsQR from 'jsqr';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from './run.ts';
import { servingAs } from './started.ts';

let cwd: string;
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'asfound-write-command-'));
  mkdirSync(join(cwd, 'van'));
  writeFileSync(join(cwd, 'van/journal.yaml'), 'title: The van\narrived: 2031-01-01\ncurrency: GBP\n');
});
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

/** Two rows of modules a line of text, half blocks, as pixels that a phone's camera would see: dark modules are blanks. */
function readCode(lines: readonly string[]): string | undefined {
  const rows = lines.flatMap((line) => {
    const halves = [...line].map((mark) => ({ ' ': [0, 0], '█': [1, 1], '▀': [1, 0], '▄': [0, 1] })[mark] ?? [1, 1]);
    return [halves.map(([upper]) => upper), halves.map(([, lower]) => lower)];
  });
  const scale = 4;
  const [width, height] = [(rows[0]?.length ?? 0) * scale, rows.length * scale];
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const light = rows[Math.floor(y / scale)]?.[Math.floor(x / scale)] ?? 1;
      pixels.fill(light === 1 ? 255 : 0, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return jsQR(pixels, width, height)?.data;
}

describe('asfound write', () => {
  test('listens on this machine only, at an address with a secret', async () => {
    const { address, said } = await servingAs('write', ['--content', 'van'], cwd);
    expect(address).toMatch(/^http:\/\/(?:localhost|127\.0\.0\.1):\d+\/#[\w-]{22}$/);
    expect(said()).not.toMatch(/[█▀▄]/);
    expect((await fetch(address)).status).toBe(200);
  });

  test('with --phone shows the address as a code that a camera reads', async () => {
    const { address, said } = await servingAs('write', ['--phone', '--host', '127.0.0.1', '--content', 'van'], cwd);
    const code = said()
      .split('\n')
      .filter((line) => /[█▀▄]/.test(line));
    expect(readCode(code)).toBe(address);
  });

  test.each([
    [['--content', '.'], 3, 'is no journal'],
    [['--content', 'nowhere'], 3, 'there is no folder'],
    [['--content', 'van', '--port', '70000'], 2, '--port is a number'],
    [['--content', 'van', '--host', '127.0.0.1'], 2, '--host goes with --phone'],
    [['--content', 'van', '--phone', '--host', '203.0.113.7'], 3, 'cannot be listened on'],
  ])('%j is refused in one line', async (argv, exit, words) => {
    const ran = await run(['write', ...argv], { cwd });
    expect([ran.exit, ran.err]).toEqual([exit, expect.stringContaining(words)]);
    expect(ran.err.trim().split('\n').length).toBe(1);
  });
});
