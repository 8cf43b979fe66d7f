/** The state of each position in a line, for whoever meets its name in a text: what came of it, what stands there and since when. */
import type { PositionId } from '../../../journal/model.ts';
import { type RegisterRow, registerAt } from '../../../journal/registers/register.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { capital, ORIGIN_WORDS } from '../page/words.ts';
import { manyOf } from '../position/present.ts';
import { placeWords } from '../stores/where.ts';

/** What of a position is told: its name, and its state. */
export type StateLine = readonly [name: string, state: string];

/** By position, as they stand on the record's day. */
export function stateLines(sheet: RecordSheet): ReadonlyMap<PositionId, StateLine> {
  return new Map(registerAt(sheet.record, null).map((row) => [row.position, [sheet.positionName(row.position), stateOf(sheet, row)]]));
}

function stateOf(sheet: RecordSheet, row: RegisterRow): string {
  const parts = [capital(row.outcome.words), standing(row), away(sheet, row)].filter((words) => words !== '');
  return `${parts.join('. ')}.`;
}

function standing(row: RegisterRow): string {
  if (row.fitted.length === 0) return 'Nothing is on the vehicle there';
  const fitted = row.fitted.map(({ count, origin }) => {
    const many = row.fitted.length > 1 || count < row.count ? manyOf(row.count, count) : '';
    return `${many}${origin === null ? 'origin not known' : ORIGIN_WORDS[origin]}`;
  });
  return `On the vehicle: ${fitted.join(', ')}`;
}

/** Where originals are that do not stand there. */
function away(sheet: RecordSheet, row: RegisterRow): string {
  const off = row.originals.filter(({ where }) => where.at !== 'fitted' || where.position !== row.position);
  const [first] = off;
  if (first === undefined) return '';
  if (first.count === row.count) return `${row.count === 1 ? 'The original' : 'The originals'} ${placeWords(sheet, first.where)}`;
  return `Of the originals ${off.map(({ where, count }) => `${manyOf(row.count, count)}${placeWords(sheet, where)}`).join(', ')}`;
}
