/** Random event streams over a small workshop: most entries make sense, many do not. */
import * as fc from 'fast-check';
import { ACTIONS, type ActionWord, type IsoDate, type Journal, type Place, VERDICTS } from '../../src/journal/model.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { addDays } from '../../src/journal/values/date.ts';
import { ARRIVED, decide, did, type Evening, evening, journal, part } from './journal.ts';
import { clip, picture } from './observed.ts';

export const PARTS = [
  part('drum', { components: ['axles'] }),
  part('drum-spare', { for: 'drum', store: 'shelf B2' }),
  part('drum-new', { for: 'drum', origin: 'reproduction', acquired: '2030-10-05', store: 'loft' }),
  part('drum-heard-of', { for: 'drum', origin: 'period', found: 'considered' }),
  part('studs', { count: 6, missing: 1 }),
  part('studs-new', { for: 'studs', origin: 'new', count: 4, found: 'considered' }),
  part('plate', { found: 'missing', subsystem: 'frame' }),
  part('tickets', { found: 'loose', store: 'loft', count: 3, subsystem: 'frame' }),
];
const IDS = PARTS.map(({ id }) => id);
const PLACES = ['shelf A1', 'shelf B2', 'loft', 'bag 1', 'bag 2', 'bag 3', 'the brake works', 'nowhere'];
const MILESTONES = ['stripped', 'first-start', 'road-test'];

const words = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom<ActionWord[]>(['removed'], ['fitted'], ['removed', 'inspected'], ['cleaned', 'fitted'], ['stored']),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom<ActionWord[]>(
      ['sent-out'],
      ['returned'],
      ['acquired'],
      ['made'],
      ['gone'],
      ['repaired'],
      ['removed', 'fitted'],
    ),
  },
  { weight: 1, arbitrary: fc.uniqueArray(fc.constantFrom(...ACTIONS), { minLength: 1, maxLength: 3 }) },
);

const entry = fc
  .record(
    {
      id: fc.constantFrom(...IDS),
      words,
      count: fc.integer({ min: 1, max: 6 }),
      to: fc.constantFrom(...PLACES),
      from: fc.constantFrom(...PLACES, 'drum', 'studs'),
      at: fc.constantFrom('drum', 'studs', 'plate'),
      how: fc.constantFrom('scrapped', 'lost'),
      marks: fc.constant('C 4417'),
    } as const,
    { requiredKeys: ['id', 'words'] },
  )
  .map(({ id, words: list, ...fields }) => {
    const moves = list.some((word) => ['removed', 'stored', 'sent-out', 'returned', 'acquired', 'made'].includes(word));
    const { to, from, at, how, ...rest } = fields;
    return did(id, list, {
      ...rest,
      ...(how !== undefined && list.includes('gone') ? { how } : {}),
      ...(moves && to !== undefined ? { to } : {}),
      ...(from !== undefined && (fields.count ?? 0) > 3 ? { from } : {}),
      ...(at !== undefined && list.includes('fitted') && (fields.count ?? 0) > 4 ? { at } : {}),
    } as Parameters<typeof did>[2]);
  });

const decision = fc
  .record({ id: fc.constantFrom(...IDS), verdict: fc.constantFrom(...VERDICTS), count: fc.option(fc.integer({ min: 1, max: 6 })) })
  .map(({ id, verdict, count }) => {
    const other = id === 'studs' ? 'studs-new' : 'drum-new';
    return decide(id, verdict, { ...(count === null ? {} : { count }), with: verdict === 'replace' ? other : null });
  });

const work = fc.record({
  parts: fc.array(entry, { maxLength: 5 }),
  decisions: fc.array(decision, { maxLength: 2 }),
  pictures: fc.array(
    fc.constantFrom(...IDS).map((id) => picture(`${id}.jpg`, [id])),
    { maxLength: 1 },
  ),
  film: fc.array(
    fc.constantFrom(...IDS).map((id) => clip('reel.mp4', [[12, [id]]])),
    { maxLength: 1 },
  ),
  bags: fc.uniqueArray(fc.integer({ min: 1, max: 3 }), { maxLength: 1 }),
  emptied: fc.uniqueArray(fc.integer({ min: 1, max: 3 }), { maxLength: 1 }),
  opens: fc.array(fc.record({ id: fc.constantFrom('bleed', 'cap', 'prop'), before: fc.constantFrom(...MILESTONES, null) }), {
    maxLength: 1,
  }),
  closes: fc.array(fc.constantFrom('bleed', 'cap', 'prop'), { maxLength: 1 }),
  defers: fc.array(fc.record({ id: fc.constantFrom('bleed', 'cap', 'prop'), to: fc.constantFrom(...MILESTONES) }), { maxLength: 1 }),
  reached: fc.array(
    fc.record({ milestone: fc.constantFrom(...MILESTONES), withOpen: fc.constant(['bleed', 'cap', 'prop']), because: fc.constant('x') }),
    { maxLength: 1 },
  ),
});

/** Up to sixteen evenings over four months; some on one day. */
export const evenings: fc.Arbitrary<Evening[]> = fc
  .array(fc.record({ day: fc.integer({ min: 0, max: 120 }), work }), { maxLength: 16 })
  .map((list) =>
    list.map(({ day, work: fields }, index) => evening(addDays(ARRIVED, day), fields, `work-${String(index).padStart(2, '0')}`)),
  );

export const journals: fc.Arbitrary<Journal> = evenings.map((list) => journal({ parts: PARTS, evenings: list }));

/** A day within the time of the evenings. */
export const days: fc.Arbitrary<IsoDate> = fc.integer({ min: 0, max: 130 }).map((day) => addDays(ARRIVED, day));

/** Journals of which nothing is told: entries that cannot be are taken out, until none is left. */
export const soundJournals: fc.Arbitrary<Journal> = journals.map((of) => {
  let sound = of;
  for (;;) {
    const told = new Set(replay(sound).diagnostics.map(({ place }) => `${place.file}:${place.line}`));
    if (told.size === 0) return sound;
    const stands = ({ place }: { readonly place: Place }) => !told.has(`${place.file}:${place.line}`);
    // What is told of a note as a whole is told at its date.
    const whole = sound.sessions.filter(({ file, datePlace }) => !told.has(`${file}:${datePlace?.line}`));
    const sessions = whole.map((session) => ({
      ...session,
      parts: session.parts.filter(stands),
      decisions: session.decisions.filter(stands),
      bags: session.bags.filter(stands),
      emptied: session.emptied.filter(stands),
      opens: session.opens.filter(stands),
      closes: session.closes.filter(stands),
      defers: session.defers.filter(stands),
      reached: session.reached.filter(stands),
    }));
    sound = { ...sound, sessions };
  }
});
