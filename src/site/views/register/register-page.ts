/** The register: now, and as it stood at the end of a past day. */
import type { IsoDate, SubsystemId } from '../../../journal/model.ts';
import { stillToDoAt } from '../../../journal/registers/at-milestone.ts';
import { type Changes, changesBetween } from '../../../journal/registers/changes.ts';
import type { Mismatch } from '../../../journal/registers/mismatch.ts';
import { type Originality, originalityAsFound, originalityAt, originalitySeries } from '../../../journal/registers/originality.ts';
import { type AgedPending, neverCarriedOut, type Undecided, undecidedAt } from '../../../journal/registers/pending.ts';
import { type RegisterRow, registerAt } from '../../../journal/registers/register.ts';
import { type OffVehicle, originalsOffAt } from '../../../journal/registers/stores.ts';
import { once } from '../../../journal/values/once.ts';
import { type AnyQuestion, lookup } from '../../kept/question.ts';
import { shownThen } from '../../kept/shown-then.ts';
import type { SiteRecord } from '../../record.ts';
import { shownDates } from '../frame/shown-dates.ts';
import { stillToDoWords } from '../items/still-to-do.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';

export interface RegisterPage {
  readonly rows: readonly RegisterRow[];
  readonly originality: Originality;
  readonly found: Originality;
  readonly outOfStep: OutOfStep;
  /** Originals that are not on the vehicle. */
  readonly off: readonly OffVehicle[];
}

/** What is out of step: what stands against a decision, what was decided and not done, what nobody decided on. */
export interface OutOfStep {
  readonly mismatches: readonly Mismatch[];
  readonly pending: readonly AgedPending[];
  readonly undecided: ReadonlyMap<SubsystemId, readonly Undecided[]>;
}

export function registerPage({ record }: RecordSheet): RegisterPage {
  const rows = registerAt(record, null);
  return {
    rows,
    originality: originalityAt(record, null),
    found: originalityAsFound(record),
    outOfStep: {
      mismatches: rows.flatMap(({ mismatches }) => mismatches),
      pending: neverCarriedOut(record, null),
      undecided: Map.groupBy(undecidedAt(record, null), ({ row }) => row.subsystem),
    },
    off: originalsOffAt(record, null),
  };
}

/** A day on which the register is shown, with the days before and after it; null at the ends. */
export interface RegisterDay {
  readonly date: IsoDate;
  /** Names of what was reached that day. */
  readonly milestones: readonly string[];
  readonly before: IsoDate | null;
  readonly after: IsoDate | null;
  readonly originality: Originality;
}

/** Every day on which the register is shown, oldest first; their originality is worked out in one pass. */
export function registerDays(record: SiteRecord): RegisterDay[] {
  const dates = shownDates(record);
  const shares = originalitySeries(
    record,
    dates.map(({ date }) => date),
  );
  return dates.flatMap(({ date, milestones }, n) => {
    const originality = shares[n];
    const names = milestones.map(({ name }) => name);
    return originality
      ? [{ date, milestones: names, before: dates[n - 1]?.date ?? null, after: dates[n + 1]?.date ?? null, originality }]
      : [];
  });
}

/** The days before and after a shown one, as they are by now, and what was reached. */
const DAY = lookup('shown day', ({ record }, date: IsoDate) => {
  const dates = shownDates(record);
  const n = dates.findIndex((one) => one.date === date);
  const milestones = (dates[n]?.milestones ?? []).map(({ name }) => name);
  return { milestones, before: dates[n - 1]?.date ?? null, after: dates[n + 1]?.date ?? null };
});

/** The register as it stood at the end of a shown day. */
const THEN = shownThen('register then', (sheet, date: IsoDate, before: IsoDate | null) => ({
  ...registerThen(sheet, date, before),
  originality: originalityOn(sheet.record, date),
  stillToDo: stillToDoWords(stillToDoAt(sheet.record, date)),
}));

export const REGISTER_QUESTIONS: readonly AnyQuestion[] = [DAY, THEN];

export const shownDay = (sheet: Sheet, date: IsoDate) => sheet.ask(DAY, date);

export const registerOfDay = (sheet: Sheet, date: IsoDate, before: IsoDate | null) => sheet.ask(THEN, date, before);

/** Worked out for all shown days in one pass. */
function originalityOn(record: SiteRecord, date: IsoDate): Originality {
  return byDay(record).get(date) ?? originalityAt(record, date);
}

const byDay = once((record: SiteRecord) => new Map(registerDays(record).map((one) => [one.date, one.originality])));

export interface RegisterThen {
  readonly rows: readonly RegisterRow[];
  /** Since the view before, or since the vehicle arrived. */
  readonly changes: Changes;
  readonly since: IsoDate;
}

export function registerThen({ record }: RecordSheet, date: IsoDate, before: IsoDate | null): RegisterThen {
  const since = before ?? record.journal.settings.arrived;
  return { rows: registerAt(record, date), changes: changesBetween(record, since, date), since };
}
