/**
 * How a picture is rendered. Whatever changes the pixels stands here, so that the digest of this
 * recipe is part of every file name and of every key of the cache.
 *
 * Formats follow measured cost per 12-megapixel picture at three sizes (480, 1280, 2048): JPEG 0.12 s, WebP
 * at effort 2 0.27 s, at effort 4 0.45 s, AVIF at effort 2 1.7 s. What a telephone shows is as wide as its page,
 * held upright or not, so the small sizes go by width; see `shown-widths.ts`.
 */
import { createHash } from 'node:crypto';

/** Widths in pixels for pages that set pictures narrow, smallest first. */
export const NARROW_WIDTHS = [320, 640] as const;
/** Longer edges in pixels of the larger sizes, smallest first. */
export const LARGE_EDGES = [1280, 2048] as const;
/** Longer edge of the plain JPEG for programs without WebP. */
export const FALLBACK_SIZE = 1280;
/** Longer edge of the first page of a PDF. */
export const PAPER_SIZE = 1280;
/** A size is left out when the next larger one is less than this many times it. */
export const LEAST_STEP = 1.2;
/** More pixels than this are not unpacked: 200 megapixels. */
export const MOST_PIXELS = 200_000_000;

export const WEBP = { quality: 76, effort: 2, smartSubsample: false } as const;
export const JPEG = { quality: 80, mozjpeg: false, chromaSubsampling: '4:2:0' } as const;
/** What shows through a transparent picture. */
export const PAPER_WHITE = { r: 255, g: 255, b: 255 } as const;

/** Raise it when the rendering changes in a way that the constants above do not show. */
const EDITION = 3;

/** Raise it when a PDF is cleaned otherwise. */
export const PAPER_EDITION = 3;

/** Sixteen hexadecimal digits that change whenever the recipe does. */
export const RECIPE_DIGEST = createHash('sha256')
  .update(JSON.stringify([EDITION, NARROW_WIDTHS, LARGE_EDGES, FALLBACK_SIZE, PAPER_SIZE, LEAST_STEP, WEBP, JPEG, PAPER_WHITE]))
  .digest('hex')
  .slice(0, 16);

/**
 * The longer edges at which a picture is rendered: never larger than it is, never two that hardly differ.
 *
 * @param width of the picture in pixels, upright
 * @param height likewise
 * @returns smallest first, at least one
 */
export function edgesFor(width: number, height: number): number[] {
  const longest = Math.max(width, height);
  const [, largest] = LARGE_EDGES;
  const edges = [Math.min(longest, largest)];
  const wanted = [...NARROW_WIDTHS.map((narrow) => Math.round((narrow * longest) / width)), ...LARGE_EDGES];
  for (const edge of wanted.sort((a, b) => b - a)) {
    if (edge * LEAST_STEP <= (edges[0] ?? 0)) edges.unshift(edge);
  }
  return edges;
}

/** Width and height of a picture scaled down so that its longer edge is `edge`; never under one pixel. */
export function fitted(width: number, height: number, edge: number): { width: number; height: number } {
  const scale = Math.min(1, edge / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}
