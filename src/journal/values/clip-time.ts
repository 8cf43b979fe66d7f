import { bad, ok, quoted, type Reading } from './reading.ts';

/** Reads a time in a clip, `12:40` or `1:02:05`, into seconds. */
export function readClipTime(text: string): Reading<number> {
  const found = /^(?:(\d{1,3}):(?=\d\d:))?(\d{1,3}):(\d{2})$/.exec(text.trim());
  const [, hours, minutes = '', seconds = ''] = found ?? [];
  if (!found) return bad('A906', `${quoted(text)} is not a time in a clip.`, 'Write minutes:seconds or hours:minutes:seconds.');
  if (Number(seconds) > 59 || (hours !== undefined && Number(minutes) > 59)) {
    return bad(
      'A906',
      `${quoted(text)} is not a time in a clip: no more than 59 after a colon.`,
      'Write minutes:seconds or hours:minutes:seconds.',
    );
  }
  return ok(Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds));
}

/** Seconds as a clip's time is written: `12:40`, `1:02:05`. */
export function formatClipTime(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  return hours === 0 ? `${minutes}:${two(seconds % 60)}` : `${hours}:${two(minutes)}:${two(seconds % 60)}`;
}

/**
 * The fragment that opens a clip at a time: `#t=760`, or `#t=760,800` up to an end.
 * Source: W3C Media Fragments URI 1.0, section 4.2.1; the end must be later than the start.
 *
 * @throws RangeError when it is not
 */
export function clipFragment(start: number, end: number | null = null): string {
  if (end === null) return `#t=${start}`;
  if (end <= start) throw new RangeError('a fragment ends after it starts');
  return `#t=${start},${end}`;
}
