import type { Effects } from './effects.ts';

/** One line that is written over on a terminal; nothing at all in a pipe. */
export function progressLine({ terminal, err }: Effects): { show(text: string): void; clear(): void } {
  let shown = false;
  return {
    show: (text) => {
      if (!terminal) return;
      err(`\r\u001B[2K${text}`);
      shown = true;
    },
    clear: () => {
      if (shown) err('\r\u001B[2K');
      shown = false;
    },
  };
}
