/**
 * `npm run torture`: what must hold whatever happens, tried at random and at length. Not part of the tests: it takes from
 * minutes to hours.
 *
 *     npm run torture                                      every part, shortly
 *     npm run torture -- mutants kills                     only these
 *     npm run torture -- --mutants 100000 --kills 500      so many of them, and of the others as usual
 *     npm run torture -- --times 20                        that many times as much of every part
 *     npm run torture -- --minutes 90                      no part begins anything after so long
 *     npm run torture -- --seed 7                          other accidents; the same seed makes the same ones
 *     npm run torture -- --list                            the parts, and what each shows
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { randomFrom } from '../bench/random.ts';
import { clock } from './clock.ts';
import { faults } from './faults.ts';
import { fullDisk } from './full-disk.ts';
import { kills } from './kills.ts';
import { mutants } from './mutants.ts';
import { publishedMetadata } from './published-metadata.ts';
import { requests } from './requests.ts';
import { spoiltCache } from './spoilt-cache.ts';
import { type Row, tableOf } from './table.ts';
import { together } from './together.ts';
import type { Part } from './torture.ts';

const PARTS: readonly Part[] = [mutants, kills, faults, fullDisk, together, clock, spoiltCache, requests, publishedMetadata];
const MOST_TOLD = 20;

const amounts: ParseArgsConfig['options'] = Object.fromEntries(PARTS.map(({ name }) => [name, { type: 'string' }]));
const { values: given, positionals } = parseArgs({
  options: {
    times: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1952' },
    minutes: { type: 'string', default: String(24 * 60) },
    list: { type: 'boolean', default: false },
    ...amounts,
  },
  allowPositionals: true,
});
const values: Readonly<Record<string, unknown>> = given;
const ends = performance.now() + Number(values.minutes) * 60_000;

if (given.list === true) {
  for (const { name, usual, shows } of PARTS) console.log(`${name.padEnd(20)} ${String(usual).padStart(6)}  ${shows}`);
} else {
  const unknown = positionals.filter((name) => !PARTS.some((part) => part.name === name));
  if (unknown.length > 0) throw new Error(`there is no part ${unknown.join(', ')}; --list tells which there are`);
  const chosen = positionals.length === 0 ? PARTS : PARTS.filter(({ name }) => positionals.includes(name));
  const rows: Row[] = [];
  for (const part of chosen) rows.push(await torture(part));
  const failed = rows.reduce((sum, { failures }) => sum + failures.length, 0);
  console.log(`\nSeed ${values.seed}.\n\n${tableOf(rows)}\n`);
  console.log(failed === 0 ? 'All of it held.' : `${failed} did not hold.`);
  process.exitCode = failed === 0 ? 0 : 1;
}

async function torture(part: Part): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), `asfound-torture-${part.name}-`));
  const started = performance.now();
  const seconds = (): number => Math.round((performance.now() - started) / 1000);
  try {
    const { counts, failures } = await part.run({
      amount: Number(values[part.name] ?? part.usual * Number(values.times)),
      random: randomFrom(Number(values.seed)),
      folder,
      isOver: () => performance.now() > ends,
      progress: (text) => process.stderr.isTTY && process.stderr.write(`\r\u001b[K${part.name}: ${text}`),
    });
    if (process.stderr.isTTY) process.stderr.write('\r\u001b[K');
    console.log(`${part.name}: ${failures.length === 0 ? 'held' : `${failures.length} did not hold`}, ${seconds()} s`);
    for (const failure of failures.slice(0, MOST_TOLD)) console.log(`    ${failure}`);
    return { name: part.name, counts, failures, seconds: seconds() };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
