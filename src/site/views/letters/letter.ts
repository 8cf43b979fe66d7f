/** The month's letter to the client: what was done, what it took, what is next, what is wanted. The page and the printed letter say the same. */
import { budgets } from '../../../journal/ledger/budgets.ts';
import { ledgerAt, ledgerSeries } from '../../../journal/ledger/ledger-at.ts';
import { totalsOf } from '../../../journal/ledger/totals.ts';
import type { IsoDate, Journal, PositionId, Session, SubsystemId, Whereabouts } from '../../../journal/model.ts';
import type { JournalRecord, Ledger } from '../../../journal/record.ts';
import { cameShortAt } from '../../../journal/registers/came-short.ts';
import { isCandidate } from '../../../journal/registers/in-question.ts';
import { stayedWith } from '../../../journal/registers/keepers.ts';
import { gatesAt, openItemsAt, questionsAt } from '../../../journal/registers/open-items.ts';
import { undecidedAt } from '../../../journal/registers/pending.ts';
import type { RegisterRow } from '../../../journal/registers/register.ts';
import { whereaboutsAt } from '../../../journal/registers/stays.ts';
import { lastDayOf, monthOf } from '../../../journal/values/date.ts';
import { once } from '../../../journal/values/once.ts';
import { type AnyQuestion, lookup, shown } from '../../kept/question.ts';
import { recordUpTo } from '../../kept/up-to.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted, leavesHoursOut, listedNames, sentence } from '../page/words.ts';
import { leadPicture } from '../pictures/pictures.ts';
import { eveningTold } from '../session/session-facts.ts';
import { shortWords } from '../stores/short-words.ts';

/** An evening as a letter tells it. */
export interface LetterEvening {
  readonly session: Session;
  readonly words: string;
  readonly picture: ReturnType<typeof leadPicture>;
}

export interface Letter {
  /** `2031-03` */
  readonly month: string;
  /** The day that it stands on: the last of the month, or the record's where that is earlier. */
  readonly day: IsoDate;
  /** What it spans, in a line. */
  readonly line: string;
  readonly evenings: readonly LetterEvening[];
  /** What the month took: names and figures. */
  readonly took: readonly (readonly [name: string, figure: string])[];
  /** What is left of budgets that there are: of which subsystem, in hours, in money; '' where there is none of the kind. */
  readonly left: readonly { readonly subsystem: SubsystemId; readonly name: string; readonly hours: string; readonly money: string }[];
  /** What comes next: before which milestone, null where none is still to come. */
  readonly next: { readonly before: string | null; readonly what: readonly string[] };
  /** What somebody has to decide, a sentence each. */
  readonly wanted: readonly string[];
  /** What firms sent back short and still owe. */
  readonly short: readonly string[];
}

/** The months of which there is a letter, the newest first: those with notes. */
export const letterMonths = ({ journal }: Pick<JournalRecord, 'journal'>): readonly string[] => [...sessionsByMonth(journal).keys()];

const sessionsByMonth = once(
  ({ sessions }: Pick<Journal, 'sessions'>): ReadonlyMap<string, readonly Session[]> =>
    new Map([...Map.groupBy(sessions, ({ date }) => monthOf(date))].sort(([a], [b]) => (a < b ? 1 : -1))),
);

/** The months with letters before and after one, as they are by now. */
const BESIDE = lookup('letters beside', ({ record }, month: string) => {
  const months = letterMonths(record);
  const n = months.indexOf(month);
  return { before: months[n + 1] ?? null, after: months[n - 1] ?? null };
});

/** A letter of the past follows from the notes of then, but for what its evenings call by name. */
const LETTER = shown(
  'letter',
  (sheet, month: string) => letterOf(sheet, month),
  (sheet, month) => {
    const { record } = sheet;
    const end = lastDayOf(month);
    return end < record.day ? [recordUpTo(record, end), eveningsOf(sheet, sessionsByMonth(record.journal).get(month) ?? [])] : null;
  },
);

export const LETTER_QUESTIONS: readonly AnyQuestion[] = [BESIDE, LETTER];

export const lettersBeside = (sheet: Sheet, month: string) => sheet.ask(BESIDE, month);

export const letterOfMonth = (sheet: Sheet, month: string): Letter => sheet.ask(LETTER, month);

/** A letter is a sheet: of many evenings each is told in fewer words, and not each is shown. */
const ROOM_FOR_WORDS = 2800;
const MOST_WORDS = 420;
const FEWEST_WORDS = 120;
const MOST_PICTURES = 6;

/** @param month `2031-03`; one without notes says so. A letter stands as it stood at the end of its month, whenever it is printed */
export function letterOf(sheet: RecordSheet, month: string): Letter {
  const { record } = sheet;
  const day = dayOfLetter(record, month);
  const sessions = sessionsByMonth(record.journal).get(month) ?? [];
  return {
    month,
    day,
    line: sessions.length === 0 ? 'Nothing was written down that month' : spanWords(sheet, sessions),
    evenings: eveningsOf(sheet, sessions),
    took: took(sheet, month),
    left: left(sheet, day),
    next: next(sheet, day),
    wanted: wanted(sheet, day),
    short: cameShortAt(record, day).map((short) => sentence(`${sheet.partName(short.part)}: ${shortWords(sheet, short)}`)),
  };
}

function dayOfLetter(record: JournalRecord, month: string): IsoDate {
  const end = lastDayOf(month);
  const isPast = end < record.day;
  return isPast ? end : record.day;
}

/** `7 sessions, 31 h 20 min` */
function spanWords({ figures }: RecordSheet, sessions: readonly Session[]): string {
  const minutes = sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0);
  return [counted(sessions.length, 'session'), ...(minutes === 0 ? [] : [figures.time(minutes)])].join(', ');
}

function eveningsOf(sheet: RecordSheet, sessions: readonly Session[]): readonly LetterEvening[] {
  const most = Math.max(FEWEST_WORDS, Math.min(MOST_WORDS, Math.floor(ROOM_FOR_WORDS / Math.max(1, sessions.length))));
  let shown = 0;
  return sessions.map((session) => {
    const picture = shown < MOST_PICTURES ? leadPicture(sheet, session) : null;
    if (picture !== null) shown += 1;
    return { session, words: eveningTold(sheet, session, most), picture };
  });
}

function took({ record, figures, copy }: RecordSheet, month: string): Letter['took'] {
  const { minutes, cost, paid } = totalsOf(entriesByMonth(record.ledger).get(month) ?? []);
  const time = minutes === 0 ? [] : [['Time', figures.time(minutes)] as const];
  if (!figures.hasMoney || (cost === 0 && paid === 0)) return time;
  return [
    ...time,
    [leavesHoursOut(copy) ? 'Cost of the month, labour left out' : 'Cost of the month', figures.money(cost)],
    ['Paid out', figures.money(paid)],
  ];
}

const entriesByMonth = once(({ entries }: Ledger) => Map.groupBy(entries, ({ date }) => monthOf(date)));

/** The books at the end of every month with a letter, worked out in one pass; of the last, on the record's day. */
const booksByDay = once((record: JournalRecord) => {
  const days = letterMonths(record).map((month) => dayOfLetter(record, month));
  return new Map(ledgerSeries(record, days.reverse()).map((at) => [at.date, at]));
});

function left({ record, figures }: RecordSheet, day: IsoDate): Letter['left'] {
  return budgets(record.journal, booksByDay(record).get(day) ?? ledgerAt(record, day)).flatMap(({ subsystem, hours, money }) =>
    hours === null && money === null
      ? []
      : [
          {
            subsystem: subsystem.id,
            name: subsystem.name,
            hours: hours === null ? '' : figures.hours(hours.left),
            money: money === null ? '' : figures.amount(money.left),
          },
        ],
  );
}

function next({ record }: RecordSheet, day: IsoDate): Letter['next'] {
  const gate = gatesAt(record, day).find(({ reached }) => reached === null) ?? null;
  const items = gate === null ? openItemsAt(record, day) : [...gate.items, ...gate.temporary];
  return { before: gate?.milestone.name ?? null, what: items.map(({ what }) => sentence(what)) };
}

/** Questions, and every place that asks for a decision as the drawings have it: a line for each subsystem. */
function wanted(sheet: RecordSheet, day: IsoDate): readonly string[] {
  const { record } = sheet;
  const open = undecidedAt(record, day).map(({ row }) => row);
  const bySubsystem = Map.groupBy(open, ({ subsystem }) => subsystem);
  return [
    ...questionsAt(record, day).map(({ what }) => sentence(what)),
    ...[...bySubsystem].map(([id, places]) => `${record.journal.subsystems.get(id)?.name ?? id}: ${placesWords(sheet, places, day)}.`),
  ];
}

/** So many places are named in one line. */
const NAMED = 2;

/** `what becomes of the hub, the drum and 3 more`, those with a candidate first */
function placesWords({ record, positionName }: RecordSheet, places: readonly RegisterRow[], day: IsoDate): string {
  const byChoice = Map.groupBy(places, ({ position }) => hasAnother(record, position, day));
  const sorted = [
    ...(byChoice.get(true) ?? []).map(({ position }) => `${positionName(position)} (there is another)`),
    ...(byChoice.get(false) ?? []).map(({ position }) => positionName(position)),
  ];
  const named = sorted.length <= NAMED + 1 ? sorted : [...sorted.slice(0, NAMED), `${sorted.length - NAMED} more places`];
  return listedNames(named);
}

/** Of what was here that day, with whoever kept the vehicle, and could stand at a place there is more than one, and not all of it stands there. */
function hasAnother(record: JournalRecord, position: PositionId, day: IsoDate): boolean {
  const belonging = record.journal.positions.get(position)?.parts ?? [];
  if (belonging.length < 2) return false;
  const parts = belonging.filter((part) => isCandidate(record, part, day));
  const standings = parts.map((part) =>
    whereaboutsAt(record, part, day).flatMap(({ where }) => (stayedWith(record, part, where, day) === null ? [where.at] : [])),
  );
  const here = standings.filter((some) => some.some((at) => TO_HAND.has(at) || IN_PLACE.has(at)));
  return here.length > 1 && here.flat().some((at) => TO_HAND.has(at));
}

const TO_HAND: ReadonlySet<Whereabouts['at']> = new Set(['stores', 'bag', 'out']);
const IN_PLACE: ReadonlySet<Whereabouts['at']> = new Set(['fitted', 'in']);

/** The list of letters by year, each with what it spans; the newest first. */
export function letterLines(
  sheet: RecordSheet,
): readonly (readonly [year: string, letters: readonly { readonly month: string; readonly line: string }[]])[] {
  const bySessions = sessionsByMonth(sheet.record.journal);
  const lines = letterMonths(sheet.record).map((month) => ({ month, line: spanWords(sheet, bySessions.get(month) ?? []) }));
  return [...Map.groupBy(lines, ({ month }) => month.slice(0, 4))];
}
