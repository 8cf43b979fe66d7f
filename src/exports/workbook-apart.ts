/** The workbook of a long journal takes as long as some hundreds of pages, so it is made in a thread of its own, beside them. */
import { Worker } from 'node:worker_threads';
import type { Table } from './table.ts';

/** A shorter one is made sooner than a thread has begun. */
const ROWS_FOR_A_THREAD = 2000;

/**
 * The bytes of the workbook that `workbookOf` makes.
 *
 * @throws what it throws
 */
export async function workbookApart(tables: readonly Table[]): Promise<Uint8Array> {
  if (tables.reduce((sum, { rows }) => sum + rows.length, 0) < ROWS_FOR_A_THREAD) {
    const { workbookOf } = await import('./workbook.ts');
    return workbookOf(tables);
  }
  const worker = new Worker(new URL('./workbook-worker.ts', import.meta.url), { workerData: tables });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the thread that makes the workbook ended with ${code}`)));
  });
}
