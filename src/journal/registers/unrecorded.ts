import type { IsoDate, Part, PartId, PositionId, SessionId, Whereabouts } from '../model.ts';
import type { Deed, JournalRecord, Moment } from '../record.ts';
import { isHere } from '../replay/words.ts';
import { areMarksTaken, recordingsOf } from './recordings.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { compareMoments, deedsOf, staysOf } from './stays.ts';

/** So many of a part that came off the vehicle or came here, and of which neither marks nor a picture were recorded since. */
export interface Unrecorded {
  readonly part: PartId;
  readonly position: PositionId;
  readonly count: number;
  /** When the last of them came off, or arrived. */
  readonly since: Moment & { readonly how: 'off' | 'arrived' };
  /** When the last of them went on; null for what is off now. */
  readonly backOn: { readonly session: SessionId; readonly date: IsoDate } | null;
}

/** The two lists to work down before the lid closes, each in catalogue order. Some of a lot may be on each. */
export interface UnrecordedLists {
  /** Came off or was found loose, is off now, and still without marks or a picture: there is time. */
  readonly offNow: readonly Unrecorded[];
  /** On the vehicle without either: put back, or fitted for the first time. */
  readonly backOn: readonly Unrecorded[];
}

/** Of a copy that leaves out marks, film or where things were put, nobody can tell from it what was recorded. */
export const tellsRecordings = ({ copy: { leavesOut } }: Pick<JournalRecord, 'copy'>): boolean =>
  !(['marks', 'film', 'stores'] as const).some((kind) => leavesOut.includes(kind));

/** What lacks a record at the end of a day. Marks and pictures count from the session it came off or arrived in. */
export function unrecordedAt(record: RegisterSource, at: At): UnrecordedLists {
  const date = dateOf(record, at);
  const lacking = [...record.journal.parts.values()].flatMap((part) => lackOf(record, part, date));
  return {
    offNow: lacking.filter(({ backOn }) => backOn === null),
    backOn: lacking.filter(({ backOn }) => backOn !== null),
  };
}

/** How many of a part are off the vehicle and on it; how many of those were not recorded since they came off or arrived. */
interface Tally {
  readonly off: number;
  readonly on: number;
  readonly lackingOff: number;
  readonly lackingOn: number;
  readonly came: Unrecorded['since'] | null;
  /** The last deed that put an unrecorded one on, and when that had come off or arrived. */
  readonly fitted: { readonly deed: Deed; readonly came: Unrecorded['since'] } | null;
}

/** What changes a tally: a deed, a day on which the catalogue has some arrive, or a recording. */
interface Step {
  readonly at: Moment;
  readonly deed?: Deed;
  readonly arrived?: number;
}

function lackOf(record: RegisterSource, part: Part, date: IsoDate): readonly Unrecorded[] {
  const order = compareMoments(record);
  const steps: Step[] = [
    ...arrivalsOf(record, part),
    ...deedsOf(record, part.id).map((deed) => ({ at: deed, deed })),
    ...recordingsOf(record, part.id).map((at) => ({ at })),
  ];
  let tally = startOf(record, part);
  for (const step of steps.filter(({ at }) => at.date <= date).sort((a, b) => order(a.at, b.at)))
    tally = after(tally, step, areMarksTaken(part.marks));
  const { lackingOff, lackingOn, came, fitted } = tally;
  const listed = came?.how === 'off' || (part.makesPosition && part.found === 'loose');
  const off = came && listed && lackingOff > 0 ? [rowOf(part, lackingOff, came, null)] : [];
  const on = fitted && lackingOn > 0 ? [rowOf(part, lackingOn, fitted.came, fitted.deed)] : [];
  return [...off, ...on];
}

/** What stood on the vehicle as found; what else the catalogue has here arrives by a step of its own. */
function startOf(record: RegisterSource, part: Part): Tally {
  const first = staysOf(record, part.id).filter(({ from }) => from.session === null);
  const on = first.reduce((total, { where, count }) => (isOn(where) ? total + count : total), 0);
  return { off: 0, on, lackingOff: 0, lackingOn: 0, came: null, fitted: null };
}

/** When the catalogue has some of a part here and off the vehicle. */
function arrivalsOf(record: RegisterSource, part: Part): readonly Step[] {
  const first = staysOf(record, part.id).filter(({ from, where }) => from.session === null && isOff(where));
  return first.map(({ from, count }) => ({ at: from, arrived: count }));
}

/**
 * Of a lot, those that were not recorded are taken to go on first, and to come off again or be gone last.
 *
 * @param marked the catalogue has the marks it arrived with
 */
function after(tally: Tally, { at, deed, arrived = 0 }: Step, marked: boolean): Tally {
  if (arrived > 0) {
    const lackingOff = tally.lackingOff + (marked ? 0 : arrived);
    return { ...tally, off: tally.off + arrived, lackingOff, came: momentOf(at, 'arrived') };
  }
  if (deed === undefined) return { ...tally, lackingOff: 0, lackingOn: 0 };
  const change = (is: (where: Whereabouts) => boolean) => (Number(is(deed.to)) - Number(is(deed.from))) * deed.count;
  const [off, on] = [tally.off + change(isOff), tally.on + change(isOn)];
  const how = deed.did === 'removed' ? 'off' : cameHere(deed) ? 'arrived' : null;
  const came = how === null ? tally.came : momentOf(at, how);
  const went = deed.did === 'fitted' ? Math.min(deed.count, tally.lackingOff) : 0;
  return {
    off,
    on,
    lackingOff: Math.min(off, tally.lackingOff + (how === 'off' || (how === 'arrived' && !marked) ? deed.count : 0) - went),
    lackingOn: Math.min(on, tally.lackingOn + went),
    came,
    fitted: went > 0 && came ? { deed, came } : tally.fitted,
  };
}

/** It was not here, or no longer, and is now. */
function cameHere({ from, to }: Deed): boolean {
  return (!isHere(from) || from.at === 'gone' || from.at === 'missing') && isOff(to);
}

function isOff({ at }: Whereabouts): boolean {
  return at === 'stores' || at === 'bag' || at === 'out';
}

/** In its place, on the vehicle or in a part that is off it. */
function isOn({ at }: Whereabouts): boolean {
  return at === 'fitted' || at === 'in';
}

function momentOf({ session, date }: Moment, how: 'off' | 'arrived'): Unrecorded['since'] {
  return { session, date, how };
}

function rowOf(part: Part, count: number, since: Unrecorded['since'], on: Deed | null): Unrecorded {
  const backOn = on && { session: on.session, date: on.date };
  return { part: part.id, position: on?.position ?? part.position, count, since, backOn };
}
