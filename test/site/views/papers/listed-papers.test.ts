import { describe, expect, it } from 'vitest';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { papersByKind } from '../../../../src/site/views/papers/listed-papers.ts';
import { compileFiles } from '../../../journal/base.ts';

function listed(notes: Readonly<Record<string, string>>, assets: readonly string[]): string[] {
  const more = Object.fromEntries(
    Object.entries(notes).map(([date, fields]) => [`sessions/${date}.md`, `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`]),
  );
  const { record, diagnostics } = compileFiles({ more, assets: assets.map((name) => `papers/${name}`) });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  const kinds = papersByKind(record as SiteRecord);
  return kinds.flatMap(([kind, papers]) =>
    papers.map(({ file, date, sessions, shows }) =>
      `${kind} ${file.slice(7)} ${date} ${sessions.map((one) => one.date).join('+')} ${shows}`.trim(),
    ),
  );
}

describe('papers in their list', () => {
  it('stand by what matters: letters, photographs and build sheets before the rest, receipts after it', () => {
    const notes = {
      '2031-03-10': 'papers: [{ paper: a.pdf, kind: receipt }, { paper: b.pdf, kind: letter, date: 1952-03-19 }]',
      '2031-03-11': 'papers: [{ paper: c.pdf, kind: receipt }, { paper: d.pdf, kind: receipt, date: 2031-01-02 }]',
      '2031-03-12': 'papers: [{ paper: e.pdf, kind: other }, { paper: f.pdf, kind: build-sheet }]',
    };
    expect(listed(notes, ['a.pdf', 'b.pdf', 'c.pdf', 'd.pdf', 'e.pdf', 'f.pdf'])).toEqual([
      'letter b.pdf 1952-03-19 2031-03-10',
      'build-sheet f.pdf 2031-03-12 2031-03-12',
      'other e.pdf 2031-03-12 2031-03-12',
      'receipt c.pdf 2031-03-11 2031-03-11',
      'receipt a.pdf 2031-03-10 2031-03-10',
      'receipt d.pdf 2031-01-02 2031-03-11',
    ]);
  });

  it('are those that bear out an opinion, a valuation or money received', () => {
    const notes = {
      '2031-03-10': 'attributed: [{ part: drum, origin: original, because: As the sheet says., paper: a.pdf }]',
      '2031-03-11': 'valued: [{ of: vehicle, value: 900.00, basis: for insurance, paper: b.pdf }]',
      '2031-03-12': 'received: [{ amount: 50.00, from: the client, paper: c.pdf }]\npapers: [{ paper: a.pdf, kind: build-sheet }]',
    };
    expect(listed(notes, ['a.pdf', 'b.pdf', 'c.pdf'])).toEqual([
      'build-sheet a.pdf 2031-03-12 2031-03-10+2031-03-12 drum',
      'valuation b.pdf 2031-03-11 2031-03-11',
      'money received c.pdf 2031-03-12 2031-03-12',
    ]);
  });

  it('are of the day of their bill where the entry that describes them says none', () => {
    const notes = {
      '2031-03-10': 'bought: [{ what: A drum, as: part, for: drum, cost: 10.00, paper: a.pdf }]',
      '2031-03-12': 'papers: [{ paper: a.pdf, kind: receipt, what: For the drum }]',
    };
    expect(listed(notes, ['a.pdf'])).toEqual(['receipt a.pdf 2031-03-10 2031-03-10+2031-03-12 drum']);
  });

  it('are the papers of bills too, each paper once with every session that names it', () => {
    const notes = {
      '2031-03-10': 'bought: [{ what: A drum, as: part, for: drum, cost: 10.00, paper: a.pdf }]',
      '2031-03-11': 'papers: [{ paper: b.pdf, kind: receipt }]\nbought: [{ what: A drum, as: part, for: drum, cost: 10.00, paper: b.pdf }]',
      '2031-03-12': 'papers: [{ paper: b.pdf, kind: receipt }]',
    };
    expect(listed(notes, ['a.pdf', 'b.pdf'])).toEqual([
      'receipt b.pdf 2031-03-11 2031-03-11+2031-03-12 drum',
      'bill a.pdf 2031-03-10 2031-03-10 drum',
    ]);
  });
});
