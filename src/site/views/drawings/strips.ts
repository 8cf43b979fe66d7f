/** Where there is no drawing: a strip for each subsystem, a cell for each of its places, filled as a drawing would be. */
import { toHtml } from 'hast-util-to-html';
import type { IsoDate } from '../../../journal/model.ts';
import { placeStateOf } from '../../../journal/registers/place-state.ts';
import { registerAt } from '../../../journal/registers/register.ts';
import { html } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { hatchesIn, hatchName } from './hatches.ts';

export interface Strip {
  readonly name: string;
  readonly href: string;
  readonly places: number;
  /** An `<svg>`. */
  readonly markup: string;
}

const CELL = 12;
const ROW = 40;

/** @param prefix stands before the ids in the markup */
export function stripsOf(sheet: Sheet, at: IsoDate | null, prefix: string): readonly Strip[] {
  const groups = Map.groupBy(registerAt(sheet.record, at), ({ subsystem }) => subsystem);
  return [...groups].map(([subsystem, rows], n) => {
    const across = Math.min(rows.length, ROW);
    const down = Math.ceil(rows.length / ROW);
    const of = `${prefix}${n}`;
    const cells = rows.map((row, i) => {
      const state = placeStateOf(row);
      const hatch = hatchName(state.kind, state.origin);
      const paint = hatch === null ? 'none' : `url(#${of}-${hatch})`;
      const [x, y] = [(i % ROW) * CELL + 1, Math.floor(i / ROW) * CELL + 1];
      const name = `${sheet.positionName(row.position)}: ${state.words}`;
      const kind = `place ${state.kind}${state.undecided ? ' asks' : ''}`;
      return html`<a href="${sheet.toPosition(row.position)}" class="${kind}"><title>${name}</title><rect x="${x}" y="${y}" width="${CELL - 2}" height="${CELL - 2}" fill="${paint}"></rect></a>`;
    });
    const name = sheet.subsystemName(subsystem);
    const [width, height] = [across * CELL, down * CELL];
    const hatches = { markup: toHtml(hatchesIn(of, 3), { space: 'svg' }) };
    const { markup } =
      html`<svg viewBox="0 0 ${width} ${height}" width="${width * 1.6}" height="${height * 1.6}" role="group" aria-label="${name}" class="drawn">${hatches}${cells}</svg>`;
    return { name, href: sheet.toSubsystem(subsystem), places: rows.length, markup };
  });
}
