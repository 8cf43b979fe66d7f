/** Writes pages from a thread of its own: on many disks making a file takes longer than making what is in it. */
import { Worker } from 'node:worker_threads';
import { pathWithin } from '../disk/path-within.ts';

/** A file to be made: its path, what is in it but for the record's day, and whether that is compressed or is to be given back so. */
export type NewFile = readonly [path: string, bytes: Uint8Array, form: FileForm];

/** As it is; as it is, and to be given back compressed, to be kept; kept before. */
export type FileForm = 'plain' | 'to-keep' | 'kept';

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
   * @param onKept for a file that is to be kept: given it compressed, before `end` is through
   * @throws what went wrong with an earlier one; an error for a path that leads out of the folder
   */
  write(path: string, bytes: Uint8Array, form?: FileForm, onKept?: (bytes: Uint8Array) => void): Promise<void>;
  /**
   * Waits until all are written.
   *
   * @throws the first error of the file system, a file that was there already among them
   */
  end(): Promise<void>;
}

/**
 * @param into the folder that every file is in
 * @param day the record's day as it stands in pages
 */
export function fileWriter(into: string, day: string): FileWriter {
  const worker = new Worker(new URL('./file-writer-worker.ts', import.meta.url), { workerData: day });
  const given: ((bytes: Uint8Array) => void)[] = [];
  let batch: NewFile[] = [];
  let bytesInBatch = 0;
  let waiting = 0;
  let failed: Error | null = null;
  let wake = (): void => undefined;
  worker.on('message', (kept: readonly Uint8Array[]) => {
    waiting -= 1;
    for (const bytes of kept) given.shift()?.(bytes);
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
    write: async (path, bytes, form = 'plain', onKept = () => undefined) => {
      if (form === 'to-keep') given.push(onKept);
      // A kept page is a piece of what holds many, and the whole would go with it.
      batch.push([pathWithin(into, path), form === 'kept' ? new Uint8Array(bytes) : bytes, form]);
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
