/**
 * Which files a picture becomes in the site: what pages read. Names come from the bytes and the recipe, so
 * that renaming a picture changes no file.
 */
import { oneName } from '../journal/compile/paths.ts';
import type { TakenAt } from './facts.ts';

/** A rendered file. `file` is relative to the root of the site. */
export interface RenderedFile {
  readonly file: string;
  readonly width: number;
  readonly height: number;
}

export interface Rendition {
  /** Path inside the journal. */
  readonly path: string;
  /** Key of the cache entry: one for all pictures of the same bytes. */
  readonly key: string;
  /** Upright size of the largest rendering, for `width` and `height` of the image element. */
  readonly width: number;
  readonly height: number;
  /** Best format first; each srcset from narrow to wide. */
  readonly sources: readonly { readonly type: 'image/webp'; readonly srcset: readonly RenderedFile[] }[];
  /** Plain JPEG for `src`. */
  readonly fallback: RenderedFile;
  /** The largest rendering, for the full-size view. */
  readonly full: RenderedFile;
  /** Mean colour, `#rrggbb`; null until it has been rendered once. */
  readonly placeholder: string | null;
  /** Null when it is unknown or not to be shown. */
  readonly takenAt: TakenAt | null;
  readonly camera: string | null;
}

/** A paper as it is published: the file without its metadata and, where there is one, a picture of its first page. */
export interface PaperFile {
  readonly path: string;
  /** Relative to the root of the site: `papers/<name>-<digest>.pdf`. For a picture, its largest rendering. */
  readonly file: string;
  readonly kind: 'pdf' | 'picture';
  /** Key of the cache entry of a PDF, or of the picture. */
  readonly key: string;
  /** Size of the PDF, as it is published once that is known; null for a picture. */
  readonly bytes: number | null;
  readonly pages: number | null;
  readonly firstPage: Rendition | null;
}

/** The plan as plain data, fit for JSON. */
export interface PlanData {
  readonly renditions: readonly Rendition[];
  /** The PDFs. */
  readonly papers: readonly PaperFile[];
  /** Every picture in the order taken; those without a time last, by name. */
  readonly inOrder: readonly string[];
}

export interface PicturePlan {
  readonly data: PlanData;
  /** The rendition of a picture, or of the first page of a PDF; null when there is none. */
  rendition(path: string): Rendition | null;
  /** A PDF, or a picture that serves as a paper. */
  paper(path: string): PaperFile | null;
  /** The same paths in the order the pictures were taken. */
  inOrderTaken(paths: readonly string[]): string[];
}

/** Gives plan data its look-ups. */
export function picturePlan(data: PlanData): PicturePlan {
  const renditions = new Map(data.renditions.map((one) => [oneName(one.path), one]));
  const papers = new Map(data.papers.map((one) => [oneName(one.path), one]));
  const rank = new Map(data.inOrder.map((path, index) => [path, index]));
  const rankOf = (path: string): number => rank.get(path) ?? rank.size;
  return {
    data,
    rendition: (path) => renditions.get(oneName(path)) ?? null,
    paper: (path) => papers.get(oneName(path)) ?? pictureAsPaper(renditions.get(oneName(path))),
    inOrderTaken: (paths) => [...paths].sort((a, b) => rankOf(a) - rankOf(b) || (a < b ? -1 : 1)),
  };
}

function pictureAsPaper(rendition: Rendition | undefined): PaperFile | null {
  if (!rendition) return null;
  return {
    path: rendition.path,
    file: rendition.full.file,
    kind: 'picture',
    key: rendition.key,
    bytes: null,
    pages: null,
    firstPage: rendition,
  };
}

/** A plan without pictures, for tests and for a journal that has none. */
export const NO_PICTURES: PicturePlan = picturePlan({ renditions: [], papers: [], inOrder: [] });
