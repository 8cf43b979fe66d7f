/**
 * sharp without its cache of operations. The cache goes by file name, so a picture that was replaced under
 * the same name would come out as it was before; and it holds memory that a long run has no use for.
 * It is loaded with the first picture that needs it: most builds have none that is new.
 */
import { createRequire } from 'node:module';
import type { default as Library, Metadata, Sharp, SharpInput, SharpOptions } from 'sharp';

export type { Metadata, Sharp };

let library: typeof Library | null = null;

export function sharp(options: SharpOptions): Sharp;
export function sharp(input: SharpInput, options?: SharpOptions): Sharp;
export function sharp(from: SharpInput | SharpOptions, options?: SharpOptions): Sharp {
  return loaded()(from as SharpInput, options);
}

function loaded(): typeof Library {
  if (library === null) {
    library = createRequire(import.meta.url)('sharp') as typeof Library;
    library.cache(false);
  }
  return library;
}
