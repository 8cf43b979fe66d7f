import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { openItemsCsv } from '../../src/exports/open-items.ts';
import { registerCsv } from '../../src/exports/register.ts';
import { whereaboutsCsv } from '../../src/exports/whereabouts.ts';
import { decide, did, evening, part, soundRecord } from '../builders/journal.ts';

const of = soundRecord({
  parts: [
    part('studs', { count: 5, name: 'Studs, "near" side' }),
    part('studs-new', { for: 'studs', origin: 'new', count: 5, store: 'loft' }),
  ],
  evenings: [
    evening('2030-10-01', { opens: [{ id: 'cap', kind: 'temporary', what: 'Pipe capped, for now', before: 'first-start' }] }),
    evening('2030-10-10', {
      parts: [
        did('studs', 'removed', { count: 2 }),
        did('studs', 'gone', { count: 1, how: 'scrapped' }),
        did('studs-new', 'fitted', { count: 2 }),
      ],
      decisions: [decide('studs', 'replace', { count: 2, with: 'studs-new', because: 'Threads pulled; two only.' })],
      defers: [{ id: 'cap', to: 'road-test' }],
    }),
  ],
});

// An independent reader of RFC 4180 reads it back.
const read = (text: string): Record<string, string>[] => parse(text, { columns: true });

describe('registers as CSV', () => {
  test('the register says what was decided and what is there', () => {
    expect(read(registerCsv(of))).toMatchObject([
      {
        name: 'Studs, "near" side',
        takes: '5',
        decided: 'replace with studs-new (2 of 5)',
        because: 'Threads pulled; two only.',
        fitted: '3 studs (original); 2 studs-new (new)',
        outcome: 'partly replaced (2 of 5)',
        originals: '3 studs fitted at studs; 1 studs in stores, unplaced; 1 studs gone (scrapped)',
      },
    ]);
  });

  test('some of a lot that came to stand there at different times are of one origin, and counted together', () => {
    const back = (date: string) =>
      evening(date, { parts: [did('studs', 'removed', { count: 1 }), did('studs', 'fitted', { count: 1 })] }, date);
    const lot = soundRecord({ parts: [part('studs', { count: 5 })], evenings: [back('2030-10-01'), back('2030-11-01')] });
    expect(lot.history.occupants.get('studs')?.filter(({ to }) => to === null).length).toBeGreaterThan(1);
    expect(read(registerCsv(lot))[0]?.fitted).toBe('5 studs (original)');
  });

  test('the whereabouts of a part add up to its count', () => {
    const rows = read(whereaboutsCsv(of));
    const sum = (id: string) => rows.filter((row) => row.part === id).reduce((total, row) => total + Number(row.count), 0);
    expect([sum('studs'), sum('studs-new')]).toEqual([5, 5]);
    expect(rows.map((row) => [row.count, row.where, row.place])).toContainEqual(['3', 'stores', 'loft']);
  });

  test('of some that came to one place at different times it says when the first and when the last of them came', () => {
    const off = (date: string) => evening(date, { parts: [did('studs', 'removed', { count: 2, to: 'loft' })] }, date);
    const lot = soundRecord({ parts: [part('studs', { count: 5 })], stores: ['loft'], evenings: [off('2030-10-01'), off('2030-11-01')] });
    expect(read(whereaboutsCsv(lot)).filter(({ where }) => where === 'stores')).toMatchObject([
      { count: '4', place: 'loft', since: '2030-10-01', 'last since': '2030-11-01' },
    ]);
  });

  test('of a numbered lot it says which lie where', () => {
    const slats = soundRecord({
      parts: [part('slats', { count: 4, numbered: 'I to IIII' })],
      stores: ['loft'],
      evenings: [evening('2030-10-01', { parts: [did('slats', 'removed', { which: [2, 4], count: 2, to: 'loft' })] })],
    });
    expect(read(whereaboutsCsv(slats)).map(({ where, which }) => [where, which])).toEqual([
      ['fitted', '1; 3'],
      ['stores', '2; 4'],
    ]);
    expect(read(whereaboutsCsv(of))[0]?.which).toBe('');
  });

  test('a condition has the day of which it is told, of the catalogue the day from which the part was here', () => {
    const seen = soundRecord({
      parts: [part('drum', { condition: 2 }), part('lamp', { condition: 1, found: 'loose', acquired: '2030-11-01' }), part('hub')],
      evenings: [evening('2031-05-01', { parts: [did('hub', 'inspected', { condition: 3 })] }), evening('2031-06-01', {})],
    });
    const told = read(whereaboutsCsv(seen)).map((row) => [row.part, row.condition, row['condition as of']]);
    expect(told).toEqual([
      ['drum', '2', '2030-09-14'],
      ['lamp', '1', '2030-11-01'],
      ['hub', '3', '2031-05-01'],
    ]);
  });

  test('the register says what went back otherwise, and when a place last changed by a name that is no day of fitting', () => {
    const turned = soundRecord({
      parts: [part('drum')],
      evenings: [evening('2030-10-01', { parts: [did('drum', ['removed', 'fitted'], { asWas: false, note: 'Turned by one stud.' })] })],
    });
    expect(read(registerCsv(turned))).toMatchObject([
      {
        outcome: 'undecided, went back otherwise',
        'went back otherwise': 'went back otherwise than it came off: Turned by one stud.',
        'place last changed': '2030-10-01',
      },
    ]);
  });

  test('open items carry their deferrals, and know nothing of later ones', () => {
    expect(read(openItemsCsv(of))).toMatchObject([
      { item: 'cap', what: 'Pipe capped, for now', 'due before': 'road-test', deferred: '2030-10-10 to road-test: later' },
    ]);
    expect(read(openItemsCsv(of, '2030-10-09'))).toMatchObject([{ 'due before': 'first-start', deferred: '', 'days open': '8' }]);
  });
});
