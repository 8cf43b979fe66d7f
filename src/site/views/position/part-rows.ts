import type { PartId, Position } from '../../../journal/model.ts';
import { whereaboutsAt } from '../../../journal/registers/stays.ts';
import { html, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { ORIGIN_WORDS } from '../page/words.ts';
import { spotOf } from '../stores/where.ts';

/** The parts of some positions as rows: name, origin, where each is, its marks. */
export function partRows(sheet: Sheet, positions: readonly Position[]): string {
  return positions.flatMap((position) => position.parts.map((id) => rowOf(sheet, id, position)?.markup ?? '')).join('');
}

function rowOf(sheet: Sheet, id: PartId, position: Position): Markup | null {
  const part = sheet.record.journal.parts.get(id);
  if (!part) return null;
  const own = id === position.id;
  const href = own ? sheet.toPosition(id) : sheet.toPart(id);
  const many = part.count > 1 && html` <span class="nowrap">×\u00a0${part.count}</span>`;
  const origin = part.origin === null ? 'not known' : ORIGIN_WORDS[part.origin];
  return html`<tr><th scope="row" class="${own ? 'own' : 'candidate'}"><a href="${href}">${part.name}</a>${many}</th><td>${origin}</td><td>${places(sheet, id, position)}</td><td${part.marks !== null && html` data-label="Marks"`}>${part.marks}</td></tr>`;
}

function places(sheet: Sheet, id: PartId, position: Position): Markup[] {
  const of = sheet.record.journal.parts.get(id)?.count ?? 1;
  return whereaboutsAt(sheet.record, id, sheet.record.day).map(({ where, count }, n) => {
    const some = count < of && `${count} of ${of} `;
    const home = where.at === 'fitted' && where.position === position.id;
    if (home) return html`${n > 0 && '; '}${some}on the vehicle`;
    const spot = spotOf(sheet, where);
    return html`${n > 0 && '; '}${some}${spot.before}${spot.href === null ? spot.name : html`<a href="${spot.href}">${spot.name}</a>`}`;
  });
}
