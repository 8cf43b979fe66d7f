/** Typesetting in a process of its own: the typesetter keeps what it took until its process ends, and holds up nothing meanwhile. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export interface TypesetApartOptions {
  /** The folder that `/` of the source means; its pictures lie there. */
  readonly workspace: string;
  readonly standard: string;
  /** The file to write; beside it lie the source and what is cut, until the workspace is removed. */
  readonly pdf: string;
}

const PROCESS = fileURLToPath(new URL('./typeset-process.ts', import.meta.url));

/**
 * @returns the values of what the document notes as `#metadata(value) <cut>`, in order
 * @throws Error with Typst's own words when the source does not compile
 */
export async function typesetApart(source: string, { workspace, standard, pdf }: TypesetApartOptions): Promise<readonly unknown[]> {
  writeFileSync(`${pdf}.typ`, source);
  const child = spawn(process.execPath, ['--no-warnings', PROCESS, workspace, standard, pdf], { stdio: ['ignore', 'ignore', 'pipe'] });
  const stop = (): boolean => child.kill();
  process.once('exit', stop);
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => {
    said = (said + chunk.toString()).slice(-2000);
  });
  const [code, signal] = await once(child, 'close').finally(() => process.off('exit', stop));
  if (code !== 0) throw new Error(said.trim() || `the typesetter ended with ${code ?? signal}, perhaps for want of memory`);
  return JSON.parse(readFileSync(`${pdf}.json`, 'utf8')) as readonly unknown[];
}
