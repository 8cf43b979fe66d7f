import type { IdentityLine, IdentityNeed, IdentityTable } from '../model/identity-tables/table.ts';
import { IDENTITY_TABLES } from '../model/identity-tables/tables.ts';
import type { IsoDate, Journal, Origin, PartId, PositionId, SessionId } from '../model.ts';
import { originInWords } from '../replay/words.ts';
import { once } from '../values/once.ts';
import { type Occupant, type RegisterRow, registerRowAt } from './register.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';
import { workOf } from './work-done.ts';

/** What a line is answered from: one position that carries the component. */
export interface IdentityGround {
  readonly position: PositionId;
  readonly fitted: readonly { readonly part: PartId; readonly count: number; readonly origin: Origin | null }[];
  readonly empty: number;
  /** Null where nobody knows the origin of what is fitted, and nothing else rules it out. */
  readonly counts: boolean | null;
  /** Why it does or does not count. */
  readonly words: string;
  /** Sessions that repaired or machined what is fitted, or had it back from a firm's work of unstated kind; ask whether that is a modification. */
  readonly changed: readonly { readonly session: SessionId; readonly date: IsoDate; readonly did: string }[];
}

/** One thing a line asks for, and every position that answers it; none: no part of the catalogue carries it. */
export interface IdentityNeedAnswer {
  readonly need: IdentityNeed;
  readonly grounds: readonly IdentityGround[];
}

export interface IdentityAnswer {
  readonly line: IdentityLine;
  /** `unknown`: something the line asks for is carried by no part of the catalogue, or by one of unknown origin. */
  readonly answer: 'yes' | 'no' | 'unknown';
  readonly points: number;
  readonly needs: readonly IdentityNeedAnswer[];
}

export interface Identity {
  readonly table: IdentityTable;
  readonly date: IsoDate;
  readonly answers: readonly IdentityAnswer[];
  readonly points: number;
  /** Points from the line that must bring some of its own. */
  readonly pointsFrom: number;
  /** The table's sums are reached. Never a verdict: the licensing authority decides. */
  readonly reached: boolean;
}

/** Whether there is anything to answer a table from, or somebody has brought one: of a cart nobody asks for an engine. */
export function isIdentityTold({ journal }: Pick<RegisterSource, 'journal'>): boolean {
  return isTold(journal);
}

const isTold = once(({ positions, identityTables }: Journal): boolean => {
  const carried = [...positions.values()].some(({ components }) => components.length > 0);
  return carried || identityTables.some((table) => !IDENTITY_TABLES.includes(table));
});

/** A points table answered from `component` and origin, at the end of a day. */
export function identityAt(record: RegisterSource, table: IdentityTable, at: At): Identity {
  const date = dateOf(record, at);
  const carrying = [...record.journal.positions.values()]
    .filter(({ components }) => components.length > 0)
    .map(({ id }) => registerRowAt(record, id, at));
  const answers = table.lines.map((line) => answerOf(record, line, carrying, date));
  const points = sumPoints(answers);
  const from = table.neededFrom;
  const pointsFrom = sumPoints(answers.filter(({ line }) => line.id === from?.line));
  return { table, date, answers, points, pointsFrom, reached: points >= table.needed && pointsFrom >= (from?.points ?? 0) };
}

function componentsOf(record: RegisterSource, row: RegisterRow): readonly string[] {
  return record.journal.positions.get(row.position)?.components ?? [];
}

function answerOf(record: RegisterSource, line: IdentityLine, rows: readonly RegisterRow[], date: IsoDate): IdentityAnswer {
  const needs = line.needs.map((need) => ({
    need,
    grounds: rows
      .filter((row) => componentsOf(record, row).some((word) => need.components.includes(word)))
      .map((row) => groundOf(record, line, row, date)),
  }));
  const answer = verdictOf(needs);
  return { line, answer, points: answer === 'yes' ? line.points : 0, needs };
}

/** One thing that does not count settles the line, whatever else is not known. */
function verdictOf(needs: readonly IdentityNeedAnswer[]): IdentityAnswer['answer'] {
  if (needs.some(({ grounds }) => grounds.some(({ counts }) => counts === false))) return 'no';
  return needs.every(({ grounds }) => grounds.length > 0 && grounds.every(({ counts }) => counts === true)) ? 'yes' : 'unknown';
}

function groundOf(record: RegisterSource, line: IdentityLine, row: RegisterRow, date: IsoDate): IdentityGround {
  const others = row.fitted.filter(({ origin }) => origin === null || !line.origins.includes(origin));
  const ruledOut = row.empty > 0 || others.some(({ origin }) => origin !== null && origin !== 'unknown');
  return {
    position: row.position,
    fitted: row.fitted.map(({ part, count, origin }) => ({ part, count, origin })),
    empty: row.empty,
    counts: ruledOut ? false : others.length === 0 || null,
    words: groundWords(row, others),
    changed: line.unmodified ? row.fitted.flatMap(({ part }) => changesOf(record, part, date)) : [],
  };
}

/** What does not count and how many of a lot, else the origin of all of it: `1 of 2 donor`. */
function groundWords(row: RegisterRow, others: readonly Occupant[]): string {
  const some = (count: number, words: string) => (count === row.count ? words : `${count} of ${row.count} ${words}`);
  const off = row.empty === 0 ? [] : [some(row.empty, 'not on the vehicle')];
  const words = [...others.map(({ count, origin }) => some(count, originInWords(origin))), ...off];
  return words.length > 0 ? words.join(', ') : [...new Set(row.fitted.map(({ origin }) => originInWords(origin)))].join(', ');
}

function changesOf(record: RegisterSource, part: PartId, date: IsoDate): IdentityGround['changed'] {
  return deedsOf(record, part)
    .map((deed) => ({ ...deed, work: workOf(record, deed) }))
    .filter(({ work, date: day }) => (work === 'repaired' || work === 'worked-on') && day <= date)
    .map(({ session, date: day, did, work }) => ({ session, date: day, did: work === 'worked-on' ? 'worked on' : did }));
}

function sumPoints(answers: readonly IdentityAnswer[]): number {
  return answers.reduce((sum, { points }) => sum + points, 0);
}
