import { CONSUMABLES, JOURNAL, note } from '../base.ts';
import type { Case } from './case.ts';

const STATEMENT = `number: 1
from: 2031-03-01
to: 2031-03-31
charged: 28.00
lines:
  - { entry: "2031-03-12-brakes#hours-1", date: 2031-03-12, kind: labour, what: Work, subsystem: brakes, person: jm, minutes: 60, cost: 28.00, net: 28.00, mark-up: 0.00, tax: 0.00, charged: 28.00 }
`;

const bought = (line: string) => `bought: [{ what: Pin, ${line} }]`;

/** Money, tax, stock and hours as they must not be written. */
export const MONEY: readonly Case[] = [
  { shows: 'a currency that is none', code: 'A312', note: bought('cost: 5.00 EUX at 0.9'), at: '5.00 EUX', hint: /EUR/ },
  { shows: 'more decimals than pounds have', code: 'A307', note: bought('cost: 5.005'), at: '5.005', says: /2/ },
  { shows: 'decimals of a currency that has none', code: 'A307', note: bought('cost: 500.5 JPY at 0.005'), at: '500.5 JPY', says: /0/ },
  {
    shows: 'four decimals of a currency that has three',
    code: 'A307',
    note: bought('cost: 1.2345 KWD at 2.5'),
    at: '1.2345 KWD',
    says: /3/,
  },
  { shows: 'an exponent, which no bill has', code: 'A307', note: bought('cost: 1e3'), at: '1e3' },
  { shows: 'a rate of exchange of zero', code: 'A313', note: bought('cost: 5.00 EUR at 0.00'), at: '5.00 EUR at 0.00', says: /zero/ },
  { shows: 'a foreign amount without its rate', code: 'A313', note: bought('cost: 5.00 EUR'), at: '5.00 EUR', hint: /EUR at RATE/ },
  {
    shows: 'a rate behind a sign, not behind its word',
    code: 'A313',
    note: bought('cost: 5.00 EUR @ 0.9'),
    at: '5.00 EUR @',
    hint: /Write 5\.00 EUR at 0\.9/,
  },
  { shows: 'two rates of exchange', code: 'A313', note: bought('cost: 5.00 EUR at 0.9 at 0.8'), at: '5.00 EUR at' },
  { shows: 'an amount in brackets', code: 'A307', note: bought('cost: (5.00), refund: too many'), at: '(5.00)', hint: /Write -5\.00/ },
  { shows: 'an amount with a sign of another currency', code: 'A307', note: bought('cost: €5'), at: '€5', hint: /5 EUR at RATE/ },
  { shows: 'minutes beyond the hour', code: 'A306', note: 'hours: [{ by: rh, on: brakes, time: 1h 75m }]', at: '1h 75m', hint: /2h15m/ },
  {
    shows: 'more given back than was paid',
    code: 'A811',
    note: 'bought: [{ what: Lamp, cost: 5.00 }, { what: Lamp, cost: -5.01, refund: dented }]',
    at: '{ what: Lamp, cost: -5.01',
    says: /£5\.01.*£5\.00/,
    first: '{ what: Lamp, cost: 5.00',
  },
  {
    shows: 'a refund of what its note never bought',
    code: 'A812',
    note: 'bought: [{ what: Lamp, cost: 5.00 }, { what: Horn, cost: -5.00, refund: dented, refund-of: 2031-03-12 }]',
    at: '{ what: Horn',
    hint: /Lamp/,
  },
  {
    shows: 'a consumable bought as a tool',
    code: 'A813',
    note: 'bought: [{ consumable: brake-cleaner, as: tool, amount: 1 L, cost: 5.00 }]',
    at: 'tool',
  },
  {
    shows: 'a tube of what says nothing of tubes',
    code: 'A309',
    note: 'bought: [{ consumable: brake-cleaner, amount: 2 tubes, cost: 5.00 }]',
    at: '2 tubes',
    hint: /tube: 1 L/,
  },
  {
    shows: 'a mark-up beyond all reason',
    code: 'A814',
    files: { journal: `${JOURNAL}mark-up: { part: 99999999999999% }\n` },
    file: 'journal.yaml',
    at: '99999999999999%',
  },
  {
    shows: 'a mark-up below nothing',
    code: 'A814',
    files: { journal: `${JOURNAL}mark-up: { part: -5% }\n` },
    file: 'journal.yaml',
    at: '-5%',
  },
  {
    shows: 'a part sold off the vehicle that nobody took off',
    code: 'A815',
    note: 'sold: [{ part: drum, price: 5.00 }]',
    at: '{ part: drum',
    hint: /did: \[removed, gone\], how: sold/,
  },
  {
    shows: 'a part sold twice',
    code: 'A815',
    note: 'parts: [{ part: drum-donor, did: gone, how: sold }]\nsold: [{ part: drum-donor, price: 5.00 }, { part: drum-donor, price: 6.00 }]',
    at: '{ part: drum-donor, price: 6.00',
    first: '{ part: drum-donor, price: 5.00',
  },
  {
    shows: 'a part sold that still lies on its shelf',
    code: 'A816',
    note: 'sold: [{ part: drum-donor, price: 5.00 }]',
    at: '{ part: drum-donor',
    hint: /did: gone, how: sold/,
  },
  {
    shows: 'one bill in the journal twice',
    code: 'A817',
    note: 'bills: [{ from: a seller, paper: bill.pdf, lines: [{ what: Pin, cost: 5.00 }] }, { from: a seller, paper: bill.pdf, lines: [{ what: Pin, cost: 5.00 }] }]',
    files: { assets: ['papers/bill.pdf'] },
    at: '{ from: a seller, paper: bill.pdf, lines: [{ what: Pin, cost: 5.00 }] }]',
    first: '{ from: a seller, paper: bill.pdf, lines: [{ what: Pin, cost: 5.00 }] }, {',
  },
  {
    shows: 'hours edited after their statement was closed',
    code: 'A818',
    note: 'hours: [{ by: jm, on: brakes, time: 2h }]',
    files: { more: { 'statements/0001.yaml': STATEMENT } },
    file: 'statements/0001.yaml',
    says: /1 h, £28\.00.*2 h, £56\.00/,
  },
  {
    shows: 'a closed statement that was edited',
    code: 'A819',
    note: 'hours: [{ by: jm, on: brakes, time: 1h }]',
    files: { more: { 'statements/0001.yaml': STATEMENT.replace('charged: 28.00', 'charged: 27.00') } },
    file: 'statements/0001.yaml',
    at: '27.00',
    says: /£27\.00.*£28\.00/,
  },
  {
    shows: 'two closed statements of one number',
    code: 'A820',
    note: 'hours: [{ by: jm, on: brakes, time: 1h }]',
    files: { more: { 'statements/0001.yaml': STATEMENT, 'statements/0002.yaml': STATEMENT } },
    file: 'statements/0002.yaml',
  },
  {
    shows: 'an amount in a journal that has no money',
    code: 'A821',
    note: 'bought: [{ what: Pin, cost: 5.00 }]',
    files: {
      journal: JOURNAL.replace('currency: GBP\n', '')
        .replace(', money: 900.00', '')
        .replace(/jm: .*/, 'jm: { name: Jory }'),
      consumables: CONSUMABLES.replace(', value: 9.00', ''),
    },
    at: '5.00',
    hint: /currency: EUR/,
  },
  { shows: 'tax over 100 %', code: 'A314', note: bought('cost: 5.00, tax: 120%'), at: '120%' },
  { shows: 'tax below nothing', code: 'A314', note: bought('cost: 5.00, tax: -5%'), at: '-5%' },
  { shows: 'a split of nothing', code: 'A807', note: bought('cost: 5.00, split: { brakes: 0, frame: 0 }'), at: '{ brakes: 0' },
  { shows: 'a split over nobody', code: 'A807', note: bought('cost: 5.00, split: {}'), at: '{}' },
  {
    shows: 'a split as a list',
    code: 'A303',
    note: bought('cost: 5.00, split: [{ for: drum, cost: 5.00 }]'),
    at: '[{ for: drum, cost: 5.00 }]',
    hint: /^Write `split` with a share for each, as `\{ /,
  },
  {
    shows: 'one price quoted in an entry of two parts',
    code: 'A824',
    note: 'parts: [{ part: [drum, studs], did: [removed, sent-out], to: a plater, quoted: 62.00 }]',
    says: /£62\.00 is quoted for each of the 2 parts .*£124\.00 in all/,
    hint: /price: …/,
  },
  { shows: 'a split that takes away', code: 'A303', note: bought('cost: 5.00, split: { brakes: -1, frame: 2 }'), at: '-1' },
  { shows: 'what a split line is for, misspelt', code: 'A408', note: bought('cost: 5.00, for: drun, split: { brakes: 1 }'), at: 'drun' },
  { shows: 'a negative cost that is no refund', code: 'A808', note: bought('cost: -5.00'), at: '-5.00', hint: /refund/ },
  { shows: 'a refund that cost money', code: 'A808', note: bought('cost: 5.00, refund: sent back'), at: '5.00' },
  { shows: 'a sale at a negative price', code: 'A808', note: 'sold: [{ what: Lamps, price: -3.00 }]', at: '-3.00' },
  {
    shows: 'a rate of pay below nothing',
    code: 'A808',
    files: { journal: JOURNAL.replace('rate: 0', 'rate: -5.00') },
    file: 'journal.yaml',
    at: '-5.00',
  },
  {
    shows: 'two rates from one day',
    code: 'A303',
    files: {
      journal: JOURNAL.replace(
        '{ from: 2030-10-01, per-hour: 28.00 }',
        '{ from: 2030-10-01, per-hour: 28.00 }, { from: 2030-10-01, per-hour: 3.00 }',
      ),
    },
    file: 'journal.yaml',
    at: '2030-10-01, per-hour: 3.00',
    says: /2030-10-01/,
  },
  {
    shows: 'a budget below nothing',
    code: 'A808',
    files: { journal: JOURNAL.replace('money: 900.00', 'money: -900.00') },
    file: 'journal.yaml',
    at: '-900.00',
  },
  {
    shows: 'opening stock worth less than nothing',
    code: 'A808',
    files: { consumables: CONSUMABLES.replace('9.00', '-9.00') },
    file: 'consumables.yaml',
    at: '-9.00',
  },
  {
    shows: 'opening stock of nothing',
    code: 'A308',
    files: { consumables: CONSUMABLES.replace('2 L', '0 L') },
    file: 'consumables.yaml',
    at: '0 L',
  },
  {
    shows: 'stock bought by weight that is kept by volume',
    code: 'A309',
    note: 'bought: [{ consumable: brake-cleaner, amount: 2 kg, cost: 5.00 }]',
    at: '2 kg',
    says: /mass.*volume/,
  },
  {
    shows: 'stock used by length that is kept by volume',
    code: 'A309',
    note: 'used: [{ consumable: brake-cleaner, amount: 3 m, on: brakes }]',
    at: '3 m',
  },
  {
    shows: 'stock counted without a unit',
    code: 'A309',
    note: 'counted: [{ consumable: brake-cleaner, amount: 2, because: counted }]',
    at: '2,',
  },
  {
    shows: 'a bill whose lines do not add up',
    code: 'A806',
    note: 'bills: [{ total: 20.00, tax: 20% on top, lines: [{ what: Pin, cost: 10.00 }, { what: Clip, cost: 5.00 }] }]',
    at: '20.00',
    says: /20\.00.*18\.00/,
  },
  {
    shows: 'a discount that is called rounding',
    code: 'A822',
    note: 'bills: [{ total: 98.00, rounding: -2.00, lines: [{ what: Pin, cost: 100.00 }] }]',
    at: '-2.00',
    says: /1\.00 at most, not by −£2\.00/,
  },
  { shows: 'a bill without a line', code: 'A302', note: 'bills: [{ from: X, lines: [] }]', at: '[]' },
  {
    shows: 'a clock range whose ends were changed round, which is nearly a whole day',
    code: 'A823',
    note: 'hours: [{ by: rh, on: brakes, time: 22:00-21:00 }]',
    at: '{ by: rh',
    says: /22:00-21:00 is read as 23 h, to 21:00 on 2031-03-13/,
    hint: /`21:00-22:00`.*`23h`/,
  },
  {
    shows: 'hours over midnight that overlap those of the next note',
    code: 'A803',
    note: 'hours: [{ by: rh, on: brakes, time: 00:45-02:00 }]',
    at: '{ by: rh',
    says: /Ruth.*00:45-02:00 overlaps 22:30-01:30/,
    files: {
      more: { 'sessions/2031-03-11.md': note('hours: [{ by: rh, on: frame, time: 22:30-01:30 }]').replace('2031-03-12', '2031-03-11') },
    },
  },
];
