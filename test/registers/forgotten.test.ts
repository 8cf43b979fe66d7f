/** What the notes leave out, and that what is offered to write there, written there, makes it good. */
import { describe, expect, test } from 'vitest';
import { type ForgottenKind, forgottenAt, type Missed } from '../../src/journal/registers/forgotten/forgotten.ts';
import { compileFiles, NOTE, note, PARTS } from '../journal/base.ts';

const OTHER_BILL = 'bought: [{ what: Tyres, for: drum, cost: 9.00, from: a shop, paper: bill.pdf }]';
const ASSETS = ['sessions/2031-03-12-brakes/hub.jpg', 'sessions/2031-03-12-brakes/reel.mp4', 'papers/bill.pdf'];
const BEFORE = 'sessions/2031-03-01-off.md';

function recordOf(fields: string, prose = '', before = '', parts = PARTS) {
  const earlier = before === '' ? {} : { [BEFORE]: `---\ndate: 2031-03-01\ntitle: Off\n${before}\n---\n` };
  const { record, diagnostics } = compileFiles({ parts, more: { ...earlier, [NOTE]: note(fields, prose) }, assets: ASSETS });
  expect(diagnostics.filter(({ severity }) => severity === 'error').map(({ code, message }) => `${code} ${message}`)).toEqual([]);
  if (!record) throw new Error('no record');
  return record;
}

function missedOf(kind: ForgottenKind, record: ReturnType<typeof recordOf>): readonly Missed[] {
  return forgottenAt(record, null).find((one) => one.kind === kind)?.missed ?? [];
}

interface Row {
  readonly kind: ForgottenKind;
  readonly before?: string;
  readonly parts?: string;
  /** The fields of the note, with what is written into them to make it good. */
  readonly fields: (write: string) => string;
  readonly prose?: (write: string) => string;
  readonly about: object;
  readonly lacks: string;
  /** The line of the note; null where another file is pointed to. */
  readonly line: number | null;
  /** What only the writer knows. */
  readonly knows?: string;
}

const OFF = 'parts: [{ part: drum, did: removed, to: shelf A1, goes-back: "dot uppermost", marks: C 4417 }]';
/** One that nobody has brought. */
const WITH_A_CANDIDATE = `${PARTS}- { id: plate-bought, name: Another plate, origin: new, for: splash-plate }\n`;
const inEntry = (write: string): string => (write === '' ? '' : `, ${write}`);

const ROWS: readonly Row[] = [
  {
    kind: 'unrecorded',
    fields: (write) => `parts:\n  - { part: drum, did: removed, to: shelf A1${inEntry(write)} }`,
    about: { part: 'drum' },
    lacks: 'came off without marks or a picture; off now',
    line: 5,
    knows: 'none',
  },
  {
    kind: 'not-confirmed',
    before: OFF,
    fields: (write) => `parts:\n  - { part: drum, did: fitted${inEntry(write)} }`,
    about: { part: 'drum' },
    lacks: 'went back, and nobody said whether as it was',
    line: 5,
  },
  {
    kind: 'fasteners',
    fields: (write) =>
      `parts: [{ part: studs, did: removed, to: bag 14 }]\nbags:\n  - { bag: 14, ${write || 'holds: [3 studs 3/8 BSF]'}, off: studs }`,
    about: { bag: 14 },
    lacks: 'had 5 of Wheel studs put into it, and 3 are written on it',
    line: 6,
  },
  {
    kind: 'fasteners',
    fields: (write) =>
      `parts: [{ part: drum, did: removed, stack: [nut, spring washer, drum] }]\nbags:\n  - { bag: 14, ${write || 'holds: [5 nuts]'}, off: drum }`,
    about: { bag: 14 },
    lacks: 'names no spring washer, nor does any bag of that evening: one came off with Front brake drum',
    line: 6,
  },
  {
    kind: 'full-bags',
    before: 'parts: [{ part: studs, did: removed, to: bag 14 }]\nbags: [{ bag: 14, holds: [5 studs], off: studs }]',
    fields: (write) => `parts:\n  - { part: studs, did: fitted }\n${write}`,
    about: { bag: 14 },
    lacks: 'counts as filled: what came off is back, and no note says that the bag was emptied',
    line: 5,
  },
  {
    kind: 'full-bags',
    before: 'parts: [{ part: studs, did: removed, to: bag 14 }]',
    fields: (write) => `parts:\n  - { part: studs, did: sent-out, to: the plater, work: plated }\n${write}`,
    about: { bag: 14 },
    lacks: 'counts as filled: all that was in it went elsewhere, and no note says that the bag was emptied',
    line: 5,
  },
  {
    kind: 'bills',
    fields: (write) => `bought:\n  - { what: Split pins, from: a merchant, cost: 4.20${inEntry(write)} }`,
    about: { name: 'Split pins (from a merchant)' },
    lacks: 'names no paper',
    line: 5,
    knows: 'bill.pdf',
  },
  {
    kind: 'pictures',
    fields: (write) => `pictures:\n  - { file: hub.jpg${inEntry(write)} }`,
    about: { name: 'hub.jpg' },
    lacks: 'has neither a caption nor an alternative text',
    line: 5,
    knows: 'The hub.',
  },
  {
    kind: 'pictures',
    fields: (write) => (write === '' ? '' : `pictures:\n  ${write}`.replace('[The hub.]', '[drum]')),
    about: { name: 'hub.jpg' },
    lacks: 'lies by the note, and nothing says what it shows',
    line: 1,
    knows: 'The hub.',
  },
  {
    kind: 'clips',
    fields: (write) => `film:\n  - { clip: reel.mp4${inEntry(write)} }`,
    about: { name: 'reel.mp4' },
    lacks: 'has no marks: nothing says which part it shows, and when',
    line: 5,
    knows: 'drum',
  },
  {
    kind: 'clips',
    fields: (write) => (write === '' ? '' : `film:\n  ${write.replace('"0:00": …', '"0:00": drum')}`),
    about: { name: 'reel.mp4' },
    lacks: 'lies by the note, which does not name it: nobody sees it',
    line: 1,
    knows: 'drum',
  },
  {
    kind: 'reasons',
    fields: (write) => `decisions:\n  - { part: drum, verdict: keep${inEntry(write)} }`,
    about: { part: 'drum' },
    lacks: 'was decided on (keep), and nobody said why',
    line: 5,
    knows: 'Sound.',
  },
  {
    kind: 'past-due',
    before: 'opens: [{ id: shoe, kind: waiting, what: A shoe, from: a maker, due: 2031-03-05 }]',
    fields: (write) => write,
    about: { item: 'shoe' },
    lacks: 'was promised by a maker for 2031-03-05, which is past',
    line: null,
    knows: 'It came.',
  },
  {
    kind: 'past-due',
    before: 'parts: [{ part: drum-donor, did: sent-out, to: a plater, due: 2031-03-05 }]',
    fields: (write) => (write === '' ? '' : `parts:\n  ${write}`),
    about: { part: 'drum-donor' },
    lacks: 'is out with a plater, due back on 2031-03-05, which is past',
    line: null,
    knows: 'shelf B2',
  },
  {
    kind: 'bought',
    parts: WITH_A_CANDIDATE,
    before: 'bought: [{ what: A plate, as: part, for: plate-bought, cost: 42.00, from: a maker }]',
    fields: (write) => (write === '' ? '' : `parts:\n  ${write}`),
    about: { part: 'plate-bought' },
    lacks: 'was bought (A plate), and no note says that it came here',
    line: null,
    knows: 'shelf B2',
  },
  {
    kind: 'named',
    fields: () => 'hours: [{ by: rh, on: brakes, time: 1h }]',
    prose: (write) => `Looked at it.\n\nThe ${write || 'splash plate'} is still missing.\n`,
    about: { part: 'splash-plate' },
    lacks: 'came up in the prose, and in no field or link',
    line: 8,
    knows: 'splash plate',
  },
];

describe('what a note leaves out is shown with its place, and what is offered makes it good', () => {
  test.each(ROWS)('$kind: $lacks', ({ kind, before, parts, fields, prose = () => '', about, lacks, line, knows = '' }) => {
    const [missed, ...more] = missedOf(kind, recordOf(fields(''), prose(''), before, parts));
    expect(more).toEqual([]);
    expect(missed).toMatchObject({ about, lacks, place: line === null ? { file: BEFORE } : { file: NOTE, line } });
    const write = (missed?.write ?? '').replaceAll('…', knows);
    expect(missedOf(kind, recordOf(fields(write), prose(write), before, parts))).toEqual([]);
  });

  test('a candidate that nobody decided on', () => {
    const all = missedOf('undecided', recordOf(''));
    expect(all.map(({ about, lacks }) => [about, lacks])).toEqual([
      [{ part: 'drum' }, 'has a candidate (Spare drum) and no verdict'],
      [{ part: 'studs' }, 'has a candidate (New shoe) and no verdict'],
    ]);
    const written = all.map(({ write }) => `  ${write.replace('…', 'It is better.')}`);
    expect(missedOf('undecided', recordOf(`decisions:\n${written.join('\n')}`))).toEqual([]);
  });

  describe('of a lot', () => {
    const some = 'decisions: [{ part: studs, verdict: replace, with: shoe-new, count: 1, because: Threads pulled. }]';
    const ofStuds = (fields: string, parts = PARTS) =>
      missedOf('undecided', recordOf(fields, '', '', parts)).find(({ about }) => 'part' in about && about.part === 'studs');
    const three = PARTS.replace('- id: shoe-new\n', '- id: shoe-new\n  count: 3\n');

    test('on some of which there is a verdict, it is said on how many there is none', () => {
      expect(ofStuds(some, three)?.lacks).toBe('has a candidate (New shoe), and on 4 of 5 no verdict');
    });

    test('no more are offered to be replaced than there are of what is to stand in', () => {
      expect(ofStuds('')?.write).toContain('with: shoe-new, count: 1,');
      expect(ofStuds('', three)?.write).toContain('with: shoe-new, count: 3,');
      expect(ofStuds(some, three)?.write).toContain('with: shoe-new, count: 2,');
      expect(ofStuds('', PARTS.replace('- id: shoe-new\n', '- id: shoe-new\n  count: 5\n'))?.write).toContain('with: shoe-new, because:');
    });

    test('a candidate that a decision has used up is not offered for the others', () => expect(ofStuds(some)).toBeUndefined());
  });

  test('of a question that was put off with its reason nothing is forgotten', () => {
    const missed = missedOf('undecided', recordOf('decisions: [{ part: drum, verdict: defer, because: After the road test. }]'));
    expect(missed.map(({ about }) => about)).toEqual([{ part: 'studs' }]);
  });
});

describe('what was bought and never said to have come', () => {
  const bought = 'bought: [{ what: A plate, as: part, for: plate-bought, cost: 42.00, from: a maker }]';
  const names = (fields: string, before = bought) =>
    missedOf('bought', recordOf(fields, '', before, WITH_A_CANDIDATE)).map(({ about }) => about);
  test.each([
    ['is told while nothing else is said', 'hours: [{ by: rh, on: brakes, time: 1h }]', 1],
    [
      'not while somebody is waited for',
      'opens: [{ id: plate-comes, kind: waiting, what: The plate, on: plate-bought, from: a maker }]',
      0,
    ],
    [
      'not once the money came back',
      'bought: [{ what: A plate, as: part, for: plate-bought, cost: -42.00, from: a maker, refund: Not theirs to sell., refund-of: 2031-03-01 }]',
      0,
    ],
    [
      'but where only some of it did',
      'bought: [{ what: A plate, as: part, for: plate-bought, cost: -2.00, from: a maker, refund: Carriage., refund-of: 2031-03-01 }]',
      1,
    ],
    ['not of work on it by a firm', 'hours: [{ by: rh, on: brakes, time: 1h }]', 0, bought.replace('as: part', 'as: outside-work')],
    ['nor of what lies here from the start', '', 0, bought.replace('plate-bought', 'drum-donor')],
  ] as const)('%s', (_, fields, count, before = bought) => expect(names(fields, before)).toHaveLength(count));
});

describe('names in prose', () => {
  const named = (prose: string, fields = '') =>
    missedOf('named', recordOf(fields, prose)).map(({ about, place }) => [about, place.line, place.column]);

  test.each([
    ['capitals and line ends do not matter', 'FRONT brake\ndrum it is.', [[{ part: 'drum' }, 6, 1]]],
    ['a name does not run over the end of a sentence', 'In front. Brake drum off. Spare: drum.', []],
    ['a link, a field, or code names it well enough', '[Spare drum](part:drum-donor), `splash plate`, ![a](hub.jpg "splash")', []],
    ['within a longer word there is no name', 'The spare drums.', []],
    ['it is told once a note', 'A new shoe. That new shoe.', [[{ part: 'shoe-new' }, 6, 3]]],
  ])('%s', (_, prose, found) => expect(named(prose)).toEqual(found));

  test('a part that a field touches is not told', () => {
    expect(named('The spare drum.', 'parts: [{ part: drum-donor, did: cleaned }]')).toEqual([]);
  });

  test('of a name that several share nothing is said, and before a comma is a name', () => {
    const parts = ['near', 'off'].map((side) => `- { id: hub-${side}, name: "Front hub, ${side}side", origin: original }\n`).join('');
    const more = { [NOTE]: note('', 'The front hub, offside. The front hub. The tie rod, and the tie.') };
    const { record } = compileFiles({ parts: `${parts}- { id: rod, name: "Tie rod, steering", origin: original }\n`, more });
    const missed = record ? missedOf('named', record) : [];
    expect(missed.map(({ about }) => about)).toEqual([{ part: 'hub-off' }, { part: 'rod' }]);
  });
});

test('on an earlier day only what was left out by then counts', () => {
  const record = recordOf('decisions: [{ part: drum, verdict: keep }]');
  const counts = (day: string | null) =>
    forgottenAt(record, day).flatMap(({ kind, missed }) => (missed.length > 0 ? `${kind} ${missed.length}` : []));
  expect(counts(null)).toEqual(['pictures 1', 'clips 1', 'reasons 1', 'undecided 1']);
  expect(counts('2031-03-11')).toEqual(['undecided 2']);
});

test('a bill without paper is called by its lines, which may have commas and `and` in them, so many as it has', () => {
  const lines = ['Hoses, all, and clips', 'Washers and pins', 'Grease', 'Cord', 'Tape'].map(
    (what) => `{ what: "${what}", for: drum, cost: 1.00 }`,
  );
  const called = (n: number, more = '') =>
    missedOf('bills', recordOf(`bills: [{ lines: [${lines.slice(0, n).join(', ')}]${more} }]`)).map(({ about }) => about);
  expect(called(2)).toEqual([{ name: 'Hoses, all, and clips; Washers and pins' }]);
  expect(called(5, ', from: "Pike, Son and Co."')).toEqual([
    { name: 'Hoses, all, and clips; Washers and pins; Grease; 2 more (from Pike, Son and Co.)' },
  ]);
});

test('a receipt that a bill of another note names is offered for no other bill', () => {
  const fields = 'bought: [{ what: Cotter, for: drum, cost: 2.40 }]\npapers: [{ paper: bill.pdf, kind: receipt }]';
  expect(missedOf('bills', recordOf(fields)).map(({ write }) => write)).toEqual(['paper: bill.pdf']);
  expect(missedOf('bills', recordOf(fields, '', OTHER_BILL)).map(({ write }) => write)).toEqual(['paper: …']);
});
