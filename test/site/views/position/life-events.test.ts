import { expect, test } from 'vitest';
import { positionTimeline } from '../../../../src/journal/timelines/timelines.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { lifeEvents } from '../../../../src/site/views/position/life-events.ts';
import { compileFiles, NOTE, note } from '../../../journal/base.ts';

const dated = (date: string, fields: string): Record<string, string> => ({
  [`sessions/${date}-brakes/index.md`]: note(fields).replace('2031-03-12', date),
});
const more = {
  [NOTE]: note(`parts:
  - { part: drum, did: [removed, inspected, cleaned], to: shelf B2 }
decisions:
  - { part: drum, verdict: defer, because: Not measured yet. }`),
  ...dated('2031-03-14', 'parts:\n  - { part: drum, did: sent-out, to: a turner }'),
  ...dated('2031-03-16', 'parts:\n  - { part: drum, did: returned, to: shelf A1 }\n  - { part: drum-donor, did: fitted, at: drum }'),
  ...dated(
    '2031-03-18',
    `parts:
  - { part: drum-donor, did: removed }
  - { part: drum-donor, did: gone, how: sold }
  - { part: drum, did: fitted }
decisions:
  - { part: drum, verdict: keep, because: Within limits. }`,
  ),
};

function eventsOfDrum() {
  const { record } = compileFiles({ more });
  if (!record) throw new Error('the journal does not compile');
  const sheet = sheetOf(record as SiteRecord, 'parts/drum.html');
  const { events, decisions } = positionTimeline(record, 'drum');
  return lifeEvents(sheet, events, decisions, [{ date: '2031-03-12', href: '#picture-1' }]);
}

test('where a part went is told by a shape and in words, and opens the day', () => {
  const moves = eventsOfDrum().filter(({ lane }) => lane === 'moved');
  expect(moves.map(({ sign, words, href }) => [sign, words.join('; '), href])).toEqual([
    ['off', 'off, shelf B2', '#day-2031-03-12-brakes'],
    ['out', 'out', '#day-2031-03-14-brakes'],
    ['several', 'came back; fitted', '#day-2031-03-16-brakes'],
    ['several', 'off; sold; back', '#day-2031-03-18-brakes'],
  ]);
});

test('work, decisions and pictures stand in lanes of their own; a decision that holds no more is another shape', () => {
  const others = eventsOfDrum().filter(({ lane }) => lane !== 'moved');
  expect(others.map(({ lane, sign, words, href }) => [lane, sign, words.join('; '), href])).toEqual([
    ['decided', 'superseded', 'leave open for now', '#decision-1'],
    ['decided', 'decision', 'keep as it is', '#decision-2'],
    ['worked', 'work', 'inspected; cleaned', '#day-2031-03-12-brakes'],
    ['pictured', 'picture', '', '#picture-1'],
  ]);
});
