/**
 * `npm run torture`: what must hold whatever happens, tried at random and at length. Not part of the tests: it takes from
 * minutes to hours.
 *
 *     npm run torture                              every part, shortly
 *     npm run torture -- mutants kills             only these
 *     npm run torture -- --times 20                that many times as much
 *     npm run torture -- --seed 7                  other accidents; the same seed makes the same ones
 *     npm run torture -- --list                    the parts, and what each shows
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { randomFrom } from '../bench/random.ts';
import { clock } from './clock.ts';
import { faults } from './faults.ts';
import { fullDisk } from './full-disk.ts';
import { kills } from './kills.ts';
import { mutants } from './mutants.ts';
import { publishedMetadata } from './published-metadata.ts';
import { requests } from './requests.ts';
import { spoiltCache } from './spoilt-cache.ts';
import { together } from './together.ts';
import type { Part } from './torture.ts';

const PARTS: readonly Part[] = [mutants, kills, faults, fullDisk, together, clock, spoiltCache, requests, publishedMetadata];

const { values, positionals } = parseArgs({
  options: {
    times: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1952' },
    list: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});

if (values.list) {
  for (const { name, shows } of PARTS) console.log(`${name.padEnd(20)} ${shows}`);
} else {
  const chosen = positionals.length === 0 ? PARTS : PARTS.filter(({ name }) => positionals.includes(name));
  const unknown = positionals.filter((name) => !PARTS.some((part) => part.name === name));
  if (unknown.length > 0) throw new Error(`there is no part ${unknown.join(', ')}; --list tells which there are`);
  let failed = 0;
  for (const part of chosen) failed += await torture(part);
  console.log(failed === 0 ? 'All of it held.' : `${failed} did not hold.`);
  process.exitCode = failed === 0 ? 0 : 1;
}

/** @returns how many things did not hold */
async function torture(part: Part): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), `asfound-torture-${part.name}-`));
  const started = performance.now();
  try {
    const { counts, failures } = await part.run({
      times: Number(values.times),
      random: randomFrom(Number(values.seed)),
      folder,
      progress: (text) => process.stderr.isTTY && process.stderr.write(`\r\u001b[K${part.name}: ${text}`),
    });
    const seconds = ((performance.now() - started) / 1000).toFixed(0);
    const counted = Object.entries(counts).map(([name, count]) => `${name} ${count}`);
    if (process.stderr.isTTY) process.stderr.write('\r\u001b[K');
    console.log(
      `${part.name.padEnd(20)} ${failures.length === 0 ? 'held' : `${failures.length} FAILED`}, ${seconds} s: ${counted.join(', ')}`,
    );
    for (const failure of failures.slice(0, 20)) console.log(`    ${failure}`);
    return failures.length;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
