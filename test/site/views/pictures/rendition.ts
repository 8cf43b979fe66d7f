import type { Rendition } from '../../../../src/photos/plan.ts';

/** A picture as it would have been rendered in one size. */
export function renditionOf(path: string): Rendition {
  const key = path.slice(path.lastIndexOf('/') + 1).replace(/\.\w+$/, '');
  const file = { file: `pictures/${key}.webp`, width: 1200, height: 900 };
  return { path, key, width: 1200, height: 900, sources: [], fallback: file, full: file, placeholder: null, takenAt: null, camera: null };
}
