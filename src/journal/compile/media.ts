/** Pictures, film and papers of a note. */
import type { BagFilling, FilmClip, Paper, PartId, Picture, Place } from '../model.ts';
import type { Prose, ProseImage } from '../read/prose.ts';
import type { SessionSource } from '../schema/session.ts';
import { readClipTime } from '../values/clip-time.ts';
import { decoded } from '../values/link.ts';
import { findFile, folderOf, inside, isAway } from './paths.ts';
import type { NoteContext } from './session.ts';
import { each, partsNamed } from './work.ts';

const PICTURE = /\.(jpe?g|png|webp|tiff?|avif|hei[cf])$/i;

/** A picture named in a note: its path inside the journal, or null with the problem reported. */
export function pictureBeside(written: string, context: NoteContext, place: Place, again: readonly Place[] = []): string | null {
  const what = { code: 'A901', name: 'picture' } as const;
  return findFile(written, [folderOf(context.file)], context.shelf, what, place, context.out, again);
}

/** A paper named in a note: beside it, or in papers/. */
export function paperNamed(written: string, context: NoteContext, place: Place): string | null {
  const what = { code: 'A902', name: 'paper' } as const;
  return findFile(written, [folderOf(context.file), 'papers'], context.shelf, what, place, context.out);
}

/**
 * The pictures of a note in reading order: those in the prose, those named under `pictures`, then those that
 * lie beside the note unmentioned. A picture in the prose also belongs to the parts linked in its paragraph.
 */
export function picturesOf(list: SessionSource['pictures'], prose: Prose, bags: readonly BagFilling[], context: NoteContext): Picture[] {
  const find = pictureFinder(list, prose, context);
  const listed = each(list, (entry, i) => listedPicture(entry, i, find, context));
  const byFile = new Map(listed.map((picture) => [picture.file, picture]));
  const inProse = prose.images.flatMap((image) => proseImage(image, prose, byFile, find, context) ?? []);
  const told = new Set(inProse.map((picture) => picture.file));
  const rest = listed.filter((picture) => !told.has(picture.file));
  const mentioned = new Set([...told, ...rest.map((picture) => picture.file), ...bags.map((bag) => bag.picture)]);
  return [...inProse, ...rest, ...unmentioned(mentioned, context)];
}

type PictureSource = NonNullable<SessionSource['pictures']>[number];

type Find = (written: string, place: Place) => string | null;

/** Finds pictures of a note. One that is not there is reported where it is first named, with the other places. */
function pictureFinder(list: SessionSource['pictures'], prose: Prose, context: NoteContext): Find {
  const pathOf = (written: string): string => inside(folderOf(context.file), written) ?? written;
  const named = [
    ...each(list, (entry, i) => ({ path: pathOf(entry.file), place: context.place('pictures', i, 'file') })),
    ...prose.images.map(({ url, place }) => ({ path: pathOf(decoded(url)), place })),
  ];
  const places = Map.groupBy(named, ({ path }) => path);
  const missing = new Set<string>();
  return (written, place) => {
    const path = pathOf(written);
    if (missing.has(path)) return null;
    const again = (places.get(path) ?? []).slice(1).map((other) => other.place);
    const file = pictureBeside(written, context, place, again);
    if (file === null) missing.add(path);
    return file;
  };
}

function listedPicture(entry: PictureSource, i: number, find: Find, context: NoteContext): Picture | null {
  const file = find(entry.file, context.place('pictures', i, 'file'));
  const shows = partsNamed(entry.shows, context, 'pictures', i, 'shows');
  if (file === null) return null;
  return {
    file,
    shows,
    view: entry.view ?? null,
    caption: entry.caption ?? null,
    alt: entry.alt ?? null,
    inProse: false,
    unmentioned: false,
    place: context.place('pictures', i),
  };
}

function proseImage(
  image: ProseImage,
  prose: Prose,
  listed: ReadonlyMap<string, Picture>,
  find: Find,
  context: NoteContext,
): Picture | null {
  if (isAway(image.url)) return null;
  const file = find(decoded(image.url), image.place);
  if (file === null) return null;
  const more = listed.get(file);
  const linked = prose.links
    .filter((link) => link.scheme === 'part' && link.paragraph === image.paragraph && context.catalogues.parts.has(link.id))
    .map((link) => link.id);
  return {
    file,
    shows: [...new Set<PartId>([...(more?.shows ?? []), ...linked])],
    view: more?.view ?? null,
    caption: more?.caption ?? image.title ?? (image.alt === '' ? null : image.alt),
    alt: more?.alt ?? (image.alt === '' ? null : image.alt),
    inProse: true,
    unmentioned: false,
    place: image.place,
  };
}

function unmentioned(mentioned: ReadonlySet<string | null>, context: NoteContext): Picture[] {
  if (!context.file.endsWith('/index.md')) return [];
  const beside = context.shelf.folders.get(folderOf(context.file)) ?? [];
  return beside
    .filter((path) => PICTURE.test(path) && !mentioned.has(path))
    .map((file) => ({ file, shows: [], view: null, caption: null, alt: null, inProse: false, unmentioned: true, place: null }));
}

export function filmOf(list: SessionSource['film'], context: NoteContext): FilmClip[] {
  return each(list, (entry, i) => ({
    clip: entry.clip,
    file: isAway(entry.clip) ? null : clipFile(entry.clip, context, context.place('film', i, 'clip')),
    title: entry.title ?? null,
    marks: each(Object.entries(entry.shows ?? {}), ([time, parts]) => {
      const seconds = context.out.take(readClipTime(time), context.place('film', i, 'shows', time));
      const shown = partsNamed(parts, context, 'film', i, 'shows', time);
      return seconds === null ? null : { seconds, text: time, parts: shown };
    }).sort((a, b) => a.seconds - b.seconds),
    place: context.place('film', i),
  }));
}

function clipFile(written: string, context: NoteContext, place: Place): string | null {
  const path = inside(folderOf(context.file), written);
  const what = { code: 'A905', name: 'clip' } as const;
  return path !== null && context.shelf.files.has(path)
    ? path
    : findFile(written, [folderOf(context.file)], context.shelf, what, place, context.out);
}

export function papersOf(list: SessionSource['papers'], context: NoteContext): Paper[] {
  return each(list, (entry, i) => {
    const file = paperNamed(entry.paper, context, context.place('papers', i, 'paper'));
    const shows = partsNamed(entry.shows, context, 'papers', i, 'shows');
    if (file === null) return null;
    return {
      file,
      kind: entry.kind,
      what: entry.what ?? null,
      date: entry.date ?? null,
      shows,
      place: context.place('papers', i),
    };
  });
}
