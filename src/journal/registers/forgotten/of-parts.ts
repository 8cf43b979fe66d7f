import type { BillLine, IsoDate, Part, PartId, Place, Session } from '../../model.ts';
import type { Deed, Moment } from '../../record.ts';
import { errandOf } from '../errands.ts';
import { notConfirmedAt } from '../goes-back.ts';
import { isCandidate } from '../in-question.ts';
import { waitingAt } from '../open-items.ts';
import { undecidedAt } from '../pending.ts';
import type { RegisterRow } from '../register.ts';
import { groupedBy, type RegisterSource } from '../source.ts';
import { deedsOf, orderedSessions, whereaboutsAt } from '../stays.ts';
import { unrecordedAt } from '../unrecorded.ts';
import type { Missed } from './forgotten.ts';

/** Parts that came off or here, and of which neither marks nor a picture were recorded. */
export function unrecorded(record: RegisterSource, date: IsoDate): Missed[] {
  const { offNow, backOn } = unrecordedAt(record, date);
  return [...offNow, ...backOn].map(({ part, count, since, backOn: back }) => {
    const came = since.how === 'off' ? 'came off' : 'came here';
    const where = back === null ? 'off now' : 'on the vehicle now';
    const some = count > 1 ? `${count} of them ` : '';
    const lacks = `${some}${came} without marks or a picture; ${where}`;
    return {
      about: { part },
      lacks,
      at: since,
      place: placeOfDeed(record, part, since),
      write: 'marks: …',
    };
  });
}

/** Where a part was touched on an evening; the catalogue has it where no note does. */
function placeOfDeed(record: RegisterSource, part: PartId, { session }: Moment): Place {
  const deed = deedsOf(record, part).find((one) => one.session === session);
  return deed?.entry.place ?? (record.journal.parts.get(part) as Part).place;
}

/** Parts that went back with a way back written down, and nobody said whether it is as it was. */
export function notConfirmed(record: RegisterSource, date: IsoDate): Missed[] {
  return notConfirmedAt(record, date).map(({ part, fitted }) => ({
    about: { part },
    lacks: 'went back, and nobody said whether as it was',
    at: fitted,
    place: fitted.entry.place,
    write: 'as-was: yes',
  }));
}

/** Decisions that say no reason. */
export function withoutReason(record: RegisterSource, date: IsoDate): Missed[] {
  const decisions = orderedSessions(record).flatMap((session) => (session.date <= date ? session.decisions : []));
  return decisions
    .filter(({ because }) => because === null || because.trim() === '')
    .map(({ part, verdict, date: day, session, place }) => ({
      about: { part },
      lacks: `was decided on (${verdict}), and nobody said why`,
      at: { date: day, session },
      place,
      write: 'because: …',
    }));
}

/** Positions with a candidate and no verdict. One that was put off by a decision is not forgotten, nor what a decision has used up. */
export function candidatesUndecided(record: RegisterSource, date: IsoDate): Missed[] {
  return undecidedAt(record, date).flatMap(({ row, deferred }) => {
    const parts = record.journal.positions.get(row.position)?.parts ?? [];
    const candidates = parts.filter(
      (part) => part !== row.position && isCandidate(record, part, date) && unspokenFor(record, row, part) > 0,
    );
    const [first] = candidates;
    if (deferred.length > 0 || first === undefined) return [];
    const names = candidates.map((part) => record.journal.parts.get(part)?.name ?? part);
    const last = lastDeed(record, parts, date);
    return [
      {
        about: { part: row.position },
        lacks: lacksVerdict(row, names.join('; ')),
        at: last ?? { date: record.journal.settings.arrived, session: null },
        place: last?.entry.place ?? (record.journal.parts.get(first) as Part).place,
        write: `- { part: ${row.position}, verdict: replace, with: ${first}${ofHowMany(record, row, first)}, because: … }`,
      },
    ];
  });
}

/** How many of a candidate no decision in force puts to use. */
function unspokenFor(record: RegisterSource, { inForce }: RegisterRow, candidate: PartId): number {
  const spoken = inForce.reduce((sum, { decision, count }) => (decision.with === candidate ? sum + count : sum), 0);
  return (record.journal.parts.get(candidate)?.count ?? 1) - spoken;
}

/** Of a position that takes several, how many the candidate may replace where that is not all: `, count: 1`. */
function ofHowMany(record: RegisterSource, row: RegisterRow, candidate: PartId): string {
  const many = Math.min(row.undecided, unspokenFor(record, row, candidate));
  if (many >= row.count) return '';
  return record.journal.parts.get(row.position)?.numbered ? ', which: […]' : `, count: ${many}`;
}

/** `has a candidate (Spare drum) and no verdict`; of a lot on some of which there is one, of how many there is none. */
function lacksVerdict({ undecided, count }: Pick<RegisterRow, 'undecided' | 'count'>, candidates: string): string {
  if (undecided >= count) return `has a candidate (${candidates}) and no verdict`;
  return `has a candidate (${candidates}), and on ${undecided} of ${count} no verdict`;
}

/** Parts that a bill brings, of which no note says that they came. What was given back, and what others still owe, is not forgotten. */
export function boughtAndNotHere(record: RegisterSource, date: IsoDate): Missed[] {
  const waited = new Set(waitingAt(record, date).map(({ on }) => on?.part));
  const lines = orderedSessions(record).flatMap((session) => (session.date <= date ? linesOfParts(session) : []));
  return [...groupedBy(lines, ({ part }) => part)].flatMap(([part, bought]) => {
    const { session, line } = bought.findLast((one) => one.line.refund === null) ?? (bought[0] as LineOfPart);
    if (waited.has(part) || isGivenBack(bought) || !isOnlyThoughtOf(record, part, date)) return [];
    return [
      {
        about: { part },
        lacks: `was bought (${line.what}), and no note says that it came here`,
        at: { date: session.date, session: session.id },
        place: line.place,
        write: `- { part: ${part}, did: acquired, to: … }`,
      },
    ];
  });
}

interface LineOfPart {
  readonly part: PartId;
  readonly line: BillLine;
  readonly session: Session;
}

function linesOfParts(session: Session): LineOfPart[] {
  const lines = session.bills.flatMap((bill) => bill.lines).filter(({ as }) => as === 'part');
  return lines.flatMap((line) => line.charges.flatMap(({ charge: { part } }) => (part === null ? [] : [{ part, line, session }])));
}

/** As much money came back as went out. */
function isGivenBack(bought: readonly LineOfPart[]): boolean {
  const paid = bought.reduce((sum, { line }) => sum + line.gross, 0);
  return paid <= 0 && bought.some(({ line }) => line.refund !== null);
}

function isOnlyThoughtOf(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  return whereaboutsAt(record, part, date).every(({ where }) => where.at === 'considered');
}

function lastDeed(record: RegisterSource, parts: readonly PartId[], date: IsoDate): Deed | undefined {
  const deeds = parts.flatMap((part) => deedsOf(record, part).filter((deed) => deed.date <= date));
  return deeds.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)).at(-1);
}

/** What others promised for a day that has passed: open items, and parts that are out. */
export function pastDue(record: RegisterSource, date: IsoDate): Missed[] {
  const waiting = waitingAt(record, date).filter(({ promised }) => promised !== null && promised < date);
  const told = new Set(waiting.map(({ on }) => on?.part ?? null));
  const items = waiting.map(({ id, from, promised, opened }) => ({
    about: { item: id },
    lacks: `${from === null ? 'was promised' : `was promised by ${from}`} for ${promised}, which is past`,
    at: opened,
    place: record.history.items.get(id)?.opening.place as Place,
    write: `closes: [{ id: ${id}, how: … }]`,
  }));
  const out = [...record.journal.parts.keys()].flatMap((part) => {
    const errand = told.has(part) ? null : errandOf(record, part, date);
    if (!errand?.overdue) return [];
    const lacks = `is out with ${errand.firm}, due back on ${errand.due}, which is past`;
    const write = `- { part: ${part}, did: returned, to: … }`;
    return [{ about: { part }, lacks, at: errand.since, place: placeOfDeed(record, part, errand.since), write }];
  });
  return [...items, ...out];
}
