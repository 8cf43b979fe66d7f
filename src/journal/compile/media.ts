/** Pictures, film and papers of a note. */
import type { BagFilling, FilmClip, Paper, PartId, Picture, PicturePoint, Place } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import type { Prose, ProseImage } from '../read/prose.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { readClipTime } from '../values/clip-time.ts';
import { decoded } from '../values/link.ts';
import { believed, known, partsNamed } from './believed.ts';
import { findFile, folderOf, inside, isAway } from './paths.ts';
import type { NoteAtHand } from './session.ts';

const FILM = /\.(mp4|m4v|mov|webm|mkv|avi|3gp|mpe?g|mts)$/i;
const PICTURE = /\.(jpe?g|png|webp|tiff?|avif|hei[cf])$/i;

/** A picture named in a note: its path inside the journal, or null with the problem reported. */
export function pictureBeside(written: string, context: NoteAtHand, place: Place, again: readonly Place[] = []): string | null {
  const what = { code: 'A901', name: 'picture' } as const;
  return findFile(written, [folderOf(context.file)], context.assets, what, place, context.out, again);
}

/** A paper named in a note: beside it, or in papers/. */
export function paperNamed(written: string, context: NoteAtHand, place: Place): string | null {
  const what = { code: 'A902', name: 'paper' } as const;
  return findFile(written, [folderOf(context.file), 'papers'], context.assets, what, place, context.out);
}

/**
 * The pictures of a note in reading order: those in the prose, those named under `pictures`, then those that
 * lie beside the note unmentioned. A picture in the prose also belongs to the parts linked in its paragraph.
 */
export function picturesOf(list: NoteFields['pictures'], prose: Prose, bags: readonly BagFilling[], context: NoteAtHand): Picture[] {
  const find = pictureFinder(list, prose, context);
  const listed = believed(list, (entry) => listedPicture(entry, find, context));
  const byFile = new Map(listed.map((picture) => [picture.file, picture]));
  const inProse = prose.images.flatMap((image) => proseImage(image, prose, byFile, find, context) ?? []);
  const inText = new Set(inProse.map((picture) => picture.file));
  const rest = listed.filter((picture) => !inText.has(picture.file));
  const mentioned = new Set([...inText, ...rest.map((picture) => picture.file), ...bags.map((bag) => bag.picture)]);
  return [...inProse, ...rest, ...unmentioned(mentioned, context)];
}

type Find = (written: string, place: Place) => string | null;

/** Finds pictures of a note. One that is not there is reported where it is first named, with the other places. */
function pictureFinder(list: NoteFields['pictures'], prose: Prose, context: NoteAtHand): Find {
  const pathOf = (written: string): string => inside(folderOf(context.file), written) ?? written;
  const named = [
    ...believed(list, ({ says, placeOf }) => ({ path: pathOf(says.file), place: placeOf('file') })),
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

function listedPicture(entry: NoteFields['pictures'][number], find: Find, context: NoteAtHand): Picture | null {
  const { says, place, placeOf } = entry;
  const file = find(says.file, placeOf('file'));
  const points = pointsOf(says.points, context);
  // What a picture points at it shows, said or not.
  const shows = [...new Set([...partsNamed(says.shows, entry, context, 'shows'), ...points.flatMap((one) => one.shows ?? [])])];
  return file === null ? null : { ...says, file, shows, points, named: shows, inProse: false, unmentioned: false, place };
}

/** Places in a picture; one that shows nothing known is left out. */
function pointsOf(list: NoteFields['pictures'][number]['says']['points'], context: NoteAtHand): PicturePoint[] {
  return believed(list, ({ says: { at, shows, note }, place, placeOf }) => {
    const part = shows === null ? null : context.names.part(shows, placeOf('shows'));
    if (shows !== null && part === null) return null;
    if (shows !== null || note !== null) return { at, shows: part?.id ?? null, note };
    context.out.report('A302', place, 'A place in a picture says what is there.', {
      hint: 'Add `shows:` with the id of a part, or a `note:`.',
    });
    return null;
  });
}

function proseImage(
  image: ProseImage,
  prose: Prose,
  listed: ReadonlyMap<string, Picture>,
  find: Find,
  context: NoteAtHand,
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
    named: more?.shows ?? [],
    view: more?.view ?? null,
    caption: bothCaptions(more?.caption ?? null, image.title ?? (image.alt === '' ? null : image.alt)),
    alt: more?.alt ?? (image.alt === '' ? null : image.alt),
    points: more?.points ?? [],
    inProse: true,
    unmentioned: false,
    place: image.place,
  };
}

/** What the front matter says of a picture and what the prose says, one after the other; once where they say the same. */
function bothCaptions(listed: string | null, inProse: string | null): string | null {
  if (listed === null || inProse === null) return listed ?? inProse;
  const plain = (text: string): string =>
    text
      .replaceAll(/[\s.!?…]+/g, ' ')
      .trim()
      .toLowerCase();
  if (plain(listed) === plain(inProse)) return listed;
  return `${/[.!?…]['"’”)]?$/.test(listed) ? listed : `${listed}.`} ${inProse}`;
}

function unmentioned(mentioned: ReadonlySet<string | null>, context: NoteAtHand): Picture[] {
  if (!context.file.endsWith('/index.md')) return [];
  const beside = context.assets.folders.get(folderOf(context.file)) ?? [];
  return beside
    .filter((path) => PICTURE.test(path) && !mentioned.has(path))
    .map((file) => ({
      file,
      shows: [],
      named: [],
      view: null,
      caption: null,
      alt: null,
      points: [],
      inProse: false,
      unmentioned: true,
      place: null,
    }));
}

/** The clips that lie in the folder of a note and that it does not name, by their paths inside the journal. */
export function clipsBeside(list: NoteFields['film'], context: NoteAtHand): string[] {
  if (!context.file.endsWith('/index.md')) return [];
  const folder = folderOf(context.file);
  const named = new Set(list.map(({ says }) => inside(folder, says.clip)));
  return (context.assets.folders.get(folder) ?? []).filter((path) => FILM.test(path) && !named.has(path));
}

export function filmOf(list: NoteFields['film'], context: NoteAtHand): FilmClip[] {
  return believed(list, (entry) => {
    const { shows, ...says } = entry.says;
    const marks = Object.entries(shows).map(([time, parts]) => clipMark(time, parts, entry, context));
    const file = isAway(says.clip) ? null : clipFile(says.clip, context, entry.placeOf('clip'));
    return { ...says, file, marks: known(marks).sort((a, b) => a.seconds - b.seconds), place: entry.place };
  });
}

function clipMark(
  time: string,
  shows: readonly string[],
  entry: WrittenEntry<unknown>,
  context: NoteAtHand,
): FilmClip['marks'][number] | null {
  const seconds = context.out.take(readClipTime(time), entry.placeOf('shows', time));
  const parts = partsNamed(shows, entry, context, 'shows', time);
  return seconds === null ? null : { seconds, text: time, parts };
}

function clipFile(written: string, context: NoteAtHand, place: Place): string | null {
  const path = inside(folderOf(context.file), written);
  const what = { code: 'A905', name: 'clip' } as const;
  const there = path === null ? undefined : context.assets.files.get(path);
  return there !== undefined ? there.path : findFile(written, [folderOf(context.file)], context.assets, what, place, context.out);
}

export function papersOf(list: NoteFields['papers'], context: NoteAtHand): Paper[] {
  return believed(list, (entry) => {
    const { paper, ...says } = entry.says;
    const file = paperNamed(paper, context, entry.placeOf('paper'));
    const shows = partsNamed(says.shows, entry, context, 'shows');
    return file === null ? null : { ...says, file, shows, place: entry.place };
  });
}
