import { constants } from 'node:os';

/** Everything a command does to the world, handed in, so that a test can watch it. */
export interface Effects {
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Results: to standard output. */
  out(text: string): void;
  /** Problems and progress: to standard error. */
  err(text: string): void;
  /** Whether standard error is a terminal. */
  readonly terminal: boolean;
  now(): Date;
  /**
   * Has something put in order when the process is interrupted or told to end, which then ends.
   *
   * @returns what undoes it
   */
  onInterrupt(putInOrder: () => void): () => void;
}

const ENDING: readonly NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** Whoever reads may stop reading (`| head`); what was begun is done nevertheless. */
function goesOnUnread(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
}

/** The real world. */
export function realEffects(): Effects {
  for (const stream of [process.stdout, process.stderr]) stream.on('error', goesOnUnread);
  return {
    cwd: process.cwd(),
    env: process.env,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    terminal: process.stderr.isTTY === true,
    now: () => new Date(),
    onInterrupt: (putInOrder) => {
      const end = (signal: NodeJS.Signals): void => {
        try {
          putInOrder();
        } finally {
          process.exit(128 + constants.signals[signal]);
        }
      };
      for (const signal of ENDING) process.once(signal, end);
      return () => {
        for (const signal of ENDING) process.off(signal, end);
      };
    },
  };
}
