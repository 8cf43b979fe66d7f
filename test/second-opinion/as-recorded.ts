/** The public views of a record, worded as the second opinion words its own. */
import type { IsoDate, PartId } from '../../src/journal/model.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { bagsAt } from '../../src/journal/registers/bags.ts';
import { type Gate, gatesAt, type ItemRow, itemsAt } from '../../src/journal/registers/open-items.ts';
import { type RegisterRow, registerAt } from '../../src/journal/registers/register.ts';
import { whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { offVehicleAt } from '../../src/journal/registers/stores.ts';
import { countsAsText, whereAsText } from './opinion.ts';

/** Every line of a day, in order. */
export function asRecorded(record: JournalRecord, date: IsoDate): readonly string[] {
  return [
    ...[...record.journal.parts.keys()].map((id) => `part ${id}: ${partAsText(record, id, date)}`),
    ...registerAt(record, date).map(positionAsText),
    ...bagsAt(record, date)
      .flatMap((row) => [row, ...row.earlier])
      .map(({ bag, filled, emptied, parts, held }) => {
        const now = countsAsText(parts.map(({ part, count }) => [part, count]));
        const ever = [...new Set(held.map(({ part }) => part))].sort();
        return `bag ${bag}: filled ${filled.session}, emptied ${emptied?.session ?? 'no'}, now ${now}, held ${ever}`;
      }),
    ...itemsAt(record, date).map(
      ({ id, opened, due, closed }) => `item ${id}: opened ${opened.session}, due ${due}, closed ${closed?.session ?? 'no'}`,
    ),
    ...gatesAt(record, date).map(gateAsText),
  ].sort();
}

/** What the list of all that is off the vehicle has of a part, and what its whereabouts have. */
export function offAsText(record: JournalRecord, date: IsoDate): { readonly listed: string; readonly known: string } {
  const listed = offVehicleAt(record, date).map(({ part, count, where }) => [`${part} ${whereAsText(where)}`, count] as const);
  const known = [...record.journal.parts.keys()].flatMap((id) =>
    whereaboutsAt(record, id, date)
      .filter(({ where }) => !['fitted', 'not-yet', 'considered'].includes(where.at))
      .map(({ where, count }) => [`${id} ${whereAsText(where)}`, count] as const),
  );
  return { listed: countsAsText(listed), known: countsAsText(known) };
}

function partAsText(record: JournalRecord, id: PartId, date: IsoDate): string {
  const { numbered = null, count: whole = 1 } = record.journal.parts.get(id) ?? {};
  const texts = whereaboutsAt(record, id, date).map(({ where, count, which, since }) => {
    const more = numbered !== null ? ` (${which})` : whole === 1 ? ` since ${since.date} ${since.session}` : '';
    return `${count} ${whereAsText(where)}${more}`;
  });
  return texts.sort().join('; ');
}

function positionAsText({ position, outcome, undecided, fitted, seated }: RegisterRow): string {
  const [on, off] = [fitted, seated].map((those) => countsAsText(those.map(({ part, count }) => [part, count])));
  return `position ${position}: ${outcome.kind}, ${undecided} undecided, on ${on}, in what is off ${off}`;
}

function gateAsText({ milestone, reached, items, temporary, earlier, mayPass }: Gate): string {
  const [holds, undo, before] = [items, temporary, earlier].map((rows: readonly ItemRow[]) => rows.map(({ id }) => id).sort());
  return `milestone ${milestone.id}: reached ${reached?.session ?? 'no'}, holds ${holds}, temporary ${undo}, earlier ${before}, passes ${mayPass}`;
}
