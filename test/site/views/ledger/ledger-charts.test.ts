import { describe, expect, test } from 'vitest';
import { budgets } from '../../../../src/journal/ledger/budgets.ts';
import { ledgerAt } from '../../../../src/journal/ledger/ledger-at.ts';
import { budgetedSpend, hoursByWeek } from '../../../../src/journal/ledger/over-time.ts';
import { spendLine, subsystemBars, weekBars } from '../../../../src/site/views/ledger/ledger-charts.ts';
import { recordOf } from '../../../arbitraries/compiled.ts';
import { keepsToThePages, readDrawing } from '../charts/drawing.ts';

const FILES = {
  'journal.yaml': `title: Van
vehicle: { make: Quernby }
arrived: 2030-09-14
currency: GBP
time-zone: Europe/London
locale: en-GB
people: { rh: { name: Ruth, rate: 10.00 } }
subsystems:
  brakes: { name: 'Brakes <front> & "rear"', budget: { money: 100.00 } }
  frame: { name: Frame, budget: { money: 60.00 } }
  trim: { name: Trim }
stores: [shelf]
`,
  'parts/brakes.yaml': '- { id: drum, name: Drum, origin: original }\n',
};

/** An evening: minutes worked and pence paid on a subsystem. */
function evening(date: string, on: string, minutes: number, pounds: number): Record<string, string> {
  const bought = `bought:\n  - { what: Thing, as: part, for: ${on}, cost: ${pounds.toFixed(2)}, tax: exempt }\n`;
  return {
    [`sessions/${date}.md`]: `---\ndate: ${date}\ntitle: Evening\nhours:\n  - { by: rh, on: ${on}, time: ${minutes}m }\n${bought}---\n`,
  };
}

const EMPTY = recordOf(FILES);
// 2030-10-01 is a Tuesday, 2030-12-02 the Monday nine weeks after its week began.
const WORKED = recordOf({
  ...FILES,
  ...evening('2030-10-01', 'brakes', 240, 30),
  ...evening('2030-10-02', 'trim', 60, 99),
  ...evening('2030-12-02', 'frame', 120, 20),
});

const CHARTS = {
  hours: subsystemBars(WORKED, 'minutes', 760),
  cost: subsystemBars(WORKED, 'gross', 350),
  spend: spendLine(WORKED, 760),
  weeks: weekBars(WORKED.journal.settings, hoursByWeek(WORKED, null), 350),
};

const bars = (svg: string | null, side: 'width' | 'height'): number[] =>
  [...readDrawing(svg).querySelectorAll('.mark rect')].map((bar) => Number(bar.getAttribute(side)));
const shares = (lengths: readonly number[]): number[] => lengths.map((length) => length / Math.max(...lengths));

describe.each(Object.entries(CHARTS))('the drawing of %s', (_, svg) => {
  keepsToThePages(svg);
});

test('bars are as long as the sums they stand for', () => {
  const rounded = (of: readonly number[]): string[] => shares(of).map((share) => share.toFixed(6));
  expect(rounded(bars(CHARTS.hours, 'width'))).toEqual(rounded([240, 120, 60]));
  // Labour at £10 an hour, and the bill: 40 + 30, 20 + 20, 10 + 99.
  expect(rounded(bars(CHARTS.cost, 'width'))).toEqual(rounded([70, 40, 109]));
  // All from one foot, a px from the edge; the longest fills the width.
  const feet = [...readDrawing(CHARTS.cost).querySelectorAll('.mark rect')].map((bar) => bar.getAttribute('x'));
  expect([feet, Math.max(...bars(CHARTS.cost, 'width'))]).toEqual([['1', '1', '1'], 349]);
});

test('weeks stand at their place in time, and are as high as their hours', () => {
  expect(shares(bars(CHARTS.weeks, 'height')).map((share) => share.toFixed(6))).toEqual(['1.000000', '0.400000']);
  const [first = NaN, second = NaN] = [...readDrawing(CHARTS.weeks).querySelectorAll('.mark rect')].map((bar) =>
    Number(bar.getAttribute('x')),
  );
  // Ten weeks across 350 less the margins, 52 and 24.
  expect(second - first).toBeCloseTo((9 / 10) * (350 - 52 - 24), 6);
  expect(CHARTS.weeks).toContain('work in 2 weeks of 10; the most, 5 h, in the week from 30 September 2030.');
});

test('spend is what the budgets count, months without a bill included', () => {
  const spend = budgetedSpend(WORKED);
  expect(spend?.budget).toBe(16_000);
  expect(spend?.months.map(({ month, together }) => [month, together])).toEqual([
    ['2030-10', 3000],
    ['2030-11', 3000],
    ['2030-12', 5000],
  ]);
  const used = budgets(WORKED.journal, ledgerAt(WORKED, WORKED.day)).map(({ money }) => money?.used ?? 0);
  expect(spend?.months.at(-1)?.together).toBe(used.reduce((sum, each) => sum + each));
  expect(CHARTS.spend).toContain('£50.00 of £160.00');
});

test('the line ends at its share of the height of the budgets', () => {
  const drawing = readDrawing(CHARTS.spend);
  const heights = (drawing.querySelector('.line path')?.getAttribute('d') ?? '').match(/,[\d.]+/g)?.map((y) => Number(y.slice(1))) ?? [];
  const budget = Number(drawing.querySelector('.budget line')?.getAttribute('y1'));
  const [foot = NaN, end = NaN] = [heights[0], heights.at(-1)];
  expect((foot - end) / (foot - budget)).toBeCloseTo(50 / 160, 2);
});

test('a name is text, whatever is in it', () => {
  const names = [...readDrawing(CHARTS.hours).querySelectorAll('text')].map((each) => each.textContent);
  expect(names).toContain('Brakes <front> & "rear"');
  expect(readDrawing(CHARTS.hours).querySelector('svg')?.getAttribute('aria-label')).toContain('Brakes <front> & "rear" 4 h');
  expect(readDrawing(CHARTS.hours).querySelector('front')).toBeNull();
});

test('an empty ledger is not drawn', () => {
  expect([
    subsystemBars(EMPTY, 'minutes', 760),
    subsystemBars(EMPTY, 'gross', 760),
    spendLine(EMPTY, 760),
    weekBars(EMPTY.journal.settings, hoursByWeek(EMPTY, null), 760),
  ]).toEqual([null, null, null, null]);
});
