/** Where there is no drawing: a strip for each subsystem, a cell for each of its places, filled as a drawing would be. */
import { toHtml } from 'hast-util-to-html';
import type { IsoDate } from '../../../journal/model.ts';
import { placeStateOf } from '../../../journal/registers/place-state.ts';
import { type RegisterRow, registerAt } from '../../../journal/registers/register.ts';
import { html, type Markup } from '../page/html.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';
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

/** In short, more places than this are filled without a link and a name for each: a page would be heavy with them. */
const MOST_NAMED = 400;

/**
 * @param prefix stands before the ids in the markup
 * @param brief in short, beside what the page is about
 */
export function stripsOf(sheet: RecordSheet, at: IsoDate | null, prefix: string, brief = false): readonly Strip[] {
  const all = registerAt(sheet.record, at);
  const named = !brief || all.length <= MOST_NAMED;
  const groups = Map.groupBy(all, ({ subsystem }) => subsystem);
  return [...groups].map(([subsystem, rows], n) => {
    const across = Math.min(rows.length, ROW);
    const down = Math.ceil(rows.length / ROW);
    const of = `${prefix}${n}`;
    const cells = rows.map((row, i): Cell => {
      const state = placeStateOf(row);
      const hatch = hatchName(state.kind, state.origin);
      return {
        row,
        words: state.words,
        kind: `place ${state.kind}${state.undecided ? ' asks' : ''}`,
        paint: hatch === null ? 'none' : `url(#${of}-${hatch})`,
        x: (i % ROW) * CELL + 1,
        y: Math.floor(i / ROW) * CELL + 1,
      };
    });
    const filled = named ? cells.map((cell) => cellOf(sheet, cell)) : filledAlike(cells);
    const name = sheet.subsystemName(subsystem);
    const [width, height] = [across * CELL, down * CELL];
    const hatches = { markup: toHtml(hatchesIn(of, 3), { space: 'svg' }) };
    const { markup } =
      html`<svg viewBox="0 0 ${width} ${height}" width="${width * 1.6}" height="${height * 1.6}" role="group" aria-label="${name}" class="drawn">${hatches}${filled}</svg>`;
    return { name, href: sheet.toSubsystem(subsystem), places: rows.length, markup };
  });
}

interface Cell {
  readonly row: RegisterRow;
  readonly words: string;
  readonly kind: string;
  readonly paint: string;
  readonly x: number;
  readonly y: number;
}

const SIDE = CELL - 2;

function cellOf(sheet: RecordSheet, { row, words, kind, paint, x, y }: Cell): Markup {
  const name = `${sheet.positionName(row.position)}: ${words}`;
  return html`<a href="${sheet.toPosition(row.position)}" class="${kind}"><title>${name}</title><rect x="${x}" y="${y}" width="${SIDE}" height="${SIDE}" fill="${paint}"></rect></a>`;
}

/** All that are in one state as one shape. */
function filledAlike(cells: readonly Cell[]): Markup[] {
  return [...Map.groupBy(cells, ({ kind, paint, words }) => `${kind} ${paint} ${words}`).values()].flatMap((alike) => {
    const [first] = alike;
    if (first === undefined) return [];
    const shape = alike.map(({ x, y }) => `M${x} ${y}h${SIDE}v${SIDE}h-${SIDE}z`).join('');
    return [
      html`<g class="${first.kind}"><title>${counted(alike.length, 'place')}: ${first.words}</title><path d="${shape}" fill="${first.paint}"></path></g>`,
    ];
  });
}
