/**
 * The ledger drawn: bars by subsystem, spend against the money budgets, hours by week. Each drawing is SVG
 * without style elements or attributes, coloured by classes, and its label says in words what it shows.
 * What there is nothing to draw of gives null.
 */
import { barX, lineY, rectY, ruleX, ruleY, text } from '@observablehq/plot';
import { subsystemByMonth } from '../../../journal/ledger/by-month.ts';
import { budgetedSpend, type Week } from '../../../journal/ledger/over-time.ts';
import type { LedgerSource } from '../../../journal/ledger/sums.ts';
import type { Minor, Settings } from '../../../journal/model.ts';
import { addDays, lastDayOf } from '../../../journal/values/date.ts';
import { axes, dayOf, drawn, frame } from '../charts/plotted.ts';
import { figuresOf } from '../page/figures.ts';
import { counted } from '../page/words.ts';
import type { Measure } from './account.ts';

/** Of one bar with the words over it, in px. */
const ROW = 38;

/** Horizontal bars, one a subsystem with entries, in declared order: hours, or the job cost, gross. */
export function subsystemBars(books: LedgerSource, measure: Measure, width: number): string | null {
  const figures = figuresOf(books.journal.settings);
  const written = measure === 'minutes' ? figures.time : figures.money;
  const table = subsystemByMonth(books, 'cost', null);
  const bars = table.rows
    .map(({ subsystem, name, total }) => ({ subsystem, name, value: total[measure] }))
    .filter(({ value }) => value !== 0);
  if (bars.length === 0) return null;
  const label = `${measure === 'minutes' ? 'Hours' : 'Job cost'} by subsystem: ${bars.map(({ name, value }) => `${name} ${written(value)}`).join(', ')}.`;
  const values = bars.map(({ value }) => value);
  const over = { y: 'subsystem', dy: -8, fontSize: 14 } as const;
  return drawn(label, {
    width,
    height: bars.length * ROW,
    margin: 0,
    marginLeft: 1,
    x: { axis: null, domain: [Math.min(0, ...values), Math.max(0, ...values)] },
    y: { axis: null, domain: bars.map(({ subsystem }) => subsystem), padding: 0 },
    marks: [
      barX(bars, { x: 'value', y: 'subsystem', insetTop: 22, insetBottom: 6, className: 'mark' }),
      ruleX([0], { className: 'axis' }),
      text(bars, { ...over, text: 'name', frameAnchor: 'left', lineWidth: width / 14 - 2, textOverflow: 'ellipsis' }),
      text(bars, { ...over, text: ({ value }) => written(value), frameAnchor: 'right' }),
    ],
  });
}

/** The running spend as a line that rises by the end of each month, the sum of the budgets across it. */
export function spendLine(books: LedgerSource, width: number): string | null {
  const spend = budgetedSpend(books);
  const [first, last] = [spend?.months[0], spend?.months.at(-1)];
  if (!spend || !first || !last) return null;
  const { settings } = books.journal;
  const figures = figuresOf(settings);
  const whole = (minor: Minor): number => minor / 10 ** settings.currencyDigits;
  const start = `${first.month}-01`;
  const points = [
    [dayOf(start), 0] as const,
    ...spend.months.map(({ month, together }) => [dayOf(lastDayOf(month)), whole(together)] as const),
  ];
  const label =
    `Spend against the money budgets, added up by month from ${figures.month(first.month)} to ${figures.month(last.month)}: ` +
    `${figures.money(last.together)} of ${figures.money(spend.budget)}.`;
  const budget = whole(spend.budget);
  return drawn(label, {
    ...frame(width),
    x: { type: 'utc', domain: [dayOf(start), dayOf(lastDayOf(last.month))] },
    y: { domain: [Math.min(0, ...points.map(([, y]) => y)), Math.max(budget, ...points.map(([, y]) => y))], nice: true },
    marks: [
      ...axes(figures, start, lastDayOf(last.month), width),
      ruleY([budget], { className: 'budget' }),
      text([budget], { y: (y: number) => y, text: () => 'all budgets', frameAnchor: 'left', dx: 4, dy: -11 }),
      lineY(points, { x: '0', y: '1', className: 'line' }),
    ],
  });
}

/** A bar for each of some weeks that follow each other, as high as its hours. */
export function weekBars(settings: Settings, weeks: readonly Week[], width: number): string | null {
  const [first, last] = [weeks[0], weeks.at(-1)];
  if (!first || !last) return null;
  const figures = figuresOf(settings);
  const most = weeks.reduce((a, b) => (b.sum.minutes > a.sum.minutes ? b : a));
  const end = addDays(last.monday, 7);
  const worked = weeks.filter(({ sum }) => sum.minutes > 0);
  const label =
    `Hours by week from ${figures.date(first.monday)} to ${figures.date(addDays(end, -1))}: work in ${counted(worked.length, 'week')} of ${weeks.length}; ` +
    `the most, ${figures.time(most.sum.minutes)}, in the week from ${figures.date(most.monday)}.`;
  const bars = worked.map(({ monday, sum }) => ({ from: dayOf(monday), to: dayOf(addDays(monday, 7)), hours: sum.minutes / 60 }));
  return drawn(label, {
    ...frame(width),
    x: { type: 'utc', domain: [dayOf(first.monday), dayOf(end)] },
    y: { nice: true, zero: true },
    marks: [
      ...axes(figures, first.monday, end, width),
      rectY(bars, { x1: 'from', x2: 'to', y: 'hours', insetRight: width / weeks.length > 5 ? 1 : 0, className: 'mark' }),
    ],
  });
}
