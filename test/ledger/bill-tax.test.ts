/** Bills as their papers have them: whose tax carriage bears, and how sellers round. */
import { describe, expect, test } from 'vitest';
import { sumOf } from '../../src/journal/ledger/sums.ts';
import { taxStandings } from '../../src/journal/ledger/tax-standing.ts';
import { journal } from './small-journal.ts';

/** What a bill of these fields comes to, in pence: its tax, its total, and which way it was reckoned. */
function billOf(fields: string) {
  const { record, problems, hints } = journal(['2031-03-12', `bills: [{ ${fields} }]`]);
  const [bill] = record.ledger.bills;
  const all = bill ? [...bill.lines, ...bill.rounding] : [];
  const sum = (figure: 'net' | 'tax' | 'gross') => all.reduce((so, one) => so + one[figure], 0);
  return { problems, hints, tax: sum('tax'), gross: sum('gross'), way: bill?.way ?? null, record };
}
const line = (cost: string, more = '') => `{ what: Pipe, as: part, for: frame, cost: ${cost}${more} }`;

describe('carriage and discount', () => {
  // EN 16931-1, rules BR-S-08 and BR-CO-17: charges and allowances of a document stand in a category of tax of their own.
  test('carry their own tax beside a line that bears none', () => {
    const { tax, gross, problems } = billOf(`tax: 20% on top, carriage: 10.00, total: 112.00, lines: [${line('100.00', ', tax: 0%')}]`);
    expect([problems, tax, gross]).toEqual([[], 200, 11_200]);
  });

  test('carry it beside lines of which one is exempt', () => {
    const { tax, gross, problems } = billOf(
      `tax: 20% on top, carriage: 10.00, total: 232.00, lines: [${line('100.00')}, ${line('100.00', ', tax: exempt')}]`,
    );
    expect([problems, tax, gross]).toEqual([[], 2200, 23_200]);
  });

  test('bear no tax where none is said of them', () => {
    const { tax, gross } = billOf(`carriage: 10.00, lines: [${line('100.00', ', tax: 20% on top')}]`);
    expect([tax, gross]).toEqual([2000, 13_000]);
  });

  test('that stand to tax otherwise than their line are entries of their own', () => {
    const { record } = billOf(`tax: 20% on top, carriage: 10.00, lines: [${line('100.00', ', tax: 0%')}]`);
    expect(record.ledger.entries.map(({ what, net, tax, standing, taxRate }) => [what, net, tax, standing, taxRate?.toFraction()])).toEqual(
      [
        ['Pipe', 10_000, 0, 'rated', '0'],
        ['Pipe: its carriage', 1000, 200, 'rated', '1/5'],
      ],
    );
  });
});

describe('the total of a paper is taken', () => {
  // 3 × 10.33 at 20 % bear 2.066 each. Sources of the ways: values/tax-ways.ts.
  const lines = [1, 2, 3].map(() => line('10.33')).join(', ');
  test.each([
    ['37.20', 'line'],
    ['37.19', 'rate'],
    ['37.17', 'line-cut'],
    ['37.18', 'rate-cut'],
  ])('%s, tax reckoned by %s', (total, tax) => {
    const made = billOf(`tax: 20% on top, total: ${total}, lines: [${lines}]`);
    expect([made.problems, made.way]).toEqual([[], { tax, sharedFirst: false }]);
    expect((made.gross / 100).toFixed(2)).toBe(total);
  });
  test('and no other is', () => {
    for (const total of ['37.16', '37.21'])
      expect(billOf(`tax: 20% on top, total: ${total}, lines: [${lines}]`).problems[0]).toMatch(/^A806/);
  });

  test('and what its tax comes to beyond that of each line is an entry of its own, at the rate', () => {
    const { record } = billOf(`tax: 20% on top, total: 37.19, lines: [${lines}]`);
    expect(
      record.ledger.entries.map(({ id, kind, net, tax, gross, taxRate }) => [id, kind, net, tax, gross, taxRate?.toFraction()]),
    ).toEqual([
      ['2031-03-12-0#bill-1-1', 'part', 1033, 207, 1240, '1/5'],
      ['2031-03-12-0#bill-1-2', 'part', 1033, 207, 1240, '1/5'],
      ['2031-03-12-0#bill-1-3', 'part', 1033, 207, 1240, '1/5'],
      ['2031-03-12-0#bill-1-rounding', 'fee', 0, -1, -1, '1/5'],
    ]);
  });

  test('of taxed and exempt lines with a discount, whether it bears the tax of the bill or of the lines', () => {
    const mixed = `discount: 15.00, lines: [${line('100.00', ', tax: 20% on top')}, ${line('50.00', ', tax: exempt')}]`;
    // 15.00 at 20 %: 120 + 50 − 18. Untaxed: 120 + 50 − 15. Shared first, 10.00 and 5.00: 90 × 1.2 + 45.
    const totals = [`tax: 20% on top, total: 152.00, ${mixed}`, `total: 155.00, ${mixed}`, `total: 153.00, ${mixed}`].map((each) =>
      billOf(each),
    );
    expect(totals.map(({ problems }) => problems)).toEqual([[], [], []]);
    expect(totals.map(({ tax }) => tax)).toEqual([1700, 2000, 1800]);
    expect(totals.map(({ way }) => way?.sharedFirst)).toEqual([false, false, true]);
  });

  test('of a credit note whose lines round as a whole', () => {
    const back = [1, 2, 3].map(() => line('-10.33', ', refund: wrong bore')).join(', ');
    const { problems, gross, tax } = billOf(`tax: 20% on top, total: -37.19, lines: [${back}]`);
    expect([problems, gross, tax]).toEqual([[], -3719, -620]);
  });

  // EN 16931-1, rules BR-CO-10 to BR-CO-17 (read in the published validation artefacts): lines are rounded each, the tax of
  // each category is reckoned on its sum with allowances and charges, and rounded once.
  test('reckoned as EN 16931 sums a document of two rates with an allowance and a charge', () => {
    // At 20 %: 25.37 + 25.38 − 3.33 + 7.77 = 55.19, tax 11.04. At 5 %: 25.04, tax 1.25. Net 80.23 and 12.29.
    const right = billOf(
      `tax: 20% on top, discount: 3.33, carriage: 7.77, total: 92.52, lines: [${line('25.37')}, ${line('25.38')}, ${line('25.04', ', tax: 5% on top')}]`,
    );
    expect([right.problems, right.tax, right.gross, right.way]).toEqual([[], 1229, 9252, { tax: 'rate', sharedFirst: false }]);
  });
});

describe('the rounding of a paper', () => {
  const entriesOf = ({ record }: ReturnType<typeof billOf>) =>
    record.ledger.entries.map(({ id, subsystem, net, tax, gross }) => [id, subsystem, net, tax, gross]);

  // EN 16931-1, rule BR-CO-16: due for payment (BT-115) = total with tax (BT-112) − paid before + rounding amount (BT-114), which is
  // in no category of tax. A worked figure of UBL's PayableRoundingAmount from memory: 656.25 rounded by 0.75 to 657.00.
  test('is booked as a line of its own, and in no rate of tax', () => {
    const made = billOf(`tax: 25% on top, total: 657.00, rounding: 0.75, lines: [${line('525.00')}]`);
    expect(made.problems).toEqual([]);
    expect(entriesOf(made)).toEqual([
      ['2031-03-12-0#bill-1', 'frame', 52_500, 13_125, 65_625],
      ['2031-03-12-0#bill-1-rounding', 'frame', 75, 0, 75],
    ]);
    expect(taxStandings(made.record.ledger.entries).map(({ standing, sum }) => [standing, sum.net, sum.tax])).toEqual([
      ['rated', 52_500, 13_125],
      ['unsaid', 75, 0],
    ]);
    expect(made.record.ledger.bills[0]?.gross).toBe(65_700);
  });

  test('is of no subsystem where the lines are of several', () => {
    const two = `lines: [${line('10.00')}, { what: Pin, as: part, for: brakes, cost: 5.01 }]`;
    expect(entriesOf(billOf(`total: 15.00, rounding: -0.01, ${two}`)).at(-1)).toEqual([
      '2031-03-12-0#bill-1-rounding',
      'general',
      -1,
      0,
      -1,
    ]);
  });

  test('is turned over with the bill, whose entries are what was paid', () => {
    const { record, problems } = billOf(
      `currency: EUR at 0.5, total: 3.05, rounding: 0.02, lines: [${line('1.01')}, ${line('1.01')}, ${line('1.01')}]`,
    );
    expect(problems).toEqual([]);
    expect(record.ledger.entries.map(({ gross, foreign }) => [gross, foreign?.amount])).toEqual([
      [51, 101],
      [51, 101],
      [50, 101],
      [1, 2],
    ]);
    // 3.05 at 0.5 is 1.525.
    expect(record.ledger.bills[0]?.gross).toBe(153);
  });

  test.each([
    ['total: 100.02', '`rounding: 0.02`'],
    ['total: 99.98, rounding: 0.01', '`rounding: -0.02`'],
    ['total: 100.00, rounding: 0.01', 'Without `rounding` it adds up.'],
    ['tax: 20% on top, total: 132.00', '`carriage: 10.00`'],
    ['tax: 20% on top, total: 108.00', '`discount: 10.00`'],
    ['carriage: 5.00, total: 117.00', '`carriage: 17.00`'],
  ])('that is not told of is an error with the line to write: %s', (said, hint) => {
    const { hints, problems } = billOf(`${said}, lines: [${line('100.00')}]`);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^A806/);
    expect(hints[0]).toContain(hint);
    // What is offered is taken.
    const offered = /write it: `([^`]+)`/.exec(hints[0] ?? '')?.[1];
    const [field = ''] = offered?.split(':') ?? [];
    const mended = said.includes(`${field}:`) ? said.replace(new RegExp(`${field}: [^,]+`), offered ?? '') : `${said}, ${offered}`;
    if (offered) expect(billOf(`${mended}, lines: [${line('100.00')}]`).problems).toEqual([]);
  });
});

describe('a bill in another currency', () => {
  test('is turned over as a whole and shared, carriage and all', () => {
    // 19.05 and 4.95 at 20 % on top make 28.80; at 0.8571 that is 24.68448.
    const { record, problems } = journal([
      '2031-03-12',
      `bills: [{ currency: EUR at 0.8571, tax: 20% on top, carriage: 4.95, total: 28.80, lines: [${line('19.05')}] }]`,
    ]);
    expect(problems).toEqual([]);
    expect(record.ledger.entries.map(({ gross, tax, foreign }) => [gross, tax, foreign?.amount])).toEqual([[2468, 411, 2880]]);
  });

  test('has lines that add up to what was paid for it', () => {
    const { gross } = billOf(`currency: EUR at 0.5, lines: [${[1, 2, 3].map(() => line('0.01')).join(', ')}]`);
    // Three cents at 0.5 are one and a half pence: two together, where one by one they would be three.
    expect(gross).toBe(2);
  });
});

describe('a sale', () => {
  test('keeps its rate of tax and its foreign amount', () => {
    const { record } = journal(['2031-03-12', 'sold: [{ what: Lamps, on: frame, price: 12.00 EUR at 0.5, tax: 20% }]']);
    expect(
      record.ledger.entries.map(({ gross, tax, standing, taxRate, foreign }) => [gross, tax, standing, taxRate?.toFraction(), foreign]),
    ).toEqual([[-600, -100, 'rated', '1/5', { currency: 'EUR', amount: -1200, rate: '0.5' }]]);
    expect(taxStandings(record.ledger.entries).map(({ standing, rate }) => [standing, rate?.toFraction()])).toEqual([['rated', '1/5']]);
  });
});

test('zero-rated, exempt and not said are rows of their own, and tax that rounds to nothing is left out of none', () => {
  const bought = ['0.02, tax: 20%', '5.00, tax: 0%', '6.00, tax: exempt', '7.00'].map(
    (cost) => `{ what: Pin, as: part, for: frame, cost: ${cost} }`,
  );
  const { record } = journal(['2031-03-12', `bought: [${bought.join(', ')}]`]);
  const rows = taxStandings(record.ledger.entries);
  expect(rows.map(({ standing, rate, sum }) => [standing, rate?.toFraction(), sum.gross])).toEqual([
    ['rated', '1/5', 2],
    ['rated', '0', 500],
    ['exempt', undefined, 600],
    ['unsaid', undefined, 700],
  ]);
  expect(rows.reduce((all, { sum }) => all + sum.gross, 0)).toBe(sumOf(record.ledger.entries).gross);
});
