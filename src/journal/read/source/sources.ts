import type { Diagnostic } from '../../diagnostics/diagnostic.ts';

/** A note or catalogue as it lies on disk. */
export interface SourceFile {
  /** Relative to the journal folder, with `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Any other file of the journal: a picture, a paper, a clip. */
export interface Asset {
  readonly path: string;
  /** Bytes. */
  readonly size: number;
}

/** A journal folder, read. */
export interface Sources {
  readonly files: readonly SourceFile[];
  readonly assets: readonly Asset[];
  /** What went wrong while reading: links that lead out, files that would not open. */
  readonly problems: readonly Diagnostic[];
}
