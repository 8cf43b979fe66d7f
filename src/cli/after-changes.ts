/** Work that follows changes: once for a burst of them, one at a time, and awaited by whoever wants its result. */

export interface AfterChanges {
  /** Something has changed. */
  touch(): void;
  /** When everything that has changed so far has been worked through. */
  settled(): Promise<void>;
}

/**
 * @param work what to do; it must not reject
 * @param quiet milliseconds without a change before it begins
 */
export function afterChanges(work: () => Promise<void>, quiet: number): AfterChanges {
  let timer: NodeJS.Timeout | undefined;
  let waiting: PromiseWithResolvers<void> | null = null;
  let running: Promise<void> = Promise.resolve();
  return {
    touch: () => {
      clearTimeout(timer);
      waiting ??= Promise.withResolvers<void>();
      timer = setTimeout(() => {
        const begun = waiting;
        waiting = null;
        running = running.then(work).then(() => begun?.resolve());
      }, quiet);
    },
    settled: async () => {
      while (waiting !== null) await (waiting as PromiseWithResolvers<void>).promise;
      await running;
    },
  };
}
