import type { IsoDate, Part, PartId, PositionId, SessionId, Whereabouts } from '../model.ts';
import type { Deed, JournalRecord, Moment, Stay } from '../record.ts';
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
  /** Came off, was found loose, or came back, is off now, and still without marks or a picture: there is time. */
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

type How = Unrecorded['since']['how'];
const HOWS: readonly How[] = ['off', 'arrived'];

/** Of those that were not recorded, how many came off the vehicle, and how many came here. */
type Lacking = Readonly<Record<How, number>>;

/** How many of a part are off the vehicle and on it; how many of those were not recorded since they came off or arrived. */
interface Tally {
  readonly off: number;
  readonly on: number;
  readonly lackingOff: Lacking;
  readonly lackingOn: Lacking;
  /** When the last came off, and when the last arrived. */
  readonly came: Readonly<Record<How, Unrecorded['since'] | null>>;
  /** The last deed that put an unrecorded one on, and when that had come off or arrived. */
  readonly fitted: Readonly<Record<How, { readonly deed: Deed; readonly came: Unrecorded['since'] } | null>>;
}

/** What changes a tally: a deed, a day on which the catalogue has some arrive, or a recording. */
interface Step {
  readonly at: Moment;
  readonly deed?: Deed;
  readonly arrived?: number;
}

/** Of a numbered lot each is told by itself, and those of the same days together. */
function lackOf(record: RegisterSource, part: Part, date: IsoDate): readonly Unrecorded[] {
  if (part.numbered === null) return lackAmong(record, part, null, date);
  const each = Array.from({ length: part.count }, (_, n) => lackAmong(record, part, n + 1, date)).flat();
  const alike = Map.groupBy(each, ({ since, backOn, position }) => JSON.stringify([since, backOn, position]));
  return [...alike.values()].flatMap((some) => some.slice(0, 1).map((one) => ({ ...one, count: some.length })));
}

/** @param number one of a numbered lot; null for all that are only counted */
function lackAmong(record: RegisterSource, part: Part, number: number | null, date: IsoDate): readonly Unrecorded[] {
  const order = compareMoments(record);
  const concerns = ({ which }: { readonly which: readonly number[] | null }) => number === null || which === null || which.includes(number);
  const own = <T extends Stay | Deed>(one: T): T => (number === null ? one : { ...one, count: 1 });
  const first = staysOf(record, part.id)
    .filter((stay) => stay.from.session === null && concerns(stay))
    .map(own);
  const deeds = deedsOf(record, part.id).filter(concerns).map(own);
  const steps: Step[] = [
    ...arrivalsOf(first),
    ...deeds.map((deed) => ({ at: deed, deed })),
    ...recordingsOf(record, part.id)
      .filter(concerns)
      .map((at) => ({ at })),
  ];
  let tally = startOf(first);
  for (const step of steps.filter(({ at }) => at.date <= date).sort((a, b) => order(a.at, b.at)))
    tally = after(tally, step, areMarksTaken(part.marks));
  return [...offRows(part, tally), ...onRows(part, tally)];
}

/** A candidate that came is not awaited on the vehicle; what has a place of its own there, and was loose, lost or missing, is. */
function offRows(part: Part, { lackingOff, came }: Tally): readonly Unrecorded[] {
  return HOWS.flatMap((how) => {
    const since = came[how];
    const listed = how === 'off' || part.makesPosition;
    return since && listed && lackingOff[how] > 0 ? [rowOf(part, lackingOff[how], since, null)] : [];
  });
}

function onRows(part: Part, { lackingOn, fitted }: Tally): readonly Unrecorded[] {
  return HOWS.flatMap((how) => {
    const last = fitted[how];
    return last && lackingOn[how] > 0 ? [rowOf(part, lackingOn[how], last.came, last.deed)] : [];
  });
}

/** What stood on the vehicle as found; what else the catalogue has here arrives by a step of its own. */
function startOf(first: readonly Stay[]): Tally {
  const on = first.reduce((total, { where, count }) => (isOn(where) ? total + count : total), 0);
  return { off: 0, on, lackingOff: NONE, lackingOn: NONE, came: NEVER, fitted: NEVER };
}

/** When the catalogue has some of a part here and off the vehicle. */
function arrivalsOf(first: readonly Stay[]): readonly Step[] {
  return first.flatMap(({ from, where, count }) => (isOff(where) ? [{ at: from, arrived: count }] : []));
}

/**
 * Of a lot, those that were not recorded are taken to go on first, and to come off again or be gone last; of these the
 * ones that came off the vehicle before the ones that arrived.
 *
 * @param marked the catalogue has the marks it arrived with
 */
function after(tally: Tally, { at, deed, arrived = 0 }: Step, marked: boolean): Tally {
  if (arrived > 0) {
    const lackingOff = plus(tally.lackingOff, 'arrived', marked ? 0 : arrived);
    return { ...tally, off: tally.off + arrived, lackingOff, came: { ...tally.came, arrived: momentOf(at, 'arrived') } };
  }
  if (deed === undefined) return { ...tally, lackingOff: NONE, lackingOn: NONE };
  const change = (is: (where: Whereabouts) => boolean) => (Number(is(deed.to)) - Number(is(deed.from))) * deed.count;
  const [off, on] = [tally.off + change(isOff), tally.on + change(isOn)];
  const how = deed.did === 'removed' ? 'off' : cameHere(deed) ? 'arrived' : null;
  const came = how === null ? tally.came : { ...tally.came, [how]: momentOf(at, how) };
  const went = deed.did === 'fitted' ? atMost(deed.count, tally.lackingOff) : NONE;
  const left = { off: tally.lackingOff.off - went.off, arrived: tally.lackingOff.arrived - went.arrived };
  const more = how === 'off' || (how === 'arrived' && !marked) ? plus(left, how, deed.count) : left;
  return {
    off,
    on,
    lackingOff: atMost(off, more),
    lackingOn: atMost(on, { off: tally.lackingOn.off + went.off, arrived: tally.lackingOn.arrived + went.arrived }),
    came,
    fitted: { off: lastOn(tally, 'off', went, deed, came), arrived: lastOn(tally, 'arrived', went, deed, came) },
  };
}

function lastOn({ fitted }: Tally, how: How, went: Lacking, deed: Deed, came: Tally['came']): Tally['fitted'][How] {
  const since = came[how];
  return went[how] > 0 && since ? { deed, came: since } : fitted[how];
}

const NONE: Lacking = { off: 0, arrived: 0 };
const NEVER: Readonly<Record<How, null>> = { off: null, arrived: null };

const plus = (lacking: Lacking, how: How, count: number): Lacking => ({ ...lacking, [how]: lacking[how] + count });

/** So many of them at most, first those that came off. */
function atMost(many: number, { off, arrived }: Lacking): Lacking {
  const first = Math.min(many, off);
  return { off: first, arrived: Math.min(arrived, many - first) };
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

function momentOf({ session, date }: Moment, how: How): Unrecorded['since'] {
  return { session, date, how };
}

function rowOf(part: Part, count: number, since: Unrecorded['since'], on: Deed | null): Unrecorded {
  const backOn = on && { session: on.session, date: on.date };
  return { part: part.id, position: on?.position ?? part.position, count, since, backOn };
}
