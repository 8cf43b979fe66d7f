/**
 * The boxes of a film that we know, and what each may tell (ISO/IEC 14496-12; QuickTime File Format, its elder). A
 * reader passes over boxes that it does not know (4.2), so every other box can become free space of the same length.
 */

/** Boxes that hold boxes, and in which. */
export const HOLDING: Readonly<Record<string, readonly string[]>> = {
  '': ['ftyp', 'styp', 'pdin', 'mdat', 'moov', 'moof', 'mfra', 'sidx', 'ssix'],
  moov: ['mvhd', 'iods', 'trak', 'mvex'],
  trak: ['tkhd', 'tref', 'edts', 'mdia', 'tapt', 'load'],
  tapt: ['clef', 'prof', 'enof'],
  edts: ['elst'],
  mdia: ['mdhd', 'hdlr', 'elng', 'minf'],
  minf: ['vmhd', 'smhd', 'hmhd', 'nmhd', 'sthd', 'gmhd', 'hdlr', 'dinf', 'stbl'],
  gmhd: ['gmin'],
  dinf: ['dref'],
  stbl: [
    ...['stsd', 'stts', 'ctts', 'cslg', 'stsc', 'stsz', 'stz2', 'stco', 'co64', 'stss', 'stps'],
    ...['stsh', 'padb', 'stdp', 'sdtp', 'sbgp', 'sgpd', 'subs', 'saiz', 'saio'],
  ],
  mvex: ['mehd', 'trex', 'leva', 'trep'],
  moof: ['mfhd', 'traf'],
  traf: ['tfhd', 'tfdt', 'trun', 'sbgp', 'sgpd', 'subs', 'saiz', 'saio', 'sdtp'],
  mfra: ['tfra', 'mfro'],
};

/** What a known box tells of the camera, as stretches of its body that are blanked: from, and how many bytes. */
export type Tells = (body: Buffer) => readonly (readonly [from: number, length: number])[];

/** When it was made and changed, seconds of 4 or, in version 1, 8 bytes (8.2.2.2, 8.3.2.2, 8.4.2.2). */
const times: Tells = (body) => [[4, body[0] === 1 ? 16 : 8]];

export const TELLING: Readonly<Record<string, Tells>> = {
  mvhd: times,
  tkhd: times,
  mdhd: times,
  /** After the type of the track: reserved, in QuickTime its maker; then a name, which programs and cameras sign (8.4.3). */
  hdlr: (body) => [[12, body.length - 12]],
};

/** In bytes: a list of sample entries, which name the program that wrote them. */
const PICTURE_ENTRY = { vendor: 20, compressor: [50, 32] } as const;

/** The maker in each entry of `stsd`, and in those of pictures the name of the program (8.5.2, 12.1.3; QTFF, sample descriptions). */
export function makersIn(stsd: Buffer, handler: string): [from: number, length: number][] {
  const found: [number, number][] = [];
  for (let at = 8; at + 16 <= stsd.length; ) {
    const length = stsd.readUInt32BE(at);
    if (length < 16 || at + length > stsd.length) return found;
    if ((handler === 'vide' || handler === 'soun') && length >= 36) found.push([at + PICTURE_ENTRY.vendor, 4]);
    if (handler === 'vide' && length >= 86) found.push([at + PICTURE_ENTRY.compressor[0], PICTURE_ENTRY.compressor[1]]);
    at += length;
  }
  return found;
}

/** Whether a data reference names no file elsewhere: each entry says that the film is in this one (8.7.2). */
export function isSelfContained(dref: Buffer): boolean {
  for (let at = 8; at + 12 <= dref.length; ) {
    const length = dref.readUInt32BE(at);
    if (length !== 12) return false;
    at += length;
  }
  return true;
}
