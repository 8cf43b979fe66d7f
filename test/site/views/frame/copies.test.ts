import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import type { IdentityTable } from '../../../../src/journal/model/identity-tables/table.ts';
import { IDENTITY_TABLES } from '../../../../src/journal/model/identity-tables/tables.ts';
import type { LeaveOut } from '../../../../src/journal/model.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { daySetter } from '../../../../src/site/views/any-day/day-shown.ts';
import { entryBooks } from '../../../../src/site/views/books/entry-books.ts';
import { hasPage } from '../../../../src/site/views/frame/contents.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { namedPlace } from '../../../../src/site/views/stores/where.ts';
import { part, soundRecord } from '../../../builders/journal.ts';
import { hours, JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

const whole = soundRecord({ parts: [part('drum')] });
const without = (...leavesOut: LeaveOut[]) => ({ ...whole, copy: { name: 'copy', leavesOut } });

test.each<[LeaveOut]>([['marks'], ['film'], ['stores']])(
  'a copy without %s does not tell what went back unrecorded: what it leaves out may have recorded it',
  (kind) => {
    expect(hasPage(whole, 'unrecorded')).toBe(true);
    expect(hasPage(without(kind), 'unrecorded')).toBe(false);
  },
);

test('a copy without film has no page that would say that none was taken', () => {
  expect(hasPage(whole, 'film')).toBe(true);
  expect(hasPage(without('film'), 'film')).toBe(false);
});

test('a vehicle of which no part is said to be a component has no page of points, unless it has a table of its own', () => {
  const of = (components: readonly string[]) => soundRecord({ parts: [part('drum', { components })] });
  expect(hasPage(of([]), 'identity')).toBe(false);
  expect(hasPage(of(['frame']), 'identity')).toBe(true);
  const bare = of([]);
  const [table] = IDENTITY_TABLES;
  const own = { ...bare, journal: { ...bare.journal, identityTables: [{ ...table, id: 'own' } as IdentityTable] } };
  expect(hasPage(own, 'identity')).toBe(true);
});

test('in a copy without stores a part is in stores, and nobody says that no place was noted', () => {
  const place = (of: typeof whole) => {
    const site = { ...of, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
    const { before, name } = namedPlace(sheetOf(site, 'stores.html'), { at: 'stores', store: null });
    return before + name;
  };
  expect(place(whole)).toBe('in stores: no place noted');
  expect(place(without('stores'))).toBe('in stores');
});

test('a copy without hours has no page for each person that would say that nobody booked any', () => {
  const { record } = journalWith({ journal: `${JOURNAL}copies: { public: { leave-out: [hours] } }\n` }, [
    '2031-03-01',
    hours('jm', '1h', 'drum'),
  ]);
  const people = (of: typeof record) => [...entryBooks(of).keys()].filter((slug) => slug.startsWith('person-'));
  expect(people(record)).toEqual(['person-rh', 'person-jm']);
  expect(people(copyOf(record, 'public'))).toEqual([]);
});

test('a past day of a copy without stores has things in stores, and nobody says that no place was noted', () => {
  const copies = (kinds: string) => `${JOURNAL}copies: { public: { leave-out: [${kinds}] } }\n`;
  const shown = (kinds: string): string =>
    daySetter(copyOf(journalWith({ journal: copies(kinds) }, ['2031-03-01', 'reached: [stripped]']).record, 'public'))('2031-03-01').markup;
  expect(shown('private')).toContain('<h3>Shelf</h3>');
  expect(shown('stores, film')).toContain('<h3>In stores</h3>');
  expect(shown('stores, film')).not.toMatch(/no place noted/i);
});
