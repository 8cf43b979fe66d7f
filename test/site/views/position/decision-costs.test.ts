import { describe, expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import type { Decision } from '../../../../src/journal/model.ts';
import { figuresOf } from '../../../../src/site/views/page/figures.ts';
import { decisionAccounts, followedWords } from '../../../../src/site/views/position/decision-costs.ts';
import { hours, JOURNAL, journalWith, type NoteOf } from '../../../ledger/small-journal.ts';

const decided = (verdict: string) => `decisions: [{ part: drum, verdict: ${verdict}, because: It is so }]`;

/** What is said of the cost of each decision on the drum, in the order in which they were taken. */
const saidOf = (...notes: readonly NoteOf[]): (string | null)[] => saidWithout('', ...notes);

/** The same in a copy that leaves out so much. */
function saidWithout(what: string, ...notes: readonly NoteOf[]): (string | null)[] {
  const whole = journalWith({ journal: `${JOURNAL}copies: { public: { leave-out: [${what}] } }\n` }, ...notes);
  expect(whole.problems).toEqual([]);
  const record = copyOf(whole.record, 'public');
  const decisions: readonly Decision[] = record.history.decisions.get('drum') ?? [];
  const accounts = decisionAccounts(record, 'drum', decisions);
  return decisions.map((decision) => {
    const said = followedWords({ copy: record.copy, figures: figuresOf(record.journal.settings) }, accounts, decision);
    return said === null ? null : `${said.before}${said.figures}${said.after}`;
  });
}

test('without money an account lists what took time, and nothing that was bought', () => {
  const bought = 'bought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 42.00 }]';
  const whole = journalWith(
    { journal: `${JOURNAL}copies: { public: { leave-out: [money] } }\n` },
    ['2031-03-01', `${hours('jm', '1h', 'drum')}\n${bought}`],
    ['2031-03-02', `${decided('keep')}\n${bought}`],
  );
  const kinds = (record: typeof whole.record) => decisionAccounts(record, 'drum', []).map(({ entries }) => entries.map(({ kind }) => kind));
  expect(kinds(whole.record)).toEqual([['labour', 'outside-work'], ['outside-work']]);
  expect(kinds(copyOf(whole.record, 'public'))).toEqual([['labour'], []]);
});

describe('what followed a decision', () => {
  test('that nothing was charged to is said up to the next one, and of the last one up to now', () => {
    expect(saidOf(['2031-03-01', decided('keep')], ['2031-03-02', decided('repair')])).toEqual([
      'Nothing was charged to it before the next decision.',
      'Nothing was charged to it since.',
    ]);
  });

  test('is its figures, and tells of a sale that is set against them', () => {
    const sale = 'parts: [{ part: drum-spare, did: gone, how: sold }]\nsold: [{ part: drum-spare, price: 60.00 }]';
    const work: NoteOf = ['2031-03-03', `${hours('jm', '1h', 'drum')}\n${sale}`];
    expect(saidOf(['2031-03-01', `${decided('keep')}\n${hours('jm', '2h', 'drum')}`], ['2031-03-02', decided('repair')], work)).toEqual([
      'What followed took 2 h, £56.00.',
      'What followed took 1 h, −£32.00, what was sold set against it.',
    ]);
  });

  test('is told once of those that were taken together', () => {
    const both = 'decisions: [{ part: drum, verdict: keep, because: So }, { part: drum, verdict: repair, because: So }]';
    expect(saidOf(['2031-03-01', `${both}\n${hours('jm', '1h', 'drum')}`])[0]).toBe(
      'What followed took 1 h, £28.00, together with decision 2.',
    );
  });

  test('is of what the copy keeps account of: what it leaves out may have been charged', () => {
    const bought = 'bought: [{ what: Skimmed, as: outside-work, for: drum, cost: 42.00 }]';
    const notes: NoteOf[] = [
      ['2031-03-01', `${decided('keep')}\n${bought}`],
      ['2031-03-02', `${decided('repair')}\n${hours('jm', '1h', 'drum')}`],
    ];
    expect(saidOf(...notes)).toEqual(['What followed took £42.00.', 'What followed took 1 h, £28.00.']);
    expect(saidWithout('money', ...notes)).toEqual(['No hours were charged to it before the next decision.', 'What followed took 1 h.']);
    expect(saidWithout('hours', ...notes)).toEqual(['What followed took £42.00.', 'No money was charged to it since.']);
    expect(saidWithout('money, hours', ...notes)).toEqual([null, null]);
  });
});
