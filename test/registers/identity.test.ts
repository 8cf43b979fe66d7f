import { describe, expect, test } from 'vitest';
import { componentWords } from '../../src/journal/compile/identity.ts';
import type { IdentityTable } from '../../src/journal/model/identity-tables/table.ts';
import { IDENTITY_TABLES } from '../../src/journal/model/identity-tables/tables.ts';
import { UK_EIGHT_POINTS } from '../../src/journal/model/identity-tables/uk-eight-points.ts';
import type { Part } from '../../src/journal/model.ts';
import { identityAt } from '../../src/journal/registers/identity.ts';
import { did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';
import { compileFiles } from '../journal/base.ts';

const carrying = (id: string, components: string, fields = {}) => part(id, { components: components.split(' '), ...fields });
const PARTS = [
  carrying('frame', 'frame'),
  carrying('frame-new', 'frame', { for: 'frame', origin: 'new-old-stock' }),
  carrying('frame-copy', 'frame', { for: 'frame', origin: 'reproduction' }),
  carrying('springs-front', 'suspension-front', { count: 2 }),
  carrying('springs-rear', 'suspension-rear', { count: 2 }),
  carrying('spring-donor', 'suspension-rear', { for: 'springs-rear', origin: 'donor' }),
  carrying('axles', 'axles', { count: 2 }),
  carrying('gearbox', 'transmission'),
  carrying('steering-box', 'steering'),
  carrying('engine', 'engine'),
];
const answer = (parts = PARTS, ...evenings: Evening[]) => identityAt(soundRecord({ parts, evenings }), UK_EIGHT_POINTS, null);
const pointsBy = (identity: ReturnType<typeof answer>) => Object.fromEntries(identity.answers.map(({ line, points }) => [line.id, points]));
const lineOf = (identity: ReturnType<typeof answer>, id: string) => identity.answers.find(({ line }) => line.id === id);
const swap = (old: string, by: string, count = 1) =>
  evening('2030-10-01', { parts: [did(old, 'removed', { count }), did(by, 'fitted', { count })] });

describe('the points table', () => {
  // Source: nidirect.gov.uk, as read: 5 for the frame, 2 each for suspension, axles, transmission and steering, 1 for the engine; 8 needed, 5 of them from the frame.
  test('has the published points', () => {
    const table = Object.fromEntries(UK_EIGHT_POINTS.lines.map(({ id, points }) => [id, points]));
    expect(table).toEqual({ frame: 5, suspension: 2, axles: 2, transmission: 2, steering: 2, engine: 1 });
    expect([UK_EIGHT_POINTS.needed, UK_EIGHT_POINTS.neededFrom]).toEqual([8, { line: 'frame', points: 5 }]);
  });

  test('asks for both ends of suspension and axles, and for one thing elsewhere', () => {
    const needs = Object.fromEntries(UK_EIGHT_POINTS.lines.map(({ id, needs: list }) => [id, list.map(({ what }) => what)]));
    expect(needs).toMatchObject({ suspension: ['front', 'back'], axles: ['front', 'back'], frame: [null], engine: [null] });
  });

  test.each(IDENTITY_TABLES.map((table) => [table.id, table] as const))(
    '%s names its own lines, each once, and no table is there twice',
    (_, table) => {
      const ids = table.lines.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      if (table.neededFrom) expect(ids).toContain(table.neededFrom.line);
      expect(IDENTITY_TABLES.filter(({ id }) => id === table.id)).toHaveLength(1);
    },
  );

  test('says where it is from, how it stands, and who decides', () => {
    for (const table of IDENTITY_TABLES) {
      expect(table.source).toMatch(/\w/);
      expect(table.standing).toMatch(/read/);
      expect(table.vehicles).toMatch(/^For vehicles/);
      expect(table.caution).toMatch(/licensing authority alone/);
    }
  });
});

describe('the answer', () => {
  test('all original: fourteen points, and the sums are reached', () => {
    expect(answer()).toMatchObject({ points: 14, pointsFrom: 5, reached: true });
  });

  test('a new and unmodified frame from the maker still brings its five; a copy brings none, and then nothing is enough', () => {
    expect(pointsBy(answer(PARTS, swap('frame', 'frame-new')))).toMatchObject({ frame: 5 });
    expect(answer(PARTS, swap('frame', 'frame-copy'))).toMatchObject({ points: 9, pointsFrom: 0, reached: false });
  });

  test('one spring of four that is not original loses the suspension, and the ground says which', () => {
    const identity = answer(PARTS, swap('springs-rear', 'spring-donor'));
    const suspension = lineOf(identity, 'suspension');
    expect(suspension).toMatchObject({ answer: 'no', points: 0 });
    const traced = suspension?.needs.flatMap(({ need, grounds }) =>
      grounds.map(({ position, counts, words, fitted }) => [need.what, position, counts, words, fitted.map((one) => one.part)]),
    );
    expect(traced).toEqual([
      ['front', 'springs-front', true, 'original', ['springs-front']],
      ['back', 'springs-rear', false, '1 of 2 donor', ['springs-rear', 'spring-donor']],
    ]);
  });

  test('what is off the vehicle brings nothing while it is off', () => {
    const off = evening('2030-10-01', { parts: [did('engine', 'removed')] });
    expect(lineOf(answer(PARTS, off), 'engine')).toMatchObject({ answer: 'no', needs: [{ grounds: [{ words: 'not on the vehicle' }] }] });
  });

  test('a component that no part carries is unknown, not yes', () => {
    const without = PARTS.filter(({ components }) => !components.includes('steering'));
    expect(lineOf(answer(without), 'steering')).toMatchObject({ answer: 'unknown', points: 0 });
  });

  test('front suspension alone does not stand for both: the back is unknown until a part carries it', () => {
    const front = PARTS.filter(({ components }) => !components.includes('suspension-rear'));
    const suspension = lineOf(answer(front), 'suspension');
    expect(suspension).toMatchObject({ answer: 'unknown', points: 0 });
    expect(suspension?.needs.map(({ need, grounds }) => [need.what, grounds.length])).toEqual([
      ['front', 1],
      ['back', 0],
    ]);
  });

  test('what nobody knows the origin of is not known, and never a no', () => {
    const of = (origin: Part['origin']) => [carrying('engine', 'engine', { origin }), ...PARTS.filter(({ id }) => id !== 'engine')];
    const engine = lineOf(answer(of(null)), 'engine');
    expect(engine).toMatchObject({ answer: 'unknown', points: 0, needs: [{ grounds: [{ counts: null, words: 'origin not known' }] }] });
    expect(lineOf(answer(of('unknown')), 'engine')?.answer).toBe('unknown');
    expect(lineOf(answer(of('donor')), 'engine')?.answer).toBe('no');
    expect(lineOf(answer(of('borrowed')), 'engine')?.answer).toBe('no');
    const springs = carrying('springs-rear', 'suspension-rear', { origin: null, count: 2 });
    const rest = PARTS.filter(({ id }) => id !== 'springs-rear');
    expect(lineOf(answer([springs, ...rest]), 'suspension')?.answer).toBe('unknown');
    expect(lineOf(answer([springs, ...rest], swap('springs-rear', 'spring-donor')), 'suspension')?.answer).toBe('no');
  });

  test('what is known not to count settles a line, even while the other end is unknown', () => {
    const donor = carrying('springs-front', 'suspension-front', { origin: 'donor' });
    const front = [donor, ...PARTS.filter(({ components }) => !components.some((word) => word.startsWith('suspension')))];
    expect(lineOf(answer(front), 'suspension')).toMatchObject({ answer: 'no', points: 0 });
  });

  test('a part that is both ends at once answers both: by the word for both, or by two words', () => {
    const rest = PARTS.filter(({ components }) => !components.some((word) => word.startsWith('suspension')));
    for (const words of ['suspension', 'suspension-front suspension-rear']) {
      expect(lineOf(answer([carrying('springs', words, { count: 4 }), ...rest]), 'suspension')).toMatchObject({ answer: 'yes', points: 2 });
    }
  });

  test('it is answered as at a date', () => {
    const of = soundRecord({ parts: PARTS, evenings: [swap('springs-rear', 'spring-donor')] });
    expect(['2030-09-30', '2030-10-01'].map((date) => identityAt(of, UK_EIGHT_POINTS, date).points)).toEqual([14, 12]);
  });

  test('work that cut the frame is named as a question', () => {
    const welded = evening('2030-10-01', { parts: [did('frame', 'repaired')] });
    const frame = lineOf(answer(PARTS, welded), 'frame');
    expect(frame?.needs[0]?.grounds[0]?.changed).toEqual([{ session: '2030-10-01-work', date: '2030-10-01', did: 'repaired' }]);
  });

  test('and so is work by a firm of which nobody said what it was', () => {
    const out = did('frame', ['removed', 'sent-out'], { to: 'a jig shop', work: 'Set true on the jig' });
    const evenings = [evening('2030-10-01', { parts: [out] }), evening('2030-11-01', { parts: [did('frame', ['returned', 'fitted'])] })];
    const frame = lineOf(answer(PARTS, ...evenings), 'frame');
    expect(frame?.needs[0]?.grounds[0]?.changed).toEqual([{ session: '2030-11-01-work', date: '2030-11-01', did: 'worked on' }]);
  });
});

describe('another table', () => {
  // Made up for the test, with words and sums of its own: to add one takes this much data and no code.
  const OTHER: IdentityTable = {
    id: 'other',
    title: 'Three points',
    source: 'made up',
    address: 'https://example.org/',
    standing: 'read never',
    vehicles: null,
    caution: 'none',
    needed: 3,
    neededFrom: null,
    lines: [
      {
        id: 'body',
        words: 'Body',
        points: 2,
        needs: [{ what: null, components: ['body'] }],
        origins: ['original', 'period'],
        unmodified: false,
      },
      {
        id: 'wheels',
        words: 'Wheels of both axles',
        points: 1,
        needs: [
          { what: 'of the front axle', components: ['wheels-front'] },
          { what: 'of the rear axle', components: ['wheels-rear'] },
        ],
        origins: ['original'],
        unmodified: false,
      },
    ],
  };

  test('is answered from its own words, origins and sums', () => {
    const parts = [
      carrying('tub', 'body', { origin: 'period' }),
      carrying('wheels-f', 'wheels-front', { count: 2 }),
      carrying('wheels-r', 'wheels-rear', { count: 2 }),
    ];
    const of = soundRecord({ parts, evenings: [evening('2030-10-01', { parts: [did('wheels-r', 'removed', { count: 1 })] })] });
    expect(identityAt(of, OTHER, '2030-09-30')).toMatchObject({ points: 3, reached: true });
    expect(identityAt(of, OTHER, null)).toMatchObject({ points: 2, reached: false });
    expect(identityAt(of, OTHER, null).answers[1]?.needs[1]?.grounds[0]?.words).toBe('1 of 2 not on the vehicle');
  });
});

test('a catalogue may use every word that a table asks for, one or several, and no other', () => {
  const errors = (written: string) =>
    compileFiles({ parts: `- { id: drum, name: Drum, origin: original, component: ${written} }\n` }).diagnostics.filter(
      ({ severity }) => severity === 'error',
    );
  const words = [...componentWords(IDENTITY_TABLES)];
  expect(words).toEqual(expect.arrayContaining(['frame', 'suspension', 'suspension-front', 'suspension-rear', 'axle-rear', 'engine']));
  for (const word of words) expect(errors(word)).toEqual([]);
  expect(errors('[axle-rear, transmission]')).toEqual([]);
  expect(errors('suspension-back')).toMatchObject([{ code: 'A304', hint: expect.stringContaining('suspension') }]);
});

describe('a table that a journal brings', () => {
  // Made up: words, sums and origins of its own.
  const TABLE = `title: Three points
source: Made up
standing: Read never.
needed: 3
from: { line: body, points: 2 }
lines:
  - { id: body, words: Body, points: 2, asks: body, origins: [original, period] }
  - id: wheels
    words: Wheels of both axles
    points: 1
    asks: [{ what: of the front axle, of: [wheels, wheels-front] }, { what: of the rear axle, of: [wheels, wheels-rear] }]
`;
  const PARTS_FILE = `- { id: tub, name: Tub, origin: period, component: body }
- { id: wheels, name: Wheels, origin: original, count: 4, component: wheels }
`;
  const compiled = (table: string, parts = PARTS_FILE) => compileFiles({ parts, more: { 'identity/club.yaml': table } });

  test('is answered before those that the program brings, from component words of its own', () => {
    const { record, diagnostics } = compiled(TABLE);
    expect(diagnostics).toEqual([]);
    const [own, ...others] = record?.journal.identityTables ?? [];
    expect(others).toEqual(IDENTITY_TABLES);
    if (!record || !own) throw new Error('no table');
    expect(own).toMatchObject({ id: 'club', address: null, caution: UK_EIGHT_POINTS.caution });
    expect(identityAt(record, own, null)).toMatchObject({ points: 3, pointsFrom: 2, reached: true });
  });

  test.each([
    ['a component word that it does not ask for', TABLE, PARTS_FILE.replace('component: body', 'component: boddy'), 'A304', /`body`/],
    ['a sum from a line that it does not have', TABLE.replace('line: body', 'line: bodi'), PARTS_FILE, 'A304', /`body`/],
    ['a line that is there twice', TABLE.replace('id: wheels', 'id: body'), PARTS_FILE, 'A410', /an id of its own/],
    ['points that are no number', TABLE.replace('points: 1', 'points: some'), PARTS_FILE, 'A310', /whole number/],
    ['a line without points', TABLE.replace('    points: 1\n', ''), PARTS_FILE, 'A302', /Add `points: …`/],
    ['an unknown field', TABLE.replace('standing', 'standin'), PARTS_FILE, 'A301', /`standing`/],
  ])('%s is an error', (_, table, parts, code, hint) => {
    const found = compiled(table, parts).diagnostics.find((each) => each.code === code);
    expect(found?.severity).toBe('error');
    expect(found?.hint ?? '').toMatch(hint);
  });
});
