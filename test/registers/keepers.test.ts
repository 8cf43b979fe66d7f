/** In whose keeping the vehicle stood, and what went along when it passed on. */
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { openMatters } from '../../src/cli/new-note/open-matters.ts';
import { thingsOf } from '../../src/editor/things.ts';
import { linkedData } from '../../src/exports/linked-data.ts';
import { registerCsv } from '../../src/exports/register.ts';
import { whereaboutsCsv } from '../../src/exports/whereabouts.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { withheldTexts } from '../../src/journal/copy/withheld.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { keeperAt, stayedWith } from '../../src/journal/registers/keepers.ts';
import { mismatchesAt } from '../../src/journal/registers/mismatches.ts';
import { placeStateOf } from '../../src/journal/registers/place-state.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { offVehicleAt, storesAt } from '../../src/journal/registers/stores.ts';
import { partTimeline } from '../../src/journal/timelines/timelines.ts';
import { loadJournal } from '../../src/load/load.ts';
import { compileFiles, JOURNAL, PARTS } from '../journal/base.ts';

const FOLDER = fileURLToPath(new URL('../cases/the-vehicle-changes-hands/journal', import.meta.url));
const compiled = compileJournal(loadJournal(FOLDER), { today: '2031-12-31' });
const record = compiled.record as JournalRecord;

const stayed = (of: JournalRecord, at: string | null = null) =>
  Object.fromEntries(offVehicleAt(of, at).flatMap(({ part, stayed }) => (stayed ? [[part, stayed.keeper]] : [])));

describe('a sale', () => {
  test('passes the vehicle on, from its day and not before', () => {
    expect(compiled.diagnostics).toEqual([]);
    expect([keeperAt(record, '2031-02-28'), keeperAt(record, '2031-03-01'), keeperAt(record, null)]).toEqual(['ruth', 'edda', 'edda']);
  });

  test('takes originals and what is named along; the rest stays with the old keeper, out of the new one’s stores', () => {
    expect(stayed(record)).toEqual({ 'hose-new': 'ruth', badge: 'ruth' });
    expect(stayed(record, '2031-02-28')).toEqual({});
    const lying = storesAt(record, null).flatMap(({ things }) => things.map(({ part }) => part));
    expect(lying.sort()).toEqual(['drum-spare', 'jack', 'nuts']);
    expect(
      offVehicleAt(record, null)
        .filter(({ goesWithVehicle }) => goesWithVehicle)
        .map(({ part }) => part),
    ).not.toContain('badge');
  });

  test('has its price apart from the cost of the work, as money that came in', () => {
    const entry = record.ledger.entries.find(({ kind }) => kind === 'vehicle');
    expect(entry).toMatchObject({ gross: -420_000, paid: false, cost: false, date: '2031-03-01' });
    expect(copyOf(record, 'public').ledger.entries.filter(({ kind }) => kind === 'vehicle')).toEqual([]);
  });

  test('is a transfer of custody of the vehicle and of what goes along (CIDOC CRM 7.1.2, E10 with P28, P29, P30)', () => {
    const nodes = (linkedData(record)['@graph'] as { id: string; type: string }[]).filter(({ id }) => id.startsWith('#hand-over'));
    expect(nodes).toEqual([
      expect.objectContaining({
        type: 'crm:E10_Transfer_of_Custody',
        custodyOf: ['#vehicle', '#part-drum', '#part-nuts', '#part-jack'],
        surrenderedBy: '#person-ruth',
        receivedBy: '#person-edda',
        timeSpan: expect.objectContaining({ began: '2031-03-01' }),
      }),
    ]);
  });

  test('in a copy without names is one from the first keeper to the second', () => {
    const copy = copyOf(record, 'public');
    expect([keeperAt(copy, '2031-02-28'), keeperAt(copy, null)]).toEqual(['keeper-1', 'keeper-2']);
    expect(JSON.stringify(linkedData(copy))).not.toMatch(/ruth|edda|4200|420000/i);
    expect(stayed(copy)).toEqual({ 'hose-new': 'keeper-1', badge: 'keeper-1' });
  });
});

describe('what was private', () => {
  const privates = ({ journal }: JournalRecord) => [
    ...[...journal.parts.values()].flatMap((part) => part.private ?? []),
    ...journal.sessions.flatMap((session) => session.private ?? []),
  ];

  test('to a former keeper is not in the copy of the present one, whose own is', () => {
    const copy = copyOf(record, 'keeper');
    expect(privates(copy)).toEqual(['The shed roof leaks over the offside.']);
    expect(
      withheldTexts(record, copy)
        .map(({ text }) => text)
        .sort(),
    ).toEqual(['He beat me down over the price of the van.', 'I never liked this drum.', 'I would have taken less.']);
    expect(privates(copyOf(record, 'workshop'))).toHaveLength(4);
  });

  test('before any hand-over is not in a copy for whoever comes next', () => {
    const before = compileJournal(loadJournal(FOLDER), { today: '2031-12-31', to: '2031-02-28' }).record as JournalRecord;
    expect(privates(copyOf(before, 'keeper'))).toEqual([]);
    expect(privates(copyOf(before, 'workshop'))).toHaveLength(2);
  });
});

describe('a loan', () => {
  const evening = (date: string, fields: string) =>
    [`sessions/${date}-evening.md`, `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`] as const;
  const lent = compileFiles({
    journal: `${JOURNAL}keeper: rh\n`,
    more: Object.fromEntries([
      evening('2031-03-01', 'parts: [{ part: drum, did: removed, to: shelf A1 }]\nprivate: Mine before'),
      evening('2031-04-01', 'handed-over: [{ to: jm, how: lent }]'),
      evening('2031-05-01', 'private: His meanwhile'),
      evening('2031-06-01', 'handed-over: [{ to: rh, how: returned }]'),
    ]),
  }).record as JournalRecord;

  test('takes nothing along that is not named, and what stayed is with the keeper again when the vehicle is back', () => {
    expect(stayed(lent, '2031-05-01')).toMatchObject({ drum: 'rh', 'drum-donor': 'rh' });
    expect(stayed(lent)).toEqual({});
    expect(keeperAt(lent, '2031-05-01')).toBe('jm');
  });

  test('leaves the keeper his own private matter, and not the borrower’s', () => {
    const copy = copyOf(lent, 'keeper');
    expect(copy.journal.sessions.flatMap((session) => session.private ?? [])).toEqual(['Mine before']);
  });
});

test('what is moved after a hand-over is with whoever keeps the vehicle then', () => {
  const { record: moved } = compileFiles({
    journal: `${JOURNAL}keeper: rh\n`,
    more: {
      'sessions/2031-03-01-sold.md': '---\ndate: 2031-03-01\ntitle: Sold\nhanded-over: [{ to: jm, how: sold }]\n---\n',
      'sessions/2031-04-01-came.md':
        '---\ndate: 2031-04-01\ntitle: It came\nparts: [{ part: drum-donor, did: stored, to: shelf A1, note: He sent it after. }]\n---\n',
    },
  }) as { record: JournalRecord };
  const where = { at: 'stores', store: 'shelf B2' } as const;
  expect(stayedWith(moved, 'drum-donor', where, '2031-03-31')).toEqual({ keeper: 'rh', since: '2031-03-01' });
  expect(stayed(moved)).not.toHaveProperty('drum-donor');
});

describe('the place of what stayed behind', () => {
  const lot = (away: string) =>
    compileFiles({
      journal: `${JOURNAL}keeper: rh\n`,
      parts: `${PARTS}- { id: caps, name: Caps, count: 4, origin: donor }\n`,
      more: {
        'sessions/2031-02-01-off.md': `---\ndate: 2031-02-01\ntitle: Off\nparts: [{ part: caps, did: removed, to: shelf A1 }${away}]\n---\n`,
        'sessions/2031-03-01-sold.md': '---\ndate: 2031-03-01\ntitle: Sold\nhanded-over: [{ to: jm, how: sold }]\n---\n',
        'sessions/2031-03-02-two.md':
          '---\ndate: 2031-03-02\ntitle: Two came after\nparts: [{ part: caps, did: stored, count: 1, to: shelf B2 }]\n---\n',
      },
    }).record as JournalRecord;
  const outcomeOf = (of: JournalRecord, place: string, at: string | null) => registerRowAt(of, place, at).outcome;

  test('is empty because it is not here, and not off for now', () => {
    expect(outcomeOf(record, 'badge', '2031-02-28')).toEqual({ kind: 'off-for-now', words: 'found loose, not fitted since' });
    expect(outcomeOf(record, 'badge', null)).toEqual({ kind: 'stayed-behind', words: 'stayed behind' });
    expect(placeStateOf(registerRowAt(record, 'badge', null))).toMatchObject({ kind: 'missing', words: 'stayed behind, undecided' });
  });

  test('of a lot is told of as many as are not here', () => {
    const gone = lot(', { part: caps, did: gone, how: lost, count: 1 }');
    expect(outcomeOf(gone, 'caps', '2031-02-28').words).toBe('off for now, 1 of 4 gone');
    expect(outcomeOf(gone, 'caps', '2031-03-01')).toEqual({ kind: 'stayed-behind', words: 'stayed behind, 1 of 4 gone' });
    expect(outcomeOf(gone, 'caps', null)).toEqual({ kind: 'off-for-now', words: 'off for now, 2 of 4 stayed behind, 1 of 4 gone' });
  });
});

describe('what stayed behind', () => {
  test('is with whom it stayed in every row that says where it is, and not on a shelf of the new keeper', () => {
    expect(registerRowAt(record, 'badge', null).originals[0]?.stayed).toBe('with Ruth Haskell-Dray, where it stayed behind');
    expect(registerRowAt(record, 'badge', '2031-02-28').originals[0]?.stayed).toBeNull();
    expect(registerCsv(record)).toContain('"1 badge with Ruth Haskell-Dray, where it stayed behind (shelf A1)"');
    expect(registerCsv(record, '2031-02-28')).toContain('"1 badge in stores, shelf A1"');
    expect(whereaboutsCsv(record)).toContain('badge,original,1,stayed behind,shelf A1,');
    expect(thingsOf(record).find(({ id }) => id === 'badge')?.now).toBe('with Ruth Haskell-Dray, where it stayed behind (shelf A1)');
  });

  test('is not among the parts that a new note offers to be worked on', () => {
    const off = openMatters(record).join('\n');
    expect(off).toContain('drum-spare: in stores, shelf A1');
    expect(off).not.toContain('badge');
  });

  test('is no longer in the custody of the workshop', () => {
    expect(partTimeline(record, 'badge').custody.map(({ custody, from, to }) => [custody, from.date, to?.date ?? null])).toEqual([
      [{ by: 'workshop' }, '2031-01-05', '2031-03-01'],
      [{ by: 'former-keeper', who: 'Ruth Haskell-Dray' }, '2031-03-01', null],
    ]);
  });
});

test('what is to be fitted and stayed behind is told to be with who has it, from the day of the hand-over', () => {
  const { record: sold } = compileFiles({
    journal: `${JOURNAL}keeper: rh\n`,
    more: {
      'sessions/2031-02-01-off.md': `---
date: 2031-02-01
title: Off, and the other on
parts: [{ part: drum, did: removed, to: shelf A1 }, { part: drum-donor, did: fitted }]
decisions: [{ part: drum, verdict: keep, because: It is ours. }]
---
`,
      'sessions/2031-03-01-sold.md': '---\ndate: 2031-03-01\ntitle: Sold\nhanded-over: [{ to: jm, how: sold, stays: [drum] }]\n---\n',
    },
  }) as { record: JournalRecord };
  const settles = (at: string | null) => mismatchesAt(sold, at).map(({ settle }) => settle[0]);
  expect(settles('2031-02-28')).toEqual(['Fit Front brake drum: it is in stores, shelf A1.']);
  expect(settles(null)).toEqual(['Fit Front brake drum: it is with Ruth, where it stayed behind (shelf A1).']);
});

test('a spare that stayed with the old keeper is no candidate, and asks for no decision', () => {
  const outcomes = (goes: string) => {
    const more = { 'sessions/2031-03-12.md': `---\ndate: 2031-03-12\ntitle: Sold\nhanded-over: [{ to: jm, how: sold${goes} }]\n---\n` };
    const { record: of, diagnostics } = compileFiles({ journal: `${JOURNAL}keeper: rh\n`, parts: PARTS, more });
    expect(diagnostics).toEqual([]);
    return ['2031-03-11', null].map((at) => registerRowAt(of as JournalRecord, 'drum', at).undecided);
  };
  expect(outcomes(', goes: [drum-donor]')).toEqual([1, 1]);
  expect(outcomes('')).toEqual([1, 0]);
});
