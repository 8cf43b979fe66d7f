import { describe, expect, test } from 'vitest';
import type { Decision } from '../../../../src/journal/model.ts';
import { decisionAccounts, followedWords } from '../../../../src/site/views/position/decision-costs.ts';
import { hours, journal, type NoteOf } from '../../../ledger/small-journal.ts';

const decided = (verdict: string) => `decisions: [{ part: drum, verdict: ${verdict}, because: It is so }]`;

/** What is said of the cost of each decision on the drum, in the order in which they were taken. */
function saidOf(...notes: readonly NoteOf[]): string[] {
  const { record, problems } = journal(...notes);
  expect(problems).toEqual([]);
  const decisions: readonly Decision[] = record.history.decisions.get('drum') ?? [];
  const accounts = decisionAccounts(record, 'drum', decisions);
  return decisions.map((decision) => {
    const { before, figures, after } = followedWords(accounts, decision, ({ cost }) => String(cost));
    return `${before}${figures}${after}`;
  });
}

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
      'What followed took 5600.',
      'What followed took -3200, what was sold set against it.',
    ]);
  });

  test('is told once of those that were taken together', () => {
    const both = 'decisions: [{ part: drum, verdict: keep, because: So }, { part: drum, verdict: repair, because: So }]';
    expect(saidOf(['2031-03-01', `${both}\n${hours('jm', '1h', 'drum')}`])[0]).toBe('What followed took 2800, together with decision 2.');
  });
});
