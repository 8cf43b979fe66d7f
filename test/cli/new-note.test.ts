/** What a new note offers: every group of the format, each line of which holds when its `#` is taken away. */
import { describe, expect, test } from 'vitest';
import { noteSkeleton } from '../../src/cli/new-note/note-skeleton.ts';
import { fieldsAt } from '../../src/journal/read/schema-at.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';
import { compileFiles, JOURNAL } from '../journal/base.ts';

const BEFORE = `---
date: 2031-03-01
title: Off
hours: [{ by: jm, on: brakes, time: 2h }]
parts:
  - { part: drum, did: removed, to: shelf A1 }
  - { part: drum-donor, did: sent-out, to: "Pell, platers", work: "plate it, dull", quoted: 30.00, due: 2031-05-01 }
bags: [{ bag: 4, holds: [2 pins] }]
opens:
  - { id: pins, kind: buy, what: "Split pins,\\n\\n two", before: first-start }
  - { id: capped, kind: temporary, what: Pipe capped, before: stripped }
  - { id: rim, kind: waiting, what: The rim, from: a plater, due: 2031-04-20 }
---
Cold.

Next time the [other side](part:studs).
`;
const DATE = '2031-03-12';
const PATH = `sessions/${DATE}-more/index.md`;
const more = { 'sessions/2031-03-01-off.md': BEFORE };
const { record } = compileFiles({ more });
const text = noteSkeleton(DATE, 'More', record);

/** A group in one line, or an entry under one: the line before it opens that. */
const EXAMPLE = /^(?:# [a-z]+: (?:\[|[\w"]).*| {2}# - \{.*)$/;
const lines = text.split('\n');
const offered = lines.flatMap((line, n) =>
  EXAMPLE.test(line) && !/^# (?:papers|pictures|To|Out|Parts|Bags)/.test(line) ? [[line, n] as const] : [],
);

const errorsOf = (note: string) =>
  compileFiles({ more: { ...more, [PATH]: note } })
    .diagnostics.filter(({ severity }) => severity === 'error')
    .map(({ code, message }) => `${code} ${message}`);

describe('a new note', () => {
  test('is sound as it is', () => {
    expect(errorsOf(text)).toEqual([]);
  });

  test('offers every group of the format', () => {
    const groups = fieldsAt(sessionSchema, []).filter((field) => field !== 'date' && field !== 'title');
    expect(groups.filter((field) => !new RegExp(`^(?:# )?${field}:`, 'm').test(text))).toEqual([]);
  });

  test.each(offered)('%s', (line, n) => {
    const typed = lines.with(n, line.replace(/^( *)# /, '$1'));
    expect(errorsOf(typed.join('\n'))).toEqual([]);
    // It says something: a comment that stayed one would be sound too.
    const sessions = (note: string) =>
      JSON.stringify(compileFiles({ more: { ...more, [PATH]: note } }).record?.journal.sessions.at(-1), numbers);
    expect(sessions(typed.join('\n'))).not.toBe(sessions(text));
  });

  test('says what is open, of every kind, what is out, off and bagged, and how the last evening ended', () => {
    for (const said of [
      '# The last evening, 2031-03-01, Off:\n#   pins: Split pins, two\n',
      '#   Next time the other side.\n',
      '# To buy:\n#   pins: Split pins, two (before first-start)\n',
      '# Temporary measures still in place:\n#   capped: Pipe capped (before stripped)\n',
      '# Waiting for:\n#   rim: The rim (from a plater, due 2031-04-20)\n',
      '# Out:\n#   drum-donor: out with Pell, platers, due 2031-05-01\n',
      '#   drum: in stores, shelf A1\n',
      '# Bags still filled:\n#   4: 2 pins (2031-03-01)\n',
    ])
      expect(text).toContain(said);
  });

  test('offers what is out as come back, and the bill for what its firm was asked', () => {
    expect(text).toContain('  # - { part: drum-donor, did: returned, to: shelf A1 }\n');
    const bill =
      '{ from: "Pell, platers", total: 30.00, tax: 20%, lines: [{ what: "plate it, dull", as: outside-work, for: drum-donor, cost: 30.00 }] }';
    expect(text).toContain(`# bills: [${bill}]\n`);
    expect(noteSkeleton(DATE, 'More', compileFiles({}).record)).toContain('# bills: [{ from: a merchant, total: 4.99, discount: 5%,');
  });

  test('shows a bill with the tax that such a thing last had, else with what the workshop charges', () => {
    const told = (journal: string, bought: string) => {
      const more = { 'sessions/2031-03-01-off.md': BEFORE.replace('parts:\n', `bought:\n${bought}parts:\n`) };
      return noteSkeleton(DATE, 'More', compileFiles({ journal, more }).record);
    };
    const lines = '  - { what: Felt, cost: 5.00, tax: 23% }\n  - { what: Plated, as: outside-work, cost: 9.00, tax: 13.5% }\n';
    expect(told(JOURNAL, lines)).toContain('total: 30.00, tax: 13.5%, lines:');
    expect(told(JOURNAL, '  - { what: Felt, cost: 5.00, tax: 23% }\n')).toContain('total: 30.00, tax: 23%, lines:');
    const registered = `${JOURNAL}workshop: { name: W, tax-number: X 1, tax: 19% }\n`;
    expect(told(registered, '  - { what: Felt, cost: 5.00 }\n')).toContain('total: 30.00, tax: 19%, lines:');
  });

  test('says of a bag also the parts of the catalogue in it that its note does not call by name', () => {
    const bagged = BEFORE.replace('parts:\n', 'parts:\n  - { part: studs, did: removed, to: bag 4, count: 3 }\n');
    const said = noteSkeleton(DATE, 'More', compileFiles({ more: { 'sessions/2031-03-01-off.md': bagged } }).record);
    expect(said).toContain('#   4: 2 pins (2031-03-01); with studs (3)\n');
  });

  test('ends with what was left out, with its place and what to write', () => {
    expect(text).toContain(
      '# Forgotten so far:\n#   Parts without marks or a picture, 1:\n#     sessions/2031-03-01-off.md:6 Front brake drum came off',
    );
    expect(text.slice(text.indexOf('# Forgotten'))).not.toMatch(/^(?!#|---|$)/m);
  });

  test('of a journal that cannot be understood has the groups alone', () => {
    const bare = noteSkeleton(DATE, 'More', null);
    expect(errorsOf(bare)).toEqual([]);
    expect(bare).toContain('  # - { part: an-id');
  });
});

function numbers(_: string, value: unknown): unknown {
  return typeof value === 'bigint' ? String(value) : value;
}
