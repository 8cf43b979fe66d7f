/** Writes files from a thread of its own: on many disks making a file takes longer than making what is in it. */
import { Worker } from 'node:worker_threads';
import { pathWithin } from '../disk/path-within.ts';

/** A file to be made: its path, and all that is in it. */
export type NewFile = readonly [path: string, bytes: Uint8Array];

/** Together in one message, which costs as much as a file. */
const FILES_A_BATCH = 32;
const BYTES_A_BATCH = 1_000_000;
/** Batches that may wait to be written; more would only fill the memory. */
const MOST_WAITING = 8;

export interface FileWriter {
  /**
   * Hands over a new file, and its bytes for good. Waits while too much is waiting.
   *
   * @param path from the writer's folder
   * @throws what went wrong with an earlier one; an error for a path that leads out of the folder
   */
  write(path: string, bytes: Uint8Array): Promise<void>;
  /**
   * Waits until all are written.
   *
   * @throws the first error of the file system, a file that was there already among them
   */
  end(): Promise<void>;
}

/** @param into the folder that every file is in */
export function fileWriter(into: string): FileWriter {
  const worker = new Worker(new URL('./file-writer-worker.ts', import.meta.url));
  let batch: NewFile[] = [];
  let bytesInBatch = 0;
  let waiting = 0;
  let failed: Error | null = null;
  let wake = (): void => undefined;
  worker.on('message', () => {
    waiting -= 1;
    wake();
  });
  worker.on('error', (error) => {
    failed ??= error instanceof Error ? error : new Error(String(error));
    wake();
  });
  const room = async (most: number): Promise<void> => {
    while (waiting > most && failed === null) {
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
    if (failed !== null) throw failed;
  };
  const send = (): void => {
    waiting += 1;
    worker.postMessage(
      batch,
      batch.map(([, bytes]) => bytes.buffer as ArrayBuffer),
    );
    batch = [];
    bytesInBatch = 0;
  };
  return {
    write: async (path, bytes) => {
      batch.push([pathWithin(into, path), bytes]);
      bytesInBatch += bytes.length;
      if (batch.length < FILES_A_BATCH && bytesInBatch < BYTES_A_BATCH) return;
      send();
      await room(MOST_WAITING);
    },
    end: async () => {
      if (batch.length > 0) send();
      try {
        await room(0);
      } finally {
        await worker.terminate();
      }
    },
  };
}
