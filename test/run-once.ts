/**
 * What follows from the program alone is the same for every test: the code that Node compiles, and the pages and scripts
 * that builds compile. It is made once for a run of the tests, in a folder of the run, and not again by each test.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export default function setup(): (() => void) | undefined {
  if (process.env.ASFOUND_EDITION !== undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'asfound-run-'));
  const ours = { ASFOUND_EDITION: join(folder, 'edition'), NODE_COMPILE_CACHE: join(folder, 'code') };
  Object.assign(process.env, ours);
  const remove = () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  // Also of a run that is told to stop.
  process.once('exit', remove);
  return () => {
    for (const name of Object.keys(ours)) delete process.env[name];
    remove();
  };
}
