import type { ConsumableId, IsoDate, Method, MethodResult, SessionId } from '../model.ts';
import { compareText } from '../values/text-order.ts';
import { type At, dateOf, groupedBy, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** One trial of a method, with the session it was made in. */
export interface MethodTrial {
  readonly method: Method;
  readonly session: SessionId;
  readonly date: IsoDate;
}

/** Trials gathered under one name, newest first, and what came of them. */
export interface MethodGroup {
  /** As first written; null for trials that name no material. */
  readonly name: string | null;
  readonly trials: readonly MethodTrial[];
  readonly results: Readonly<Record<MethodResult | 'unsaid', number>>;
}

export interface MethodsIndex {
  /** By what was done, in order of name; capitals and spaces make no difference. */
  readonly byMethod: readonly MethodGroup[];
  /** By material, in order of name; what names none comes last. */
  readonly byMaterial: readonly MethodGroup[];
  /** By what was used up, in order of id. */
  readonly byConsumable: readonly { readonly consumable: ConsumableId; readonly group: MethodGroup }[];
}

/** What was tried up to the end of a day, gathered so that what worked is found again. */
export function methodsIndex(record: RegisterSource, at: At = null): MethodsIndex {
  const date = dateOf(record, at);
  const trials = orderedSessions(record)
    .filter((session) => session.date <= date)
    .flatMap(({ id, date: day, methods }) => methods.map((method) => ({ method, session: id, date: day })));
  const using = trials.flatMap((trial) => trial.method.with.map((consumable) => ({ consumable, trial })));
  const byConsumable = [...groupedBy(using, ({ consumable }) => consumable)].map(([consumable, uses]) => ({
    consumable,
    group: groupOf(
      consumable,
      uses.map(({ trial }) => trial),
    ),
  }));
  return {
    byMethod: named(trials, ({ how }) => how),
    byMaterial: named(trials, ({ material }) => material),
    byConsumable: byConsumable.sort((a, b) => compareText(a.consumable, b.consumable)),
  };
}

function named(trials: readonly MethodTrial[], nameOf: (method: Method) => string | null): readonly MethodGroup[] {
  const groups = [...groupedBy(trials, ({ method }) => keyOf(nameOf(method)))];
  groups.sort(([a], [b]) => (a === null ? 1 : b === null ? -1 : compareText(a, b)));
  return groups.map(([, group]) => groupOf(group[0] ? nameOf(group[0].method) : null, group));
}

function groupOf(name: string | null, trials: readonly MethodTrial[]): MethodGroup {
  const results = { good: 0, fair: 0, poor: 0, unsaid: 0 };
  for (const { method } of trials) results[method.result ?? 'unsaid'] += 1;
  return { name, trials: [...trials].reverse(), results };
}

function keyOf(name: string | null): string | null {
  return name === null ? null : name.trim().replace(/\s+/g, ' ').toLowerCase();
}
