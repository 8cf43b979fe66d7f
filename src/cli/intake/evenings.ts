/** To which evening each file belongs, and under which name it comes to lie there. Nothing is read or written here. */
import type { IsoDate, Session } from '../../journal/model.ts';
import { eveningOf } from '../../journal/values/evening.ts';
import { instantsOf } from '../../journal/values/zone.ts';
import type { Dumped } from './dumped.ts';

export interface Evenings {
  /** In the order of the notes. */
  readonly of: ReadonlyMap<Session, readonly Dumped[]>;
  /** Days without a note, the earliest first. */
  readonly noNote: ReadonlyMap<IsoDate, readonly Dumped[]>;
  readonly timeless: readonly Dumped[];
  /** Before the vehicle arrived, or on a day that is still to come. */
  readonly outside: readonly Dumped[];
}

interface Span {
  readonly arrived: IsoDate;
  readonly today: IsoDate;
  readonly timeZone: string;
}

/** Sorts files by the evening they were taken on, up to four in the night; of several notes of a day the one whose hours it falls into. */
export function eveningsOf(files: readonly Dumped[], sessions: readonly Session[], { arrived, today, timeZone }: Span): Evenings {
  const of = new Map<Session, Dumped[]>();
  const noNote = new Map<IsoDate, Dumped[]>();
  const timeless: Dumped[] = [];
  const outside: Dumped[] = [];
  for (const file of files) {
    if (file.clock === null) {
      timeless.push(file);
      continue;
    }
    const days = daysOf(file.clock);
    const session = days.map((day) => sessionOn(day, file.clock as string, sessions, timeZone)).find((one) => one !== null);
    const [day = ''] = days;
    if (session) add(of, session, file);
    else if (day < arrived || day > today) outside.push(file);
    else add(noNote, day, file);
  }
  const inOrder = new Map(sessions.flatMap((session) => (of.has(session) ? [[session, of.get(session) ?? []] as const] : [])));
  return { of: inOrder, noNote: new Map([...noNote].sort(([a], [b]) => (a < b ? -1 : 1))), timeless, outside };
}

/** The day of the evening; in the small hours that of the day before comes first. */
export function daysOf(clock: string): readonly IsoDate[] {
  return [...new Set([eveningOf(clock), clock.slice(0, 10)])];
}

function sessionOn(day: IsoDate, clock: string, sessions: readonly Session[], timeZone: string): Session | null {
  const that = sessions.filter(({ date }) => date === day);
  const [date = '', time = ''] = clock.split('T');
  const [instant] = instantsOf(date, Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5)), timeZone);
  const worked = ({ hours }: Session) =>
    hours.some(({ span }) => span !== null && instant !== undefined && span.start <= instant && instant <= span.end);
  return that.find(worked) ?? that[0] ?? null;
}

function add<K>(map: Map<K, Dumped[]>, key: K, file: Dumped): void {
  const list = map.get(key);
  if (list) list.push(file);
  else map.set(key, [file]);
}

/**
 * Names for files that come into one folder, none of which is there: `a.jpg`, where that is taken `a-2.jpg`. Names that
 * differ in capitals or in how their letters are stored are one name.
 *
 * @param taken names that the folder has
 */
export function freeNames(files: readonly Dumped[], taken: Iterable<string>): readonly string[] {
  const known = new Set([...taken].map(oneName));
  return files.map(({ name }) => {
    const clean = name.normalize('NFC').replaceAll(/[\p{Cc}\\:*?"<>|#%]/gu, '-');
    const [, stem = clean, ending = ''] = /^(.*?)(\.[^.]*)?$/u.exec(clean) ?? [];
    let free = clean;
    for (let n = 2; known.has(oneName(free)); n += 1) free = `${stem}-${n}${ending}`;
    known.add(oneName(free));
    return free;
  });
}

const oneName = (name: string): string => name.normalize('NFC').toLowerCase();
