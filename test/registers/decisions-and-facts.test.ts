import { describe, expect, test } from 'vitest';
import { contradictions } from '../../src/journal/registers/contradictions.ts';
import { mismatchesAt } from '../../src/journal/registers/mismatches.ts';
import { neverCarriedOut, undecidedAt } from '../../src/journal/registers/pending.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { decide, did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [
  part('drum'),
  part('drum-spare', { for: 'drum' }),
  part('drum-new', { for: 'drum', origin: 'reproduction' }),
  part('studs', { count: 5 }),
  part('studs-new', { for: 'studs', origin: 'new', count: 5 }),
];
const recordOf = (...evenings: Evening[]) => soundRecord({ parts, evenings });
const against = (...evenings: Evening[]): string[] =>
  mismatchesAt(recordOf(...evenings), null).map(({ count, part: id, words }) => `${count} ${id}: ${words}`);
const todo = (...evenings: Evening[]) => neverCarriedOut(recordOf(...evenings), null).map(({ words, count }) => [count, words]);

const swap = (id: string, date = '2030-10-10', old = 'drum') =>
  evening(date, { parts: [did(old, 'removed', { to: 'loft' }), did(id, 'fitted')] }, `swap-${id}`);
const decided = (date: string, ...decisions: ReturnType<typeof decide>[]) => evening(date, { decisions }, 'verdict');

describe('a verdict on a spare that never stood at the place', () => {
  const kept = decided('2030-10-01', decide('drum', 'refinish'));
  const row = (...evenings: Evening[]) => registerRowAt(recordOf(...evenings), 'drum', null);

  test('overturns nothing that was decided on the place, and asks nothing of what stands there', () => {
    const evenings = [kept, decided('2030-10-20', decide('drum-spare', 'omit'))];
    expect(row(...evenings).inForce.map(({ decision }) => [decision.part, decision.verdict])).toEqual([['drum', 'refinish']]);
    expect(todo(...evenings)).toEqual(todo(kept));
    expect(against(...evenings)).toEqual([]);
    const { aside } = recordOf(...evenings).history;
    expect(aside.map(({ part: id, verdict }) => [id, verdict])).toEqual([['drum-spare', 'omit']]);
  });

  test('rules the spare out: with it gone from the question nobody has to decide any more', () => {
    const ruledOut = ['drum-spare', 'drum-new'].map((id) => decide(id, 'omit'));
    expect(undecidedAt(recordOf(), null).map(({ row: { position } }) => position)).toContain('drum');
    expect(undecidedAt(recordOf(decided('2030-10-20', ...ruledOut)), null).map(({ row: { position } }) => position)).not.toContain('drum');
    expect(undecidedAt(recordOf(decided('2030-10-20', ...ruledOut.slice(1))), null).map(({ row: { position } }) => position)).toContain(
      'drum',
    );
  });

  test('is on the place once the spare stands there, off again or not, and where it says what the spare is replaced with', () => {
    const verdicts = (...evenings: Evening[]) => row(...evenings).inForce.map(({ decision }) => [decision.part, decision.verdict]);
    const off = evening('2030-10-15', { parts: [did('drum-spare', 'removed', { to: 'loft' })] });
    expect(verdicts(kept, swap('drum-spare'), decided('2030-10-20', decide('drum-spare', 'repair')))).toEqual([['drum-spare', 'repair']]);
    expect(verdicts(kept, swap('drum-spare'), off, decided('2030-10-20', decide('drum-spare', 'repair')))).toEqual([
      ['drum-spare', 'repair'],
    ]);
    expect(verdicts(kept, decided('2030-10-20', decide('drum-spare', 'replace', { with: 'drum-new' })))).toEqual([
      ['drum-spare', 'replace'],
    ]);
  });
});

describe('a decision against the facts', () => {
  test('decided to keep, but a reproduction is fitted: it says so, and what would settle it', () => {
    const record = recordOf(decided('2030-10-01', decide('drum', 'keep')), swap('drum-new'));
    expect(mismatchesAt(record, null)).toMatchObject([
      {
        position: 'drum',
        words: 'Decided: keep. But drum-new (reproduction) is fitted.',
        settle: ['Fit drum: it is in stores, loft.', 'Or record a decision that says what is meant now, and why.'],
      },
    ]);
  });

  test('the warning stands at the decision and shows the entry that fitted the other part', () => {
    const [found] = contradictions(recordOf(decided('2030-10-01', decide('drum', 'repair')), swap('drum-new')));
    expect(found).toMatchObject({ code: 'A701', severity: 'warning', place: { file: 'sessions/2030-10-01-verdict.md' } });
    expect(found?.related.map(({ place }) => place.file)).toEqual(['sessions/2030-10-10-swap-drum-new.md']);
  });

  test('decided on one part, and another was fitted', () => {
    const verdict = decided('2030-10-01', decide('drum', 'replace', { with: 'drum-spare' }));
    expect(against(verdict, swap('drum-new'))).toEqual([
      '1 drum-new: Decided: replace with drum-spare. But drum-new (reproduction) is fitted.',
    ]);
    expect(against(verdict, swap('drum-spare'))).toEqual([]);
  });

  test('decided to leave off, and something was fitted afterwards', () => {
    const omit = decided('2030-10-20', decide('drum', 'omit'));
    expect(against(swap('drum-new'), omit)).toEqual([]);
    const back = evening('2030-11-01', { parts: [did('drum-new', 'removed'), did('drum-new', 'fitted')] });
    expect(against(swap('drum-new'), omit, back)).toHaveLength(1);
  });

  test('a later decision that owns the change settles it, and both stay in the record', () => {
    const keep = decided('2030-10-01', decide('drum', 'keep'));
    const overturned = decided('2030-10-12', decide('drum', 'replace', { with: 'drum-new' }));
    const row = registerRowAt(recordOf(keep, swap('drum-new'), overturned), 'drum', null);
    expect([row.mismatches, row.decisions.map(({ verdict }) => verdict), row.inForce.map(({ decision }) => decision.verdict)]).toEqual([
      [],
      ['keep', 'replace'],
      ['replace'],
    ]);
  });

  test('a decision on the stand-in itself lets it stand', () => {
    expect(against(swap('drum-new'), decided('2030-10-20', decide('drum-new', 'keep')))).toEqual([]);
  });

  test('decided to keep, and it is gone for good: it says how it went, and what stands there instead', () => {
    const keep = decided('2030-10-01', decide('drum', 'keep'));
    const scrapped = evening('2030-10-10', { parts: [did('drum', ['removed', 'gone'], { how: 'scrapped' })] }, 'skip');
    expect(against(keep, scrapped)).toEqual(['1 drum: Decided: keep. But drum is gone (scrapped).']);
    const [found] = contradictions(recordOf(keep, scrapped));
    expect(found?.hint).toBe('Record a decision that says what is meant now, and why.');
    expect(found?.related.map(({ place, message }) => `${place.file} ${message}`)).toEqual([
      'sessions/2030-10-10-skip.md drum went on 2030-10-10',
    ]);
    const instead = evening('2030-10-12', { parts: [did('drum-new', 'fitted')] });
    expect(against(keep, scrapped, instead)).toEqual([
      '1 drum: Decided: keep. But drum is gone (scrapped), and drum-new (reproduction) is fitted.',
    ]);
    expect(todo(keep, scrapped)).toEqual([]);
  });

  test('of a lot, as many may go as nobody decided to keep', () => {
    const keep = decided('2030-10-01', decide('studs', 'repair', { count: 3 }));
    const gone = (count: number) =>
      evening('2030-10-10', { parts: [did('studs', 'removed'), did('studs', 'gone', { how: 'sold', count })] }, 'sale');
    expect(against(keep, gone(2))).toEqual([]);
    expect(against(keep, gone(4))).toEqual(['2 studs: Decided: repair. But 2 of studs are gone (sold).']);
    expect(todo(keep, gone(4))).toEqual([[1, 'not yet repaired (1 of 5)']]);
  });

  test('of a lot, only those that no decision allows are against one', () => {
    const two = evening('2030-10-10', { parts: [did('studs', 'removed', { count: 3 }), did('studs-new', 'fitted', { count: 3 })] });
    const verdict = decided(
      '2030-10-01',
      decide('studs', 'keep', { count: 5 }),
      decide('studs', 'replace', { count: 2, with: 'studs-new' }),
    );
    expect(against(verdict, two)).toEqual(['1 studs-new: Decided: keep. But 1 of studs-new (new) is fitted.']);
  });
});

describe('decided and not yet carried out is pending, not a mismatch', () => {
  test('the old part still on, and nothing on', () => {
    const replace = decided('2030-10-01', decide('drum', 'replace', { with: 'drum-spare' }));
    const off = evening('2030-10-02', { parts: [did('drum', 'removed')] });
    expect([against(replace), against(replace, off)]).toEqual([[], []]);
    expect([todo(replace), todo(replace, off)]).toEqual([[[1, 'not yet replaced']], [[1, 'not yet replaced']]]);
    expect(todo(replace, swap('drum-spare'))).toEqual([]);
  });

  test('a stand-in fitted under an earlier decision, when a better part turns up', () => {
    const first = decided('2030-10-01', decide('drum', 'replace', { with: 'drum-new' }));
    const better = decided('2031-02-01', decide('drum', 'replace', { with: 'drum-spare' }));
    expect([against(first, swap('drum-new'), better), todo(first, swap('drum-new'), better)]).toEqual([[], [[1, 'not yet replaced']]]);
  });

  test('repair: pending until the work is done, then until it is back on', () => {
    const repair = decided('2030-10-01', decide('drum', 'repair'));
    const mended = evening('2030-10-05', { parts: [did('drum', ['removed', 'machined'])] });
    const back = evening('2030-10-09', { parts: [did('drum', 'fitted')] });
    expect([todo(repair), todo(repair, mended), todo(repair, mended, back)]).toEqual([
      [[1, 'not yet repaired']],
      [[1, 'repaired, not back on']],
      [],
    ]);
  });

  test('work done before it was decided does not answer the decision, and is not said to be undone', () => {
    const early = evening('2030-09-20', { parts: [did('drum', 'repaired')] });
    const late = decided('2030-10-01', decide('drum', 'repair'));
    expect(todo(early, late)).toEqual([[1, 'not repaired since that was decided']]);
    expect(todo(early, late, evening('2030-10-02', { parts: [did('drum', ['removed', 'repaired', 'fitted'])] }))).toEqual([]);
  });

  test('what stands against a decision is a mismatch and not pending as well', () => {
    expect(todo(decided('2030-10-01', decide('drum', 'repair')), swap('drum-new'))).toEqual([]);
  });

  test('two of five studs, one done', () => {
    const verdict = decided('2030-10-01', decide('studs', 'replace', { count: 2, with: 'studs-new' }));
    const one = evening('2030-10-05', { parts: [did('studs', 'removed', { count: 1 }), did('studs-new', 'fitted', { count: 1 })] });
    expect(todo(verdict, one)).toEqual([[1, 'not yet replaced (1 of 5)']]);
  });

  test('its age is in whole days from the decision to the date asked for', () => {
    const record = recordOf(decided('2031-02-27', decide('drum', 'omit')));
    // 2031 is no leap year: 27 February to 3 March is four days.
    expect(neverCarriedOut(record, '2031-03-03').map(({ days, todo: kind }) => [days, kind])).toEqual([[4, 'take-off']]);
  });
});

describe('decisions in force', () => {
  test('a later decision takes its count from the earlier ones', () => {
    const row = registerRowAt(
      recordOf(
        decided('2030-10-01', decide('studs', 'keep')),
        decided('2030-10-05', decide('studs', 'replace', { count: 2, with: 'studs-new' })),
      ),
      'studs',
      null,
    );
    expect(row.inForce.map(({ decision, count }) => [decision.verdict, count])).toEqual([
      ['replace', 2],
      ['keep', 3],
    ]);
  });

  test('on part of a lot, a later one with the same verdict and the same part to fit replaces the count of the earlier', () => {
    const two = decide('studs', 'replace', { count: 2, with: 'studs-new' });
    const three = decide('studs', 'replace', { count: 3, with: 'studs-new' });
    const keep = decide('studs', 'keep', { count: 2 });
    const inForce = (...evenings: Evening[]) =>
      registerRowAt(recordOf(...evenings), 'studs', null).inForce.map(({ decision, count }) => [decision.verdict, count]);
    expect(inForce(decided('2030-10-01', two), decided('2030-10-02', three))).toEqual([['replace', 3]]);
    expect(inForce(decided('2030-10-01', two, keep), decided('2030-10-02', three))).toEqual([
      ['replace', 3],
      ['keep', 2],
    ]);
  });

  test('a date before the later one sees only the earlier one', () => {
    const record = recordOf(decided('2030-10-01', decide('studs', 'keep')), decided('2030-10-05', decide('studs', 'omit')));
    expect(registerRowAt(record, 'studs', '2030-10-04').inForce.map(({ decision }) => decision.verdict)).toEqual(['keep']);
  });

  test('undecided is what no verdict speaks of, and what was put off', () => {
    const record = recordOf(decided('2030-10-01', decide('studs', 'replace', { count: 2, with: 'studs-new' }), decide('drum', 'defer')));
    const found = undecidedAt(record, null).map(({ row, count, deferred, touched }) => [row.position, count, deferred.length, touched]);
    expect(found).toEqual([
      ['drum', 1, 1, false],
      ['studs', 3, 0, false],
    ]);
  });
});

describe('decisions on a numbered lot', () => {
  const numbered = [part('studs', { count: 5, numbered: 'clockwise' }), part('studs-new', { for: 'studs', origin: 'new', count: 5 })];
  const inForce = (...evenings: Evening[]) =>
    registerRowAt(soundRecord({ parts: numbered, evenings }), 'studs', null).inForce.map(({ decision, count, which }) => [
      decision.verdict,
      count,
      which,
    ]);
  const replace = (which: number[]) => decide('studs', 'replace', { which, count: which.length, with: 'studs-new' });

  test('one that names others stands beside the earlier; one that names the same takes those from it', () => {
    expect(inForce(decided('2030-10-01', replace([2, 4])), decided('2030-10-02', replace([5])))).toEqual([
      ['replace', 1, [5]],
      ['replace', 2, [2, 4]],
    ]);
    const keep = decide('studs', 'keep', { which: [1, 2], count: 2 });
    expect(inForce(decided('2030-10-01', replace([2, 4])), decided('2030-10-02', keep))).toEqual([
      ['keep', 2, [1, 2]],
      ['replace', 1, [4]],
    ]);
    expect(inForce(decided('2030-10-01', replace([2])), decided('2030-10-02', replace([2, 4])))).toEqual([['replace', 2, [2, 4]]]);
  });

  test('one on the whole of it holds for those that no later one names, also where that says the same', () => {
    const all = decided('2030-10-01', decide('studs', 'keep', { count: 5 }));
    const back = decided('2030-10-03', decide('studs', 'keep', { which: [2], count: 1 }));
    expect(inForce(all, decided('2030-10-02', replace([2])), back)).toEqual([
      ['keep', 1, [2]],
      ['keep', 4, [1, 3, 4, 5]],
    ]);
    expect(inForce(all)).toEqual([['keep', 5, null]]);
  });
});
