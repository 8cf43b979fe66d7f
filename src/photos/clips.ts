/** Clips that lie in the journal: whether each is a film, and whether it can be published without what its camera wrote. */
import { closeSync, openSync, readSync } from 'node:fs';
import { extname, join } from 'node:path';
import { oneName } from '../journal/compile/paths.ts';
import { type Diagnostic, diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { FilmClip, Journal } from '../journal/model.ts';
import { SIGNATURE_BYTES, signatureOf } from './file-signature.ts';
import { type FilmRest, filmPlan } from './film-plan.ts';

/** Endings of films, and of sound beside them; a server tells a browser what a file is by nothing else. */
const ENDINGS = /^\.(mp4|m4v|mov|qt|3gp|3g2|m4a|webm|mkv|avi|ogv|ogg|mpe?g|ts|mts|m2ts|wmv|flv|mp3)$/i;

/** Whether a file has a name that films have. */
export function isFilmName(path: string): boolean {
  return ENDINGS.test(extname(path)) && !/\.(?:ts|m4a|mp3|ogg)$/i.test(path);
}

/** How films of other families begin, as texts at offsets: Matroska and WebM, AVI, Ogg, MPEG streams, Flash, Windows Media, MP3. */
const OTHERS: readonly (readonly (readonly [at: number, text: string])[])[] = [
  [[0, '\x1aE\xdf\xa3']],
  [
    [0, 'RIFF'],
    [8, 'AVI '],
  ],
  [[0, 'OggS\0']],
  [[0, '\0\0\x01\xba']],
  [[0, '\0\0\x01\xb3']],
  [
    [0, 'G'],
    [188, 'G'],
  ],
  [
    [4, 'G'],
    [196, 'G'],
  ],
  [[0, 'FLV\x01']],
  [[0, '0&\xb2u\x8ef\xcf\x11']],
  [[0, 'ID3']],
  [[0, '\xff\xfb']],
];

function isOther(start: string): boolean {
  return OTHERS.some((marks) => marks.every(([at, text]) => start.startsWith(text, at)));
}

/** The clips of a journal that are files of it, each with where it is first named. */
export function clipsOf({ sessions }: Journal): ReadonlyMap<string, FilmClip['place']> {
  const found = new Map<string, FilmClip['place']>();
  for (const { file, place } of sessions.flatMap(({ film }) => film)) if (file !== null && !found.has(file)) found.set(file, place);
  return found;
}

/**
 * A911 for what is no film, A912 for one that is published as it is.
 *
 * @param root the journal folder
 */
export function checkClips(journal: Journal, root: string): Diagnostic[] {
  const clips = clipsOf(journal);
  // They are published under their names.
  const sameButForCapitals = Map.groupBy(clips.keys(), (path) => oneName(path).toLowerCase());
  return [...clips].flatMap(([path, place]) => {
    const [first = path] = sameButForCapitals.get(oneName(path).toLowerCase()) ?? [];
    if (first !== path)
      return [diagnostic('A112', place, `${path} and ${first} are one name on many disks.`, { hint: 'Rename one of them.' })];
    const found = lookAt(join(root, path), path);
    if (found === null) return [];
    if ('fault' in found) return [diagnostic('A911', place, `${path} ${found.fault}.`, { hint: found.hint })];
    const [why, hint] = RESTS[found.rest];
    return [diagnostic('A912', place, `${path} ${why}.`, { hint })];
  });
}

const RESTS: Readonly<Record<FilmRest, readonly [why: string, hint: string]>> = {
  other: [
    'is a film of a kind that cannot be cleaned, so it is published as it is',
    'What its camera wrote into it goes with it. Save it as MP4.',
  ],
  unread: [
    'cannot be followed well enough to be cleaned, so it is published as it is',
    'What its camera wrote into it goes with it. Save it anew as MP4.',
  ],
  data: [
    'has a track beside picture and sound that cannot be taken out, so it is published as it is',
    'Such a track may tell where the film was taken. Save it anew with picture and sound only.',
  ],
  text: [
    'has a track of text, which is published as it is',
    'Some cameras write where they are as subtitles. Play it with those shown, or save it anew without.',
  ],
};

type Found = { readonly fault: string; readonly hint: string } | { readonly rest: FilmRest };

/** @returns null for a film that can be cleaned */
function lookAt(file: string, path: string): Found | null {
  let open: number;
  try {
    open = openSync(file, 'r');
  } catch {
    return { fault: 'cannot be read', hint: 'Check its permissions, and that it is still there.' };
  }
  try {
    if (!ENDINGS.test(extname(path)))
      return { fault: 'has an ending that no film has', hint: 'A clip is a film: MP4, MOV, WebM or the like.' };
    const head = Buffer.alloc(512);
    const start = head.toString('latin1', 0, readSync(open, head, 0, head.length, 0));
    const is = signatureOf(head.subarray(0, SIGNATURE_BYTES));
    if (is.name !== null && is.name !== 'film' && !isOther(start)) {
      return { fault: `is really ${is.name}`, hint: 'A clip is a film: MP4, MOV, WebM or the like.' };
    }
    const { rest } = filmPlan(open);
    if (rest !== 'other' || isOther(start)) return rest === null ? null : { rest };
    return { fault: 'is no film that is known', hint: 'A clip is a film: MP4, MOV, WebM or the like.' };
  } finally {
    closeSync(open);
  }
}
