/** Plots as markup that keeps to the policy of the pages, and the frame and axes of those drawn over time. */
import { axisX, axisY, gridY, type PlotOptions, plot, ruleY } from '@observablehq/plot';
import { parseHTML } from 'linkedom/worker';
import type { IsoDate } from '../../../journal/model.ts';
import { monthOf, monthsFrom } from '../../../journal/values/date.ts';
import type { Figures } from '../page/figures.ts';

/** Widths in px at which letters keep their size: for a page, and for a phone. */
export const CHART_WIDTHS = { page: 760, phone: 350 } as const;
/** The width in px of one drawing of several that stand side by side: the same on a page and on a phone. */
export const SMALL_WIDTH = 230;

/** The frame of a drawing over time, in px. */
export const frame = (width: number) => ({
  width,
  height: width <= SMALL_WIDTH ? 130 : width < 500 ? 220 : 260,
  marginLeft: 52,
  marginRight: 24,
  marginTop: width <= SMALL_WIDTH ? 12 : 26,
  marginBottom: 28,
});

/** How the figures up the side are chosen and written, and where the foot is: five or so whole numbers over nought where nothing else is said. */
export interface SideFigures {
  readonly foot?: number;
  readonly ticks?: number | readonly number[];
  readonly written?: (n: number) => string;
}

/** Figures up the side with a line across each; months along the foot, as many as there is room for. */
export function axes(
  figures: Figures,
  from: IsoDate,
  to: IsoDate,
  width: number,
  { foot = 0, ticks: side = 5, written = figures.whole }: SideFigures = {},
): NonNullable<PlotOptions['marks']> {
  const firsts = monthsFrom(from, to)
    .map((month) => `${month}-01`)
    .filter((day) => day >= from && day <= to);
  const every = Math.ceil(firsts.length / (width / 80));
  const ticks = firsts.filter((_, n) => n % every === 0).map(dayOf);
  return [
    gridY({ ticks: side, className: 'grid' }),
    axisY({ ticks: side, tickSize: 0, label: null, tickFormat: written }),
    axisX({ ticks, tickSize: 4, label: null, tickFormat: (day: Date) => figures.shortMonth(monthOf(day.toISOString())) }),
    ruleY([foot], { className: 'axis' }),
  ];
}

/** Midnight UTC of a date. */
export const dayOf = (date: IsoDate): Date => new Date(`${date}T00:00Z`);

/** What a plot says of its pieces that the page says better: names, for which the label stands, and looks, which the style sheet has. */
const TAKEN_OUT = ['style', 'font-variant', 'aria-label', 'aria-hidden'];

/** The plot as markup, without style of its own. */
export function drawn(label: string, options: PlotOptions): string {
  const { document } = parseHTML('<html></html>');
  const svg = plot({ ...options, document, className: 'plotted' });
  for (const style of svg.querySelectorAll('style')) style.remove();
  for (const piece of svg.querySelectorAll('*')) for (const name of TAKEN_OUT) piece.removeAttribute(name);
  for (const name of ['style', 'width', 'height', 'font-family', 'font-size']) svg.removeAttribute(name);
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', label);
  return svg.outerHTML;
}
