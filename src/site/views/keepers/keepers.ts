/** In whose keeping the vehicle stood, in words, and what went along or stayed when it passed on. */
import type { IsoDate, PassedHow, PersonId, SessionId } from '../../../journal/model.ts';
import { type HandOver, handOversOf, keepingsAt } from '../../../journal/registers/keepers.ts';
import { type OffVehicle, offVehicleAt } from '../../../journal/registers/stores.ts';
import { keeperInWords } from '../../../journal/registers/where-now.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { listed } from '../page/words.ts';

const PASSED_WORDS: Readonly<Record<PassedHow, string>> = {
  sold: 'sold to',
  given: 'given to',
  returned: 'returned to',
  lent: 'lent to',
};

/** Who has or had it; a copy without names numbers its keepers. */
export function keeperName({ record }: RecordSheet, keeper: PersonId | null): string {
  return keeperInWords(record, keeper);
}

/** One keeping as a list tells it. */
export interface KeepingLine {
  readonly who: string;
  readonly from: IsoDate;
  /** Null: still. */
  readonly to: IsoDate | null;
  /** How it came to him, `sold to Edda Pym, at Hand-over`; null for the first. */
  readonly how: string | null;
  readonly session: SessionId | null;
}

/** Every keeping up to a day, oldest first; none where the journal says nothing of keepers. */
export function keepingLines(sheet: RecordSheet, at: IsoDate | null = null): readonly KeepingLine[] {
  const all = keepingsAt(sheet.record, at);
  if (all.length === 1 && all[0]?.keeper == null) return [];
  return all.map(({ keeper, from, by }, n) => ({
    who: keeperName(sheet, keeper),
    from,
    to: all[n + 1]?.from ?? null,
    how: by === null ? null : passedWords(sheet, by),
    session: by?.session.id ?? null,
  }));
}

/** `In the keeping of Edda Pym since 3 May 2031.`; '' where the journal says nothing of keepers. */
export function keepingWords(sheet: RecordSheet, at: IsoDate | null = null): string {
  const last = keepingLines(sheet, at).at(-1);
  return last === undefined ? '' : `In the keeping of ${last.who} since ${sheet.date(last.from)}.`;
}

const KEEPING = shown('keeping', (sheet, at: IsoDate) => keepingWords(sheet, at));

export const KEEPER_QUESTIONS: readonly AnyQuestion[] = [KEEPING];

/** The same of a past day, for a page that is kept. */
export const keepingOn = (sheet: Sheet, at: IsoDate): string => sheet.ask(KEEPING, at);

function passedWords(sheet: RecordSheet, { entry, milestones }: HandOver): string {
  const at = milestones.length === 0 ? '' : `, at ${listed(milestones.map((id) => sheet.milestoneName(id)))}`;
  return `${PASSED_WORDS[entry.how]} ${keeperName(sheet, entry.to)}${at}`;
}

/** A hand-over as the page of its session, the book and the sheets tell it. */
export interface HandOverTold {
  /** `The vehicle was sold to Edda Pym by Ruth Haskell-Dray, at Hand-over.` */
  readonly words: string;
  /** Of the vehicle itself; null where none is told. */
  readonly price: string | null;
  /** What goes along and is no part. */
  readonly with: readonly string[];
  readonly note: string | null;
  /** Things off the vehicle that went along, and those that stayed. */
  readonly goes: readonly OffVehicle[];
  readonly stays: readonly OffVehicle[];
  /** With whom they stayed. */
  readonly stayedWith: string;
}

export function handOversTold(sheet: RecordSheet, session: SessionId): readonly HandOverTold[] {
  return handOversOf(sheet.record, session).map((handOver) => {
    const { entry, from } = handOver;
    const off = offVehicleAt(sheet.record, handOver.session.date).filter(({ where }) => where.at !== 'gone' && where.at !== 'missing');
    return {
      words: `The vehicle was ${passedWords(sheet, handOver)}, by ${keeperName(sheet, from)}.`,
      price: entry.price === null || !sheet.figures.hasMoney ? null : sheet.figures.money(entry.price),
      with: entry.with,
      note: entry.note,
      goes: off.filter(({ stayed }) => stayed === null),
      stays: off.filter(({ stayed }) => stayed?.since === handOver.session.date),
      stayedWith: keeperName(sheet, from),
    };
  });
}

/** What stayed with others, by whom; in the order in which they are met. */
export function stayedBehind(
  sheet: RecordSheet,
): readonly { readonly who: string; readonly anchor: string; readonly things: readonly OffVehicle[] }[] {
  const stayed = offVehicleAt(sheet.record, null).filter((one) => one.stayed !== null);
  return [...Map.groupBy(stayed, (one) => one.stayed?.keeper ?? null)].map(([keeper, things]) => ({
    who: keeperName(sheet, keeper),
    anchor: `stayed-with-${keeper ?? 'somebody'}`,
    things,
  }));
}
