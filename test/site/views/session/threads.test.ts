import { expect, test } from 'vitest';
import { amongOthers } from '../../../../src/site/views/session/threads.ts';

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
