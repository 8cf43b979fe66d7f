import { type FilmIndex, filmIndex } from '../../../journal/registers/film.ts';
import { fileAddress } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';

const FILM = shown('film', ({ record }) => filmIndex(record));

export const FILM_QUESTIONS: readonly AnyQuestion[] = [FILM];

/** Every clip with its marks, and the marks of each part. */
export const filmOf = (sheet: Sheet): FilmIndex => sheet.ask(FILM);

/** Where a clip plays from a time: a file of the journal, or an address elsewhere; null when it is only a name. */
export function clipHref(sheet: Sheet, clip: { readonly clip: string; readonly file: string | null }, fragment: string): string | null {
  if (clip.file !== null) return sheet.link(fileAddress(clip.file)) + fragment;
  return /^https?:\/\//.test(clip.clip) ? clip.clip + fragment : null;
}

/** The name of a clip: its title, else the last piece of its path. */
export function clipName({ clip, title }: { readonly clip: string; readonly title: string | null }): string {
  return title ?? clip.split('/').at(-1) ?? clip;
}

/** The anchor of a clip on the page of the film. */
export function clipAnchor({ clip, file }: { readonly clip: string; readonly file: string | null }): string {
  return `clip-${(file ?? clip).toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`;
}
