/** What is known of a picture or paper without unpacking its pixels. Plain data, kept in the index. */
import type { Seal } from './clean-pdf.ts';

export const PICTURE_KINDS = ['jpeg', 'png', 'webp', 'tiff', 'avif', 'heic'] as const;
export type PictureKind = (typeof PICTURE_KINDS)[number];
export type FileKind = PictureKind | 'pdf';

/** When a picture was taken, as the camera's clock said. */
export interface TakenAt {
  /** `YYYY-MM-DDTHH:MM:SS` by the clock of the camera. */
  readonly local: string;
  /** `+01:00`, `Z` as `+00:00`; null when the camera does not say. */
  readonly offset: string | null;
}

export interface PictureFacts {
  /** Path inside the journal. */
  readonly path: string;
  readonly kind: FileKind;
  readonly bytes: number;
  /** SHA-256 of the bytes, hexadecimal; null when only the header was looked at. */
  readonly digest: string | null;
  /** Pixels, upright; points for a PDF; 0 when a PDF's pages could not be looked at. */
  readonly width: number;
  readonly height: number;
  /** Pages of a PDF, null for a picture or when they could not be counted. */
  readonly pages: number | null;
  readonly takenAt: TakenAt | null;
  readonly camera: string | null;
  /** Why a PDF is published as it is, with its metadata; null when it is cleaned, and for a picture. */
  readonly seal: Seal | null;
}

const ENDINGS: ReadonlyMap<string, FileKind> = new Map([
  ['jpg', 'jpeg'],
  ['jpeg', 'jpeg'],
  ['png', 'png'],
  ['webp', 'webp'],
  ['tif', 'tiff'],
  ['tiff', 'tiff'],
  ['avif', 'avif'],
  ['heic', 'heic'],
  ['heif', 'heic'],
  ['pdf', 'pdf'],
]);

/** The kind a file's name promises, whatever its case; null when it is no picture and no PDF. */
export function kindByName(path: string): FileKind | null {
  const ending = /\.([^./]+)$/u.exec(path)?.[1]?.toLowerCase();
  return ending === undefined ? null : (ENDINGS.get(ending) ?? null);
}
