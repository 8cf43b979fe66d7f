import { describe, expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { JOURNAL, PARTS } from './base.ts';

const NOTES = {
  'sessions/2031-03-12-brakes.md': '---\ndate: 2031-03-12\ntitle: Brakes\n---\nSee [what came later](session:2031-04-02).\n',
  'sessions/2031-04-02-drum.md': '---\ndate: 2031-04-02\ntitle: Drum\nparts:\n  - { part: drum, did: removed, to: shelf A1 }\n---\n',
};

function compiled(notes: Readonly<Record<string, string>>, today: string, to?: string) {
  const files = { 'journal.yaml': JOURNAL, 'parts/brakes.yaml': PARTS, ...notes };
  const bytes = (text: string) => new TextEncoder().encode(text);
  const sources = Object.entries(files).map(([path, text]) => ({ path, bytes: bytes(text) }));
  const { record, diagnostics } = compileJournal({ files: sources, assets: [], problems: [] }, { today, to: to ?? null });
  return { record, codes: diagnostics.map(({ code, place }) => `${code} ${place.file}`) };
}

describe('the record stands on its own day', () => {
  test('that is the day of the newest note, whenever it is compiled', () => {
    expect(compiled(NOTES, '2031-04-02').record).toEqual(compiled(NOTES, '2033-01-01').record);
    expect(compiled(NOTES, '2033-01-01').record?.day).toBe('2031-04-02');
  });

  test('without a note it is the day the vehicle arrived', () => {
    expect(compiled({}, '2033-01-01').record?.day).toBe('2030-09-14');
  });

  test('the day of compiling refuses a note of the future and does nothing else', () => {
    expect(compiled(NOTES, '2031-04-01').codes).toEqual(['A801 sessions/2031-04-02-drum.md']);
  });

  test('a day asked for leaves out the notes after it, with whatever is wrong in them', () => {
    const wrong = {
      ...NOTES,
      'sessions/2031-04-03-hub.md': '---\ndate: 2031-04-03\ntitle: Hub\nparts:\n  - { part: hub, did: removed }\n---\n',
    };
    expect(compiled(wrong, '2033-01-01').codes).toEqual(['A401 sessions/2031-04-03-hub.md']);
    const { record, codes } = compiled(wrong, '2033-01-01', '2031-03-31');
    expect(codes).toEqual([]);
    expect([record?.day, record?.journal.sessions.map(({ id }) => id)]).toEqual(['2031-03-31', ['2031-03-12-brakes']]);
  });

  test('a link to a note that was not written by then is no fault', () => {
    expect(compiled(NOTES, '2033-01-01', '2031-03-12').codes).toEqual([]);
    const { 'sessions/2031-04-02-drum.md': _, ...first } = NOTES;
    expect(compiled(first, '2033-01-01').codes).toEqual(['A903 sessions/2031-03-12-brakes.md']);
  });
});
