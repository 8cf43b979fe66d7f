import type { FilmClip, IsoDate, PartId, SessionId } from '../model.ts';
import { clipFragment } from '../values/clip-time.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** A place in a clip where parts are shown. */
export interface FilmMark {
  readonly clip: FilmClip;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly seconds: number;
  /** As written: `12:40`. */
  readonly text: string;
  readonly parts: readonly PartId[];
  /** Media Fragment that plays from here to the next mark: `#t=760,1085`; to the end after the last: `#t=1085`. */
  readonly fragment: string;
}

/** A clip, the sessions that mark it, and its marks in order of time. */
export interface MarkedClip {
  /** As named in the notes. */
  readonly clip: string;
  readonly file: string | null;
  readonly title: string | null;
  readonly marks: readonly FilmMark[];
}

export interface FilmIndex {
  /** In the order the notes first name them. */
  readonly clips: readonly MarkedClip[];
  /** Where each part is shown: by session, then by time. */
  readonly byPart: ReadonlyMap<PartId, readonly FilmMark[]>;
}

/** Which clip shows which part at what time, from both sides. A clip that several notes name is one clip. */
export const filmIndex: (record: RegisterSource) => FilmIndex = perRecord((record) => {
  const named = orderedSessions(record).flatMap(({ id, date, film }) => film.map((clip) => ({ clip, session: id, date })));
  const clips = [...groupedBy(named, ({ clip }) => clip.file ?? clip.clip).values()].flatMap(markedClip);
  const shown = clips.flatMap(({ marks }) => marks.flatMap((mark) => [...new Set(mark.parts)].map((part) => ({ part, mark }))));
  shown.sort((a, b) => (a.mark.date < b.mark.date ? -1 : a.mark.date > b.mark.date ? 1 : 0));
  const byPart = new Map([...groupedBy(shown, ({ part }) => part)].map(([part, list]) => [part, list.map(({ mark }) => mark)]));
  return { clips, byPart };
});

interface Naming {
  readonly clip: FilmClip;
  readonly session: SessionId;
  readonly date: IsoDate;
}

function markedClip(namings: readonly Naming[]): MarkedClip[] {
  const [first] = namings;
  if (!first) return [];
  const marks = namings
    .flatMap(({ clip, session, date }) => clip.marks.map((mark) => ({ ...mark, clip, session, date })))
    .sort((a, b) => a.seconds - b.seconds);
  const title = namings.find(({ clip }) => clip.title !== null)?.clip.title ?? null;
  const withEnds = marks.map((mark) => {
    const next = marks.find(({ seconds }) => seconds > mark.seconds)?.seconds ?? null;
    return { ...mark, fragment: clipFragment(mark.seconds, next) };
  });
  return [{ clip: first.clip.clip, file: first.clip.file, title, marks: withEnds }];
}
