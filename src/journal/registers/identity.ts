import type { Component, IsoDate, Origin, PartId, PositionId, SessionId } from '../model.ts';
import { originInWords } from '../replay/words.ts';
import { type RegisterRow, registerAt } from './register.ts';
import { type At, dateOf, groupedBy, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** One line of a published points table. */
export interface IdentityLine {
  readonly component: Component;
  /** The line's words. */
  readonly words: string;
  readonly points: number;
  /** Origins that earn the points when all of the component has one of them. */
  readonly origins: readonly Origin[];
  /** The rule says unmodified: work that cut or changed the part is named as a question. */
  readonly unmodified: boolean;
}

/** A published points table, as data: a new one is a new file and no code. */
export interface IdentityTable {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly address: string;
  /** How the source stands: when it was read, and what is not known of it. */
  readonly standing: string;
  readonly caution: string;
  /** Points needed in all. */
  readonly needed: number;
  /** Points that must come from one component. */
  readonly neededFrom: { readonly component: Component; readonly points: number } | null;
  readonly lines: readonly IdentityLine[];
}

/** What a line is answered from: one position that carries the component. */
export interface IdentityGround {
  readonly position: PositionId;
  readonly fitted: readonly { readonly part: PartId; readonly count: number; readonly origin: Origin | null }[];
  readonly empty: number;
  readonly counts: boolean;
  /** Why it does or does not count. */
  readonly words: string;
  /** Sessions that repaired or machined what is fitted; ask whether that is a modification. */
  readonly changed: readonly { readonly session: SessionId; readonly date: IsoDate; readonly did: string }[];
}

export interface IdentityAnswer {
  readonly line: IdentityLine;
  /** `unknown`: no part of the catalogue carries the component. */
  readonly answer: 'yes' | 'no' | 'unknown';
  readonly points: number;
  readonly grounds: readonly IdentityGround[];
}

export interface Identity {
  readonly table: IdentityTable;
  readonly date: IsoDate;
  readonly answers: readonly IdentityAnswer[];
  readonly points: number;
  /** Points from the component that must bring some of its own. */
  readonly pointsFrom: number;
  /** The table's sums are reached. Never a verdict: the licensing authority decides. */
  readonly reached: boolean;
}

/** A points table answered from `component` and origin, at the end of a day. */
export function identityAt(record: RegisterSource, table: IdentityTable, at: At): Identity {
  const date = dateOf(record, at);
  const rows = groupedBy(registerAt(record, at), (row) => record.journal.positions.get(row.position)?.component ?? null);
  const answers = table.lines.map((line) => answerOf(record, line, rows.get(line.component) ?? [], date));
  const points = sumPoints(answers);
  const from = table.neededFrom;
  const pointsFrom = sumPoints(answers.filter(({ line }) => line.component === from?.component));
  return { table, date, answers, points, pointsFrom, reached: points >= table.needed && pointsFrom >= (from?.points ?? 0) };
}

function answerOf(record: RegisterSource, line: IdentityLine, rows: readonly RegisterRow[], date: IsoDate): IdentityAnswer {
  const grounds = rows.map((row) => groundOf(record, line, row, date));
  if (grounds.length === 0) return { line, answer: 'unknown', points: 0, grounds };
  const all = grounds.every(({ counts }) => counts);
  return { line, answer: all ? 'yes' : 'no', points: all ? line.points : 0, grounds };
}

function groundOf(record: RegisterSource, line: IdentityLine, row: RegisterRow, date: IsoDate): IdentityGround {
  const others = row.fitted.filter(({ origin }) => origin === null || !line.origins.includes(origin));
  const counts = row.empty === 0 && others.length === 0;
  return {
    position: row.position,
    fitted: row.fitted.map(({ part, count, origin }) => ({ part, count, origin })),
    empty: row.empty,
    counts,
    words: groundWords(
      row,
      others.map(({ origin }) => originInWords(origin)),
    ),
    changed: line.unmodified ? row.fitted.flatMap(({ part }) => changesOf(record, part, date)) : [],
  };
}

function groundWords(row: RegisterRow, others: readonly string[]): string {
  const off = row.empty === 0 ? [] : [row.empty === row.count ? 'not on the vehicle' : `${row.empty} of ${row.count} not on the vehicle`];
  const words = [...new Set(others), ...off];
  return words.length > 0 ? words.join(', ') : [...new Set(row.fitted.map(({ origin }) => originInWords(origin)))].join(', ');
}

function changesOf(record: RegisterSource, part: PartId, date: IsoDate): IdentityGround['changed'] {
  return deedsOf(record, part)
    .filter((deed) => (deed.did === 'repaired' || deed.did === 'machined') && deed.date <= date)
    .map(({ session, date: day, did }) => ({ session, date: day, did }));
}

function sumPoints(answers: readonly IdentityAnswer[]): number {
  return answers.reduce((sum, { points }) => sum + points, 0);
}
