import { expect, test } from 'vitest';
import { quotedWork } from '../../src/journal/registers/quoted.ts';
import { toFinish } from '../../src/journal/registers/to-finish.ts';
import { journal, journalWith, type NoteOf } from '../ledger/small-journal.ts';

const OUT: NoteOf = ['2031-03-01', 'parts: [{ part: drum-spare, did: sent-out, to: A Plater, work: Skim, quoted: 100.00 }]'];
const billed = (date: string, cost: string, from: string | null, of = 'drum-spare'): NoteOf => [
  date,
  `bought: [{ what: Skimmed, as: outside-work, for: ${of}, cost: ${cost}, tax: 20%${from === null ? '' : `, from: ${from}`} }]`,
];
const works = (...notes: readonly NoteOf[]) => {
  const { record, problems } = journal(...notes);
  expect(problems).toEqual([]);
  return {
    record,
    list: quotedWork(record, null).map(({ quoted, billed: { gross, net }, open, before }) => [quoted, gross, net, open, before]),
  };
};

test('a bill for outside work on the part, of the firm, of that day or later, is of the quote', () => {
  expect(works(OUT, billed('2031-03-05', '60.00', 'a plater'), billed('2031-03-09', '60.00', 'A  Plater')).list).toEqual([
    [10_000, 12_000, 10_000, true, []],
  ]);
});

test.each([
  ['of another firm', billed('2031-03-05', '60.00', 'a turner')],
  ['that names no seller', billed('2031-03-05', '60.00', null)],
  ['for another part', billed('2031-03-05', '60.00', 'a plater', 'drum')],
  ['of an earlier day', billed('2031-02-20', '60.00', 'a plater')],
  ['for a thing and no work', ['2031-03-05', 'bought: [{ what: Plate, as: part, for: drum-spare, cost: 9.00, from: a plater }]'] as NoteOf],
])('a bill %s is of no quote', (_, bill) => {
  expect(works(...[OUT, bill].toSorted(([a], [b]) => (a < b ? -1 : 1))).list).toEqual([[10_000, 0, 0, true, []]]);
});

test('a later word of the firm takes the place of an earlier one until there is a bill, and is a quote of its own after it', () => {
  const waiting = (date: string, id: string, price: string): NoteOf => [
    date,
    `opens: [{ id: ${id}, kind: waiting, what: Spare at the plater, on: drum-spare, from: a plater, price: ${price} }]`,
  ];
  expect(
    works(OUT, waiting('2031-03-03', 'one', '120.00'), billed('2031-03-05', '120.00', 'a plater'), waiting('2031-04-01', 'two', '30.00'))
      .list,
  ).toEqual([
    [12_000, 12_000, 10_000, true, [10_000]],
    [3000, 0, 0, true, []],
  ]);
});

test('what a firm does beside something else that it still has is no other word on that: each is ahead', () => {
  const opens = (date: string, id: string, price: string, more = ''): NoteOf => [
    date,
    `opens: [{ id: ${id}, kind: waiting, what: ${id}, on: brakes, from: a plater, price: ${price} }]${more}`,
  ];
  const ahead = (...notes: readonly NoteOf[]) => {
    const { record, list } = works(...notes);
    return [list, toFinish(record, null).map(({ quoted }) => quoted.sum)];
  };
  const [first, second] = [opens('2031-03-01', 'rim', '180.00'), opens('2031-03-03', 'horn', '90.00')];
  const both = [
    [18_000, 0, 0, true, []],
    [9000, 0, 0, true, []],
  ];
  expect(ahead(first, second)).toEqual([both, [27_000]]);
  const [rim, horn] = both.map(([quoted, ...rest]) => [quoted, ...rest.with(2, false)]);
  expect(ahead(first, second, ['2031-03-05', 'closes: [{ id: rim, how: back }]'])).toEqual([[rim, both[1]], [9000]]);
  expect(ahead(first, second, ['2031-03-05', 'closes: [{ id: horn, how: back }]'])).toEqual([[both[0], horn], [18_000]]);
  const again = opens('2031-03-03', 'horn', '90.00', '\ncloses: [{ id: rim, how: asked anew }]');
  expect(ahead(first, again)).toEqual([[[9000, 0, 0, true, [18_000]]], [9000]]);
});

test('some of a lot that follows the rest to the same firm has its own quote', () => {
  const studs = (date: string, quoted: string): NoteOf => [
    date,
    `parts: [{ part: studs, did: [removed, sent-out], count: 2, to: A Plater, work: Zinc, quoted: ${quoted} }]`,
  ];
  const parts = '- { id: studs, name: Studs, origin: original, count: 4 }\n';
  const { record, problems } = journalWith({ parts }, studs('2031-03-01', '20.00'), studs('2031-03-08', '25.00'));
  expect(problems).toEqual([]);
  expect(quotedWork(record, null).map(({ quoted, before }) => [quoted, before])).toEqual([
    [2000, []],
    [2500, []],
  ]);
});

test('what a note waits for from nobody by name is from the firm that the part is out with', () => {
  const { list } = works(
    OUT,
    ['2031-03-03', 'opens: [{ id: one, kind: waiting, what: Spare, on: drum-spare, price: 100.00 }]'],
    billed('2031-03-05', '90.00', 'a plater'),
  );
  expect(list).toEqual([[10_000, 9000, 7500, true, [10_000]]]);
});

test('what was billed of a quote is ahead no more, and a bill over it takes nothing off another', () => {
  const ahead = (...bills: readonly NoteOf[]) =>
    toFinish(works(OUT, ...bills).record, null).map(({ quoted, spent, willHaveCost }) => [quoted.sum, spent, willHaveCost]);
  expect(ahead()).toEqual([[10_000, 0, 10_000]]);
  expect(ahead(billed('2031-03-05', '40.00', 'a plater'))).toEqual([[6000, 4000, 10_000]]);
  expect(ahead(billed('2031-03-05', '140.00', 'a plater'))).toEqual([[0, 14_000, 14_000]]);
});

test('stands as it was on an earlier day', () => {
  const { record } = works(OUT, billed('2031-03-05', '60.00', 'a plater'), ['2031-03-09', 'parts: [{ part: drum-spare, did: returned }]']);
  expect([quotedWork(record, '2031-03-04'), quotedWork(record, null)].map(([work]) => [work?.open, work?.billed.gross])).toEqual([
    [true, 0],
    [false, 6000],
  ]);
});
