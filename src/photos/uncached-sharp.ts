/**
 * sharp without its cache of operations. The cache goes by file name, so a picture that was replaced under
 * the same name would come out as it was before; and it holds memory that a long run has no use for.
 */
import sharp, { type Metadata, type Sharp } from 'sharp';

sharp.cache(false);

export type { Metadata, Sharp };
export { sharp };
