/** The state of each position in a line, for whoever meets its name in a text: what came of it, what stands there, since when and in what condition. */
import type { Position, PositionId } from '../../../journal/model.ts';
import { type RegisterRow, registerAt } from '../../../journal/registers/register.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';
import { manyOf, presentOf } from '../position/present.ts';
import { placeNowWords } from '../stores/where.ts';

/** What of a position is told: its name, and its state. */
export type StateLine = readonly [name: string, state: string];

/** By position, as they stand on the record's day. */
export function stateLines(sheet: RecordSheet): ReadonlyMap<PositionId, StateLine> {
  const rows = registerAt(sheet.record, null);
  return new Map(rows.map((row) => [row.position, [sheet.positionName(row.position), stateOf(sheet, row)]]));
}

function stateOf(sheet: RecordSheet, row: RegisterRow): string {
  const position = sheet.record.journal.positions.get(row.position);
  const parts = [capital(row.outcome.words), position ? standing(sheet, position, row) : '', away(sheet, row)].filter(
    (words) => words !== '',
  );
  return `${parts.join('. ')}.`;
}

function standing(sheet: RecordSheet, position: Position, row: RegisterRow): string {
  const { fitted } = presentOf(sheet, { position, now: row });
  if (fitted.length === 0) return 'Nothing is on the vehicle there';
  const standing = fitted.map(({ many, origin, since, on, condition }) => {
    const inPlace = since.session === null ? 'since it was found' : `since ${sheet.figures.shortDate(since.date)}`;
    const from = on === null ? inPlace : `in its place ${inPlace} and ${on.words} since ${sheet.figures.shortDate(on.date)}`;
    return `${fitted.length > 1 || row.empty > 0 ? many : ''}${origin}, ${from}${condition}`;
  });
  return `On the vehicle: ${standing.join('. ')}`;
}

/** Where originals are that do not stand there. */
function away(sheet: RecordSheet, row: RegisterRow): string {
  const off = row.originals.filter(({ where }) => where.at !== 'fitted' || where.position !== row.position);
  const [first] = off;
  if (first === undefined) return '';
  if (first.count === row.count)
    return `${row.count === 1 ? 'The original' : 'The originals'} ${placeNowWords(sheet, first.where, first.stayed)}`;
  return `Of the originals ${off.map(({ where, count, stayed }) => `${manyOf(row.count, count)}${placeNowWords(sheet, where, stayed)}`).join(', ')}`;
}
