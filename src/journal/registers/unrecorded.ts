import type { IsoDate, Part, PartId, PositionId, SessionId, Whereabouts } from '../model.ts';
import type { Deed } from '../record.ts';
import { recordingsOf } from './recordings.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { compareMoments, deedsOf, staysOf } from './stays.ts';

/** So many of a part that came off the vehicle, and of which neither marks nor a picture were recorded since. */
export interface Unrecorded {
  readonly part: PartId;
  readonly position: PositionId;
  readonly count: number;
  /** When the last of them came off. */
  readonly off: { readonly session: SessionId; readonly date: IsoDate };
  /** When the last of them went back on; null for what is off now. */
  readonly backOn: { readonly session: SessionId; readonly date: IsoDate } | null;
}

/** The two lists to work down before the lid closes, each in catalogue order. Some of a lot may be on each. */
export interface UnrecordedLists {
  /** Off now, and still without marks or a picture: there is time. */
  readonly offNow: readonly Unrecorded[];
  /** Back on the vehicle without either. */
  readonly backOn: readonly Unrecorded[];
}

/** What lacks a record at the end of a day. Marks and pictures count from the session it came off in. */
export function unrecordedAt(record: RegisterSource, at: At): UnrecordedLists {
  const date = dateOf(record, at);
  const lacking = [...record.journal.parts.values()].flatMap((part) => lackOf(record, part, date));
  return {
    offNow: lacking.filter(({ backOn }) => backOn === null),
    backOn: lacking.filter(({ backOn }) => backOn !== null),
  };
}

/** How many of a part are off the vehicle and on it; how many of those came off and were not recorded since. */
interface Tally {
  readonly off: number;
  readonly on: number;
  readonly lackingOff: number;
  readonly lackingOn: number;
  readonly removed: Deed | null;
  /** The last deed that put an unrecorded one back, and when that had come off. */
  readonly refitted: { readonly deed: Deed; readonly removed: Deed } | null;
}

function lackOf(record: RegisterSource, part: Part, date: IsoDate): readonly Unrecorded[] {
  const order = compareMoments(record);
  const steps = [
    ...deedsOf(record, part.id).map((deed) => ({ at: deed, deed })),
    ...recordingsOf(record, part.id).map((at) => ({ at, deed: null })),
  ]
    .filter(({ at }) => at.date <= date)
    .sort((a, b) => order(a.at, b.at));
  let tally = startOf(record, part);
  for (const { deed } of steps) tally = deed === null ? { ...tally, lackingOff: 0, lackingOn: 0 } : after(tally, deed);
  const { lackingOff, lackingOn, removed, refitted } = tally;
  const off = removed && lackingOff > 0 ? [rowOf(part.id, lackingOff, removed, null)] : [];
  const back = refitted && lackingOn > 0 ? [rowOf(part.id, lackingOn, refitted.removed, refitted.deed)] : [];
  return [...off, ...back];
}

function startOf(record: RegisterSource, part: Part): Tally {
  const first = staysOf(record, part.id).filter(({ from }) => from.session === null);
  const sum = (is: (where: Whereabouts) => boolean) => first.reduce((total, { where, count }) => (is(where) ? total + count : total), 0);
  return { off: sum(isOff), on: sum(isOn), lackingOff: 0, lackingOn: 0, removed: null, refitted: null };
}

/** Of a lot, those that were not recorded are taken to go back first, and to come off again or be gone last. */
function after(tally: Tally, deed: Deed): Tally {
  const change = (is: (where: Whereabouts) => boolean) => (Number(is(deed.to)) - Number(is(deed.from))) * deed.count;
  const [off, on] = [tally.off + change(isOff), tally.on + change(isOn)];
  const removed = deed.did === 'removed' ? deed : tally.removed;
  const cameOff = deed.did === 'removed' ? deed.count : 0;
  const wentBack = deed.did === 'fitted' ? Math.min(deed.count, tally.lackingOff) : 0;
  return {
    off,
    on,
    lackingOff: Math.min(off, tally.lackingOff + cameOff - wentBack),
    lackingOn: Math.min(on, tally.lackingOn + wentBack),
    removed,
    refitted: wentBack > 0 && removed ? { deed, removed } : tally.refitted,
  };
}

function isOff({ at }: Whereabouts): boolean {
  return at === 'stores' || at === 'bag' || at === 'out';
}

function isOn({ at }: Whereabouts): boolean {
  return at === 'fitted';
}

function rowOf(part: PartId, count: number, off: Deed, back: Deed | null): Unrecorded {
  const when = ({ session, date }: Deed) => ({ session, date });
  return { part, position: off.position, count, off: when(off), backOn: back && when(back) };
}
