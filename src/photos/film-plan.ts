/**
 * What is to be done to a film so that it tells nothing of its camera: read from its boxes, nothing is changed here.
 * Either every byte of the file is accounted for, or the film is not understood and left as it is.
 */
import { fstatSync, readSync } from 'node:fs';
import { type Box, boxesBetween } from './boxes.ts';
import { HOLDING, isSelfContained, makersIn, TELLING } from './film-boxes.ts';
import { tracksPlan } from './film-tracks.ts';

export interface FilmPlan {
  /** Boxes that become free space, with all that is in them. */
  readonly free: readonly Box[];
  /** Stretches of bytes that become zero. */
  readonly blank: readonly (readonly [from: number, length: number])[];
  /** How long the film is; what follows its last box goes. */
  readonly length: number;
}

/** Why a film is not cleaned, or not of all. */
export type FilmRest = 'other' | 'unread' | 'data' | 'text';

/** A box that is read whole; longer ones of these kinds there are none of. */
const MOST_READ = 4 * 1024 * 1024;
/** First in a film of the family; the older ones of QuickTime begin at once. */
const FIRST = new Set(['ftyp', 'styp', 'pdin', 'moov', 'mdat', 'free', 'skip', 'wide', 'pnot']);

interface Reading {
  readonly open: number;
  readonly free: Box[];
  readonly blank: [from: number, length: number][];
  readonly handlers: string[];
  /** Where tracks begin that go as a whole. */
  readonly going: ReadonlySet<number>;
}

/**
 * @param open a file open for reading
 * @returns the plan; and `other` for a film of another family, `unread` where the boxes cannot be followed; though the rest can be
 *   cleaned, `data` where a track beside picture and sound cannot be taken out, `text` where there are subtitles
 */
export function filmPlan(open: number): { readonly plan: FilmPlan | null; readonly rest: FilmRest | null } {
  const { size } = fstatSync(open);
  const top = boxesOf(open, 0, size);
  const [first] = top;
  if (first === undefined || !FIRST.has(first.name)) return { plan: null, rest: 'other' };
  const last = top.at(-1) ?? first;
  const length = last.at + last.length;
  const tracks = tracksPlan(top, (at, length) => bytesAt(open, at, length));
  const going = new Set(tracks.dropped.map(({ at }) => at));
  const reading: Reading = { open, free: [], blank: [], handlers: [], going };
  const sound = !runsOver(open, length, size) && top.some(({ name }) => name === 'moov') && readBoxes(reading, '', top);
  const known = reading.handlers.length > 0;
  if (!sound || !known) return { plan: null, rest: 'unread' };
  return {
    plan: { free: [...reading.free, ...tracks.references], blank: [...reading.blank, ...tracks.samples], length },
    rest: tracks.left,
  };
}

/** What follows the last whole box begins like a box that goes on beyond the end: the film was cut short. */
function runsOver(open: number, from: number, size: number): boolean {
  const head = bytesAt(open, from, Math.min(8, size - from));
  return head.length === 8 && ['', 'moov', 'moof'].some((holder) => HOLDING[holder]?.includes(head.toString('latin1', 4, 8)));
}

/** @returns whether all of it could be followed */
function readBoxes(reading: Reading, holder: string, boxes: readonly Box[]): boolean {
  const known = HOLDING[holder] ?? [];
  return boxes.every((box) => {
    if (!known.includes(box.name) || reading.going.has(box.at)) {
      reading.free.push(box);
      return true;
    }
    if (Object.hasOwn(HOLDING, box.name)) return readHolder(reading, box);
    return readLeaf(reading, box);
  });
}

function readHolder(reading: Reading, box: Box): boolean {
  const [from, to] = [box.at + box.head, box.at + box.length];
  const inside = boxesOf(reading.open, from, to);
  const last = inside.at(-1);
  const end = last === undefined ? from : last.at + last.length;
  // QuickTime ends some lists with four bytes of zero.
  if (to - end > 4 || bytesAt(reading.open, end, to - end).some((byte) => byte !== 0)) return false;
  if (box.name === 'moov' && !(has(inside, 'mvhd') && has(inside, 'trak'))) return false;
  if (box.name === 'mdia' && !has(inside, 'hdlr')) return false;
  return readBoxes(reading, box.name, inside);
}

const has = (boxes: readonly Box[], wanted: string): boolean => boxes.some(({ name }) => name === wanted);

function readLeaf(reading: Reading, box: Box): boolean {
  const { open, blank, handlers } = reading;
  const tells = Object.hasOwn(TELLING, box.name) ? TELLING[box.name] : undefined;
  if (tells === undefined && box.name !== 'stsd' && box.name !== 'dref') return true;
  if (box.length > MOST_READ) return false;
  const body = bytesAt(open, box.at + box.head, box.length - box.head);
  const handler = body.toString('latin1', 8, 12);
  // That of `minf` says how data are found, not what they are.
  if (box.name === 'hdlr' && handler !== 'alis' && handler !== 'url ') handlers.push(handler);
  if (box.name === 'dref' && !isSelfContained(body)) return false;
  const stretches = box.name === 'stsd' ? makersIn(body, handlers.at(-1) ?? '') : (tells?.(body) ?? []);
  const within = stretches.every(([from, length]) => length >= 0 && from + length <= body.length);
  if (within) for (const [from, length] of stretches) blank.push([box.at + box.head + from, length]);
  return within;
}

function boxesOf(open: number, from: number, to: number): Box[] {
  return boxesBetween((at, length) => bytesAt(open, at, length), from, to);
}

function bytesAt(open: number, at: number, length: number): Buffer {
  const bytes = Buffer.alloc(Math.max(0, length));
  return bytes.subarray(0, length > 0 ? readSync(open, bytes, 0, length, at) : 0);
}
