import { expect, test } from 'vitest';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { chaptersOf, readingOfYear, yearsOf } from '../../../../src/site/views/session/chapters.ts';
import { compileFiles } from '../../../journal/base.ts';

function recordOf(notes: Readonly<Record<string, string>>): SiteRecord {
  const more = Object.fromEntries(
    Object.entries(notes).map(([date, fields]) => [`sessions/${date}.md`, `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`]),
  );
  const { record, diagnostics } = compileFiles({ more });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { ...(record as NonNullable<typeof record>), noteHtml: async (id) => `<p id="a">${id}</p>` } as SiteRecord;
}
const days = (month: string, n: number) => Array.from({ length: n }, (_, day) => [`${month}-${String(day + 1).padStart(2, '0')}`, '']);

test('chapters end where a milestone was reached, with the session that reached it, and hold every session once', () => {
  const record = recordOf({
    '2031-03-10': 'hours: [{ by: rh, on: brakes, time: 1h }]',
    '2031-03-11': 'reached: [{ milestone: stripped }]\nhours: [{ by: rh, on: brakes, time: 30m }]',
    '2031-03-12': '',
  });
  expect(chaptersOf(record).map(({ to, sessions, minutes }) => [to?.id ?? null, sessions.map(({ date }) => date), minutes])).toEqual([
    ['stripped', ['2031-03-10', '2031-03-11'], 90],
    [null, ['2031-03-12'], 0],
  ]);
});

test('a long way to a milestone is divided by seasons, December with the January after it', () => {
  const record = recordOf(Object.fromEntries([...days('2030-11', 6), ...days('2030-12', 4), ...days('2031-01', 4), ...days('2031-03', 2)]));
  expect(chaptersOf(record).map(({ sessions }) => sessions.length)).toEqual([6, 8, 2]);
});

test('a year is read oldest first, among its own sessions, with the years beside it', async () => {
  const record = recordOf({ '2030-10-01': '', '2030-11-01': '', '2031-02-01': '' });
  expect(yearsOf(record)).toEqual(['2031', '2030']);
  const { told, before, after } = await readingOfYear(record, '2030');
  expect([before, after]).toEqual([null, '2031']);
  expect(told.map(({ html }) => html)).toEqual(['2030-10-01', '2030-11-01'].map((id) => `<p id="${id}-a">${id}</p>`));
});
