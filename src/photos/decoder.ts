/** Workers that unpack HEIC and PDF and that clean PDFs, started when first needed and shared by all who ask. */
import { Worker } from 'node:worker_threads';
import type { Seal } from './clean-pdf.ts';

/** Pixels of four bytes: red, green, blue, alpha. */
export interface RawPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** The first page in points, and how many there are. */
export interface PdfPages {
  readonly count: number;
  readonly width: number;
  readonly height: number;
}

export type DecodeJob =
  | { readonly what: 'heic' | 'measure-pdf' | 'seal-pdf' | 'clean-pdf'; readonly bytes: Uint8Array }
  | { readonly what: 'draw-pdf'; readonly bytes: Uint8Array; readonly edge: number };
/** Of what was asked for. */
export interface DecodeReply {
  readonly raw?: RawPicture;
  readonly pages?: PdfPages;
  readonly seal?: Seal | null;
  readonly cleaned?: Uint8Array;
}

export interface Decoder {
  /** Upright pixels of a HEIC file. Rejects with an `Error` when they cannot be unpacked. */
  heic(bytes: Uint8Array): Promise<RawPicture>;
  /** Rejects as `drawPdf` does. */
  measurePdf(bytes: Uint8Array): Promise<PdfPages>;
  /** The first page, its longer edge `edge` pixels. Rejects with an `Error` when it has no size, or takes too long or too much memory. */
  drawPdf(bytes: Uint8Array, edge: number): Promise<RawPicture>;
  /** What `sealOf` says of a PDF; `unread` where finding out takes too long or too much memory. */
  sealOf(bytes: Uint8Array): Promise<Seal | null>;
  /** What `cleanPdf` makes of a PDF. Rejects with an `Error` when it takes too long or too much memory. */
  cleanPdf(bytes: Uint8Array): Promise<Uint8Array>;
  /** Ends the workers. Jobs under way are given up. */
  close(): Promise<void>;
}

/** A worker unpacking 12 megapixels takes 0.4 GB, so there are few however many cores there are. */
const WORKERS = 2;
/** WebAssembly memory only grows; a worker is replaced after so many jobs. */
const JOBS_A_WORKER = 50;
const PATIENCE_MS = 120_000;
/** A page with 100 megapixels on it is drawn in a few seconds. */
const PATIENCE_FOR_PDF_MS = 20_000;
/** The largest that is cleaned at all takes some seconds. What is given up is published as it is, so a busy machine has more time. */
const PATIENCE_FOR_CLEANING_MS = 60_000;

const PATIENCE: Readonly<Record<DecodeJob['what'], number>> = {
  heic: PATIENCE_MS,
  'measure-pdf': PATIENCE_FOR_PDF_MS,
  'draw-pdf': PATIENCE_FOR_PDF_MS,
  'seal-pdf': PATIENCE_FOR_CLEANING_MS,
  'clean-pdf': PATIENCE_FOR_CLEANING_MS,
};

export function openDecoder(patience: number = PATIENCE_MS): Decoder {
  const lanes = Array.from({ length: WORKERS }, () => lane(patience));
  const next = (job: DecodeJob): Promise<DecodeReply> => {
    const [first] = [...lanes].sort((a, b) => a.waiting() - b.waiting());
    if (!first) throw new Error('there is no worker');
    return first.run(job);
  };
  return {
    heic: async (bytes) => needed((await next({ what: 'heic', bytes })).raw),
    measurePdf: async (bytes) => needed((await next({ what: 'measure-pdf', bytes })).pages),
    drawPdf: async (bytes, edge) => needed((await next({ what: 'draw-pdf', bytes, edge })).raw),
    sealOf: (bytes) =>
      next({ what: 'seal-pdf', bytes }).then(
        ({ seal }) => (seal === undefined ? 'unread' : seal),
        () => 'unread',
      ),
    cleanPdf: async (bytes) => needed((await next({ what: 'clean-pdf', bytes })).cleaned),
    close: async () => void (await Promise.all(lanes.map((one) => one.close()))),
  };
}

/** Opens workers for what is done with them, and ends them. */
export async function withDecoder<T>(use: (decoder: Decoder) => Promise<T>): Promise<T> {
  const decoder = openDecoder();
  try {
    return await use(decoder);
  } finally {
    await decoder.close();
  }
}

interface Lane {
  run(job: DecodeJob): Promise<DecodeReply>;
  waiting(): number;
  close(): Promise<void>;
}

/** One worker at most, and the jobs that wait for it. */
function lane(patience: number): Lane {
  let worker: Worker | null = null;
  let jobs = 0;
  let waiting = 0;
  let tail: Promise<unknown> = Promise.resolve();
  const end = async (): Promise<void> => {
    const old = worker;
    worker = null;
    jobs = 0;
    await old?.terminate();
  };
  const turn = async (job: DecodeJob): Promise<DecodeReply> => {
    if (jobs >= JOBS_A_WORKER) await end();
    // What the libraries say of a file that is odd is for nobody.
    worker ??= new Worker(new URL('./decode-worker.ts', import.meta.url), { stdout: true, stderr: true });
    jobs += 1;
    try {
      return await ask(worker, job, Math.min(patience, PATIENCE[job.what]));
    } catch (error) {
      await end();
      throw error;
    }
  };
  return {
    run(job) {
      waiting += 1;
      const reply = tail.then(() => turn(job)).finally(() => (waiting -= 1));
      tail = reply.catch(() => null);
      return reply;
    },
    waiting: () => waiting,
    close: end,
  };
}

/** Hands a worker one job and waits for its reply, its death, or the end of patience, whichever is first. */
function ask(worker: Worker, job: DecodeJob, patience: number): Promise<DecodeReply> {
  const over = new AbortController();
  return new Promise<DecodeReply>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('it took too long')), patience);
    const { signal } = over;
    signal.addEventListener('abort', () => clearTimeout(timer));
    const listen = (event: 'message' | 'error' | 'exit', heard: (value: unknown) => void): void => {
      worker.once(event, heard);
      signal.addEventListener('abort', () => worker.off(event, heard));
    };
    listen('error', reject);
    listen('exit', () => reject(new Error('the worker ended')));
    listen('message', (reply) => {
      if ('failed' in (reply as object)) reject(new Error(String((reply as { failed: unknown }).failed)));
      else resolve(reply as DecodeReply);
    });
    worker.postMessage(job);
  }).finally(() => over.abort());
}

function needed<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('the worker gave nothing');
  return value;
}
