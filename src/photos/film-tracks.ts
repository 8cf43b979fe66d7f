/**
 * Tracks of a film that are neither picture, sound nor text: what a camera wrote of its place and its movements, timecode,
 * hints for a server. Such a track goes, with every byte of its samples, where it is certain which bytes those are.
 */
import { type Box, boxesBetween } from './boxes.ts';
import { type Stretch, samplesOf } from './film-samples.ts';

/** Types of tracks by their handler: what a film is watched and heard by (ISO/IEC 14496-12, 12). */
const SHOWN: ReadonlySet<string> = new Set(['vide', 'soun']);
/** Subtitles and captions, of that standard (12.5, 12.6) and of QuickTime; some cameras write where they are into such. */
const TEXT: ReadonlySet<string> = new Set(['subt', 'text', 'sbtl', 'clcp']);

export interface TracksPlan {
  /** Tracks that go. */
  readonly dropped: readonly Box[];
  /** What in tracks that stay names those. */
  readonly references: readonly Box[];
  /** The samples of those that go. */
  readonly samples: readonly Stretch[];
  /** Whether a track of data has to stay, and whether one of text is there. */
  readonly left: 'data' | 'text' | null;
}

interface Track {
  readonly box: Box;
  readonly handler: string;
  readonly id: number | null;
  readonly samples: readonly Stretch[] | null;
  readonly references: readonly Box[];
}

type BytesAt = (at: number, length: number) => Buffer;

/** @param top the boxes of the file */
export function tracksPlan(top: readonly Box[], bytesAt: BytesAt): TracksPlan {
  const inside = (box: Box): Box[] => boxesBetween(bytesAt, box.at + box.head, box.at + box.length);
  const movies = top.filter(({ name }) => name === 'moov').flatMap(inside);
  const tracks = movies.filter(({ name }) => name === 'trak').map((box) => trackIn(box, inside, bytesAt));
  const data = tracks.filter(({ handler }) => !SHOWN.has(handler) && !TEXT.has(handler));
  const stay = tracks.filter((track) => !data.includes(track));
  const text = stay.some(({ handler }) => TEXT.has(handler)) ? 'text' : null;
  if (data.length === 0) return { dropped: [], references: [], samples: [], left: text };
  const samples = data.flatMap((track) => track.samples ?? []);
  // Of a film in fragments, samples are told by these too.
  const inPieces = top.some(({ name }) => name === 'moof') || movies.some(({ name }) => name === 'mvex');
  const certain = !inPieces && tracks.every((track) => track.samples !== null) && stay.some(({ handler }) => SHOWN.has(handler));
  const apart =
    certain &&
    areWithin(samples, top) &&
    areApart(
      samples,
      stay.flatMap((track) => track.samples ?? []),
    );
  if (!apart) return { dropped: [], references: [], samples: [], left: 'data' };
  const gone = new Set(data.map(({ id }) => id));
  const references = stay.flatMap((track) => track.references).filter((box) => namesOnly(gone, box, bytesAt));
  return { dropped: data.map(({ box }) => box), references, samples, left: text };
}

function trackIn(box: Box, inside: (box: Box) => Box[], bytesAt: BytesAt): Track {
  const down = (...names: readonly string[]): Box[] =>
    names.reduce<Box[]>((boxes, name) => boxes.filter((each) => each.name === name).flatMap(inside), inside(box));
  const body = ({ at, head, length }: Box): Buffer => bytesAt(at + head, length - head);
  const [header] = inside(box).filter(({ name }) => name === 'tkhd');
  const [handler] = down('mdia').filter(({ name }) => name === 'hdlr');
  return {
    box,
    handler: handler ? bytesAt(handler.at + handler.head, 12).toString('latin1', 8, 12) : '',
    id: header ? idIn(bytesAt(header.at + header.head, 24)) : null,
    samples: samplesOf(down('mdia', 'minf', 'stbl'), body),
    references: down('tref'),
  };
}

/** Behind the two times, which in version 1 have 8 bytes each (8.3.2.2). */
function idIn(header: Buffer): number | null {
  const at = header[0] === 1 ? 20 : 12;
  return header.length >= at + 4 ? header.readUInt32BE(at) : null;
}

/** A kind of reference is a list of tracks (8.3.3). */
function namesOnly(gone: ReadonlySet<number | null>, { at, head, length }: Box, bytesAt: BytesAt): boolean {
  const body = bytesAt(at + head, Math.min(length - head, 4096));
  if (body.length < 4) return false;
  return Array.from({ length: Math.floor(body.length / 4) }, (_, n) => body.readUInt32BE(n * 4)).every((id) => gone.has(id));
}

function areWithin(samples: readonly Stretch[], top: readonly Box[]): boolean {
  const media = top.filter(({ name }) => name === 'mdat');
  return samples.every(([from, length]) => media.some(({ at, head, length: whole }) => from >= at + head && from + length <= at + whole));
}

/** Whether no byte is in both, told in one pass over all of them in the order of the file. */
function areApart(some: readonly Stretch[], others: readonly Stretch[]): boolean {
  const all = [...some.map((stretch) => [stretch, true] as const), ...others.map((stretch) => [stretch, false] as const)];
  const sorted = all.filter(([[, length]]) => length > 0).sort(([[a]], [[b]]) => a - b);
  const ends = { goes: 0, stays: 0 };
  for (const [[from, length], goes] of sorted) {
    if (from < (goes ? ends.stays : ends.goes)) return false;
    if (goes) ends.goes = Math.max(ends.goes, from + length);
    else ends.stays = Math.max(ends.stays, from + length);
  }
  return true;
}
