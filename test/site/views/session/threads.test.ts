import { expect, test } from 'vitest';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { amongOthers, threadsOfSession } from '../../../../src/site/views/session/threads.ts';
import { compileFiles, JOURNAL } from '../../../journal/base.ts';

test('prose on the page of a thread leads where it led from its own page, and shares no anchor with other prose', () => {
  const html =
    '<h2 id="tank">The tank</h2><p><a href="#tank">above</a>, <a href="2031-03-12-brakes.html#decided">before</a>, ' +
    '<a href="../parts/drum.html">the drum</a>, <a href="https://example.org/a.html">elsewhere</a></p>';
  const set = amongOthers(html, '2031-04-01-tank');
  expect([...set.matchAll(/(?:href|id)="([^"]+)"/g)].map(([, to]) => to)).toEqual([
    '2031-04-01-tank-tank',
    '#2031-04-01-tank-tank',
    '../sessions/2031-03-12-brakes.html#decided',
    '../parts/drum.html',
    'https://example.org/a.html',
  ]);
});

test('a session stands in each of its threads between the sessions of that thread, and in no other', () => {
  const note = (date: string, fields: string) => [`sessions/${date}.md`, `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`];
  const inspected = (part: string) => `parts: [{ part: ${part}, did: inspected }]`;
  const { record } = compileFiles({
    journal: `${JOURNAL}threads: { one: { title: The drum, parts: [drum] }, two: { title: The studs, parts: [studs] } }\n`,
    more: Object.fromEntries([
      note('2031-03-10', inspected('drum')),
      note('2031-03-11', inspected('studs')),
      note('2031-03-12', 'parts: [{ part: drum, did: inspected }, { part: studs, did: inspected }]'),
      note('2031-03-13', ''),
      note('2031-03-14', inspected('drum')),
    ]),
  });
  const threads = (id: string) =>
    threadsOfSession(record as SiteRecord, id).map(({ thread, before, after }) => [thread.id, before?.id ?? null, after?.id ?? null]);
  expect(threads('2031-03-12')).toEqual([
    ['one', '2031-03-10', '2031-03-14'],
    ['two', '2031-03-11', null],
  ]);
  expect(threads('2031-03-11')).toEqual([['two', null, '2031-03-12']]);
  expect(threads('2031-03-13')).toEqual([]);
});
