/**
 * Evenings over a workshop with assemblies, numbered lots, a bag that was full at the start, loans and things made into
 * others: most entries can be, and what the second opinion refuses is taken out. So what is left is right by the rules
 * of the format, whatever the record thinks of it.
 */
import * as fc from 'fast-check';
import type { ActionWord, Journal, Place, Session } from '../../src/journal/model.ts';
import { addDays } from '../../src/journal/values/date.ts';
import { ARRIVED, decide, did, type Evening, evening, journal, part } from '../builders/journal.ts';
import { Items } from './items.ts';
import { inOrder, secondOpinion } from './opinion.ts';

const COMES = '2030-10-05';

const PARTS = [
  part('engine'),
  part('engine-spare', { for: 'engine', store: 'loft' }),
  part('magneto', { inside: 'engine' }),
  part('magneto-other', { for: 'magneto', found: 'considered' }),
  part('magneto-spare', { for: 'magneto', within: 'engine-spare' }),
  part('coupling', { inside: 'magneto' }),
  part('engine-heard-of', { for: 'engine', found: 'considered' }),
  part('magneto-heard-of', { for: 'magneto', within: 'engine-heard-of' }),
  part('panel', { subsystem: 'frame' }),
  part('letters', { inside: 'panel', count: 3, missing: 1, subsystem: 'frame' }),
  part('wheels', { count: 4, numbered: 'I to IIII, front to back', missing: 1, missingWhich: [3] }),
  part('wheels-new', { for: 'wheels', count: 2, origin: 'new', found: 'considered' }),
  part('bolts', { count: 6, missing: 2, found: 'loose', bag: 3 }),
  part('lamp', { found: 'missing', origin: null }),
  part('lamp-made', { for: 'lamp', origin: 'made', found: 'considered' }),
  part('heater', { acquired: COMES, store: 'shelf A1', found: 'loose', origin: 'period' }),
];
const IDS = PARTS.map(({ id }) => id);
/** What is worth trying more often than chance would. */
const ASSEMBLED = IDS.filter((id) => /^(?:engine|magneto|coupling)/.test(id));
/** What holds the inner positions. */
const HOLDERS = new Map([
  ['magneto', ['engine', 'engine-spare']],
  ['coupling', ['magneto', 'magneto-other']],
]);
const ITEMS = ['bleed', 'cap', 'prop', 'ask'];
const MILESTONES = ['stripped', 'first-start', 'road-test'];
const STORES = ['shelf A1', 'shelf B2', 'loft', 'bag 1', 'bag 2', 'bag 3'];

/** What an entry did, and which places it may name. */
const DEEDS: readonly (readonly [words: readonly ActionWord[], to: readonly string[]])[] = [
  [['removed'], STORES],
  [['removed'], STORES],
  [['removed', 'inspected'], STORES],
  [['fitted'], []],
  [['fitted'], []],
  [['cleaned', 'fitted'], []],
  [['removed', 'repaired', 'fitted'], []],
  [['stored'], STORES],
  [['removed', 'sent-out'], ['the plater']],
  [['sent-out'], ['the plater', 'a friend']],
  [['returned'], STORES],
  [['returned', 'refinished', 'fitted'], []],
  [['acquired'], STORES],
  [['made'], ['loft']],
  [['gone'], []],
  [['repaired'], []],
  [['conserved'], []],
  [['inspected'], []],
];

const entry = fc
  .record({
    id: fc.oneof(fc.constantFrom(...IDS), fc.constantFrom(...ASSEMBLED)),
    deed: fc.constantFrom(...DEEDS),
    place: fc.nat(20),
    unsaid: fc.boolean(),
    many: fc.option(fc.integer({ min: 1, max: 6 })),
    which: fc.uniqueArray(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 3 }),
    into: fc.option(fc.nat(1), { freq: 4 }),
    how: fc.constantFrom('scrapped', 'sold', 'lost'),
    from: fc.option(fc.constant('a seller')),
    asWas: fc.option(fc.boolean()),
  } as const)
  .map(({ id, deed: [words, places], place, unsaid, many, which, into, how, from, asWas }) => {
    const of = PARTS.find((one) => one.id === id);
    const to = places[place % Math.max(1, places.length)];
    const optional =
      words.at(-1) === 'removed' || words.at(-1) === 'inspected' || words.at(-1) === 'acquired' || words.at(-1) === 'returned';
    const numbers = of?.numbered ? [...which].sort((a, b) => a - b) : null;
    const holders = HOLDERS.get(of?.position ?? '');
    const several = (of?.count ?? 1) > 1;
    return did(id, words, {
      ...(to === undefined || (unsaid && optional) ? {} : { to }),
      ...(numbers ? { which: numbers, count: numbers.length } : several && many !== null ? { count: many } : {}),
      ...(words.includes('fitted') && into !== null && holders ? { into: [holders[into] as string] } : {}),
      // Of a lot that is only counted nobody knows which of them it is said of.
      ...(words.includes('fitted') && asWas !== null && (numbers || !several) ? { asWas, note: 'Turned.' } : {}),
      ...(words.includes('gone') ? { how } : {}),
      ...(to?.includes('plater') ? { work: 'Nickel' } : {}),
      ...(words.includes('acquired') && from !== null ? { from } : {}),
    });
  });

const decision = fc
  .record({
    id: fc.constantFrom('engine', 'magneto', 'wheels', 'bolts', 'letters', 'panel'),
    verdict: fc.constantFrom('keep', 'conserve', 'repair', 'omit', 'defer'),
    count: fc.option(fc.integer({ min: 1, max: 4 })),
  } as const)
  .map(({ id, verdict, count }) => {
    const most = PARTS.find((one) => one.id === id)?.count ?? 1;
    return decide(id, verdict, count === null || count > most || id === 'wheels' ? {} : { count });
  });

const item = fc.constantFrom(...ITEMS);
const milestone = fc.constantFrom(...MILESTONES);
const some = <T>(of: fc.Arbitrary<T>) => fc.array(of, { maxLength: 1 });

const work = fc
  .record({
    parts: fc.array(entry, { minLength: 4, maxLength: 20, size: 'max' }),
    decisions: some(decision),
    off: fc.option(fc.constantFrom('coupling', 'letters', 'magneto')),
    emptied: some(fc.integer({ min: 1, max: 3 })),
    opens: some(fc.record({ id: item, kind: fc.constantFrom('task', 'temporary'), before: milestone } as const)),
    closes: some(item),
    defers: some(fc.record({ id: item, to: milestone })),
    reached: some(fc.record({ milestone, because: fc.constant('x') })),
  })
  .map(({ off, ...fields }) => {
    const named = fields.parts.flatMap(({ to }) => to?.bag ?? []);
    const bags = [...new Set(off === null ? named : [...named, 2])].map((bag) => (off !== null && bag === 2 ? { bag, off } : bag));
    return { ...fields, bags };
  });

const evenings: fc.Arbitrary<Evening[]> = fc
  .array(fc.record({ day: fc.integer({ min: 0, max: 60 }), work }), { minLength: 4, maxLength: 24, size: 'max' })
  .map((list) => list.map(({ day, work: fields }, n) => evening(addDays(ARRIVED, day), fields, n === 0 ? 'work' : `work-${n}`)));

/** Journals with nothing in them that the second opinion refuses. */
export const seasons: fc.Arbitrary<Journal> = evenings.map((list) => {
  let sound = journal({ parts: PARTS, evenings: list });
  for (;;) {
    sound = { ...sound, sessions: owningUp(sound) };
    const { refused: told, leftOpen } = secondOpinion(sound);
    const refused = new Set([...told, ...leftOpen.filter(({ of }) => of === 'places')].map(({ place }) => lineOf(place)));
    if (refused.size === 0) return sound;
    sound = without(sound, refused);
  }
});

/** Every milestone is reached with all that is open before it owned up to. */
function owningUp(of: Journal): Session[] {
  const items = new Items(of);
  return of.sessions
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : inOrder(a, b)))
    .map((session, tick) => {
      items.evening({ ...session, reached: [] }, { date: session.date, session: session.id, tick });
      return { ...session, reached: session.reached.map((one) => ({ ...one, withOpen: items.holding(one.milestone) })) };
    });
}

const lineOf = ({ file, line }: Place): string => `${file}:${line}`;

function without(of: Journal, refused: ReadonlySet<string>): Journal {
  const stands = ({ place }: { readonly place: Place }) => !refused.has(lineOf(place));
  const sessions = of.sessions.map((session) => ({
    ...session,
    parts: session.parts.filter(stands),
    bags: session.bags.filter(stands),
    emptied: session.emptied.filter(stands),
    opens: session.opens.filter(stands),
    closes: session.closes.filter(stands),
    defers: session.defers.filter(stands),
    reached: session.reached.filter(stands),
  }));
  return { ...of, sessions };
}
