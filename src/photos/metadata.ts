/** What a camera wrote into a picture: when it was taken, and with what. Nothing else is looked at. */
import ExifReader from 'exifreader';
import type { TakenAt } from './facts.ts';

export interface CameraFacts {
  readonly takenAt: TakenAt | null;
  readonly camera: string | null;
}

export const NO_CAMERA_FACTS: CameraFacts = { takenAt: null, camera: null };

/**
 * Reads the camera's facts from an EXIF block, or from a TIFF file, which is built alike.
 *
 * Tags are those of EXIF: DateTimeOriginal 0x9003 and DateTimeDigitized 0x9004 with OffsetTimeOriginal
 * 0x9011 and OffsetTimeDigitized 0x9012. DateTime 0x0132 is left alone: it is when the file was last changed.
 *
 * @param block the bytes, with or without the leading `Exif\0\0`
 * @returns what could be read; a block that makes no sense gives nothing
 */
export function readCameraFacts(block: Uint8Array): CameraFacts {
  try {
    const bytes = Buffer.from(block.buffer, block.byteOffset, block.byteLength);
    const body = bytes.toString('latin1', 0, 6) === 'Exif\0\0' ? bytes.subarray(6) : bytes;
    const tags = ExifReader.load(body, { expanded: true }).exif ?? {};
    const text = (name: string): string => wordsOf((tags as Record<string, unknown>)[name]);
    return {
      takenAt:
        takenAt(text('DateTimeOriginal'), text('OffsetTimeOriginal')) ?? takenAt(text('DateTimeDigitized'), text('OffsetTimeDigitized')),
      camera: cameraName(text('Make'), text('Model')),
    };
  } catch {
    return NO_CAMERA_FACTS;
  }
}

/** EXIF text, without the zeros and spaces that pad it. */
function wordsOf(tag: unknown): string {
  const description = (tag as { description?: unknown } | undefined)?.description;
  return typeof description === 'string' ? description.replaceAll('\0', ' ').replace(/\s+/gu, ' ').trim() : '';
}

/** `2031:03:12 21:10:00` and `+01:00`; a clock that was never set (zeros, blanks) or a day that is in no calendar gives null. */
function takenAt(clock: string, zone: string): TakenAt | null {
  const found = /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}):(\d{2}):(\d{2})/u.exec(clock);
  if (!found) return null;
  const [, year, month, day, hour, minute, second] = found;
  const local = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const instant = new Date(`${local}Z`);
  if (Number.isNaN(instant.getTime()) || !instant.toISOString().startsWith(local)) return null;
  return { local, offset: /^[+-](0\d|1[0-4]):[0-5]\d$/u.test(zone) ? zone : zone === 'Z' ? '+00:00' : null };
}

/** Many models begin with the make already. */
function cameraName(make: string, model: string): string | null {
  const name = model.toLowerCase().startsWith(make.toLowerCase()) ? model : `${make} ${model}`;
  return name.trim() === '' ? null : name.trim();
}
