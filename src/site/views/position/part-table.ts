import type { Part, PartId, Position } from '../../../journal/model.ts';
import { marksOf } from '../../../journal/registers/observations.ts';
import { originAt } from '../../../journal/registers/origins.ts';
import { html } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { ORIGIN_WORDS } from '../page/words.ts';
import { placeLinks, placesNow } from '../stores/where.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** The parts of a subsystem: name, origin, where each is, its marks. Candidates stand under their position. */
export function partTable(sheet: RecordSheet, positions: readonly Position[], label: string): SetTable {
  const { parts } = sheet.record.journal;
  const own = ({ id, position }: Part): boolean => id === position;
  return setTable<Part>({
    label,
    set: 'schedule parts',
    columns: [
      {
        head: 'Part',
        names: true,
        set: 'part',
        look: (part) => (own(part) ? 'own' : 'candidate'),
        cell: (part) =>
          html`${linked(part.name, own(part) ? sheet.toPosition(part.id) : sheet.toPart(part.id))}${part.count > 1 && html` <span class="nowrap">×\u00a0${part.count}</span>`}`,
      },
      { head: 'Origin', set: 'origin', bare: true, cell: ({ id }) => originNow(sheet, id) },
      {
        head: 'Where it is',
        set: 'where',
        bare: true,
        cell: ({ id }) => placeLinks(sheet, id, placesNow(sheet, id), '; '),
      },
      !sheet.copy.leavesOut.includes('marks') && { head: 'Marks', cell: ({ id }) => marksOf(sheet.record, id).join('; ') },
    ],
    groups: rows(positions.flatMap((position) => position.parts.flatMap((id) => parts.get(id) ?? []))),
  });
}

/** What is believed of it by the record's day. */
function originNow({ record }: RecordSheet, part: PartId): string {
  const origin = originAt(record, part, record.day);
  return origin === null ? 'not known' : ORIGIN_WORDS[origin];
}
