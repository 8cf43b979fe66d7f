/** What a page is noted to have asked. */
import { expect, test } from 'vitest';
import { askedFrom, type Shared, sharedBy, startAsking } from '../../../src/site/kept/asking.ts';
import { lookup, shown } from '../../../src/site/kept/question.ts';
import type { RecordSheet } from '../../../src/site/views/page/sheet.ts';

const NO_SHEET = {} as RecordSheet;
const THEN = { ...shown('then', (_, date: string) => `all of ${date}`), day: (date: string) => date };
const HAZARDS = lookup(
  'hazards',
  (_, date: string, part: string) => `${part} on ${date}`,
  (date) => date,
);
const NAME = lookup('name', (_, part: string) => part);

function started() {
  const asking = startAsking();
  const begun = (page: string) => {
    const telling = asking.begin(page);
    return { telling, ask: askedFrom(NO_SHEET, asking, telling) };
  };
  const noted = (page: string) => {
    const told = asking.end(page);
    return [...(told?.own ?? []), ...[...(told?.shared ?? [])].map((n) => asking.all[n])].map((one) => [
      one?.question,
      ...(one?.words ?? []),
    ]);
  };
  return { begun, noted };
}

test('a page that was told all that a day follows from is not noted for each thing of that day', () => {
  const { begun, noted } = started();
  const { ask } = begun('a.html');
  expect([ask(THEN, '2031-03-01'), ask(HAZARDS, '2031-03-01', 'drum')]).toEqual(['all of 2031-03-01', 'drum on 2031-03-01']);
  ask(NAME, 'drum');
  expect(noted('a.html')).toEqual([
    ['then', '2031-03-01'],
    ['name', 'drum'],
  ]);
});

test('for a thing of another day it is', () => {
  const { begun, noted } = started();
  const { ask } = begun('a.html');
  ask(THEN, '2031-03-01');
  ask(HAZARDS, '2031-03-02', 'drum');
  expect(noted('a.html')).toEqual([
    ['then', '2031-03-01'],
    ['hazards', '2031-03-02', 'drum'],
  ]);
});

test('what is made for several pages is noted with each, whatever the first was told', () => {
  const { begun, noted } = started();
  const known: Shared<string> = new WeakMap();
  const row = {};
  const [first, second] = [begun('a.html'), begun('b.html')];
  first.ask(THEN, '2031-03-01');
  for (const { telling, ask } of [first, second]) sharedBy(known, row, () => ask(HAZARDS, '2031-03-01', 'drum'), telling);
  expect(noted('b.html')).toEqual([['hazards', '2031-03-01', 'drum']]);
});
