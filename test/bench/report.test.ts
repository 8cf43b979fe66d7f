import { expect, test } from 'vitest';
import { aimsTable } from './aims.ts';
import { flatness } from './report.ts';

const points = (...seconds: number[]) => seconds.map((one, n) => ({ sessions: [100, 600, 5000][n] ?? 0, seconds: one }));

test('what a session adds at the end is held against what it adds at the beginning', () => {
  expect(flatness('check', points(1, 1.5, 5.9))).toMatchObject({ figure: expect.closeTo(1, 9), below: 1.3 });
  expect(flatness('check', points(1, 1.5, 10.3))).toMatchObject({ figure: expect.closeTo(2, 9) });
});

test.each([
  ['the first step', points(1, 0.9, 5)],
  ['the last step', points(1, 1.5, 1.4)],
  ['both', points(3, 2, 1)],
])('where %s came out as less than nothing, what a session adds was not measured', (_, times) => {
  expect(flatness('check', times)?.figure).toBeNull();
});

test('what was not measured is neither met nor missed', () => {
  const aim = { what: 'check', below: 1.3, unit: '' } as const;
  const table = aimsTable([
    { ...aim, figure: null },
    { ...aim, figure: 1 },
    { ...aim, figure: 2 },
    { ...aim, figure: 3, below: null },
  ]);
  expect(table.split('\n').map((line) => line.split(/ {2,}/))).toEqual([
    ['What', 'measured', 'aim'],
    ['check', 'not measured', '< 1.3'],
    ['check', '1.000', '< 1.3', 'met'],
    ['check', '2.000', '< 1.3', 'MISSED'],
    ['check', '3.000'],
    ['1 of 2 aims met'],
  ]);
});
