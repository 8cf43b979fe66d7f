/**
 * The rules of whereabouts, outcomes, bags, items and gates, replayed a second time without a line of the record's own
 * code, and held against its views of every day on which something may have changed.
 *
 * `ASFOUND_SECOND_OPINION=300` asks for so many journals and for every day of the demo, and tells how much was compared.
 */
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import type { IsoDate, Journal } from '../../src/journal/model.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { addDays } from '../../src/journal/values/date.ts';
import { loadJournal } from '../../src/load/load.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { workshopFiles, workshops } from '../arbitraries/workshop.ts';
import { generateJournal } from '../bench/generate.ts';
import { record } from '../builders/journal.ts';
import { soundJournals } from '../builders/streams.ts';
import { asRecorded, offAsText } from './as-recorded.ts';
import { type Opinion, secondOpinion } from './opinion.ts';
import { seasons } from './seasons.ts';

const ASKED = Number(process.env.ASFOUND_SECOND_OPINION ?? 0);
/**
 * So many of the journals that are asked for: others each time, unless it is for the suite, which takes the same ones.
 * What fails is told as it is after two minutes, however long it still is.
 */
const runs = (share: number) => ({
  numRuns: Math.ceil((ASKED || 60) * share),
  interruptAfterTimeLimit: 120_000,
  ...(ASKED > 0 ? {} : { seed: 11 }),
});

const compared = { journals: 0, days: 0, lines: 0, open: 0 };

/** Compares every line of every day, but for what the rules leave open. */
function compare(of: JournalRecord, days = (of: Opinion): Iterable<readonly [IsoDate, readonly string[]]> => of.days): void {
  const opinion = secondOpinion(of.journal);
  expect(opinion.refused).toEqual([]);
  compared.journals += 1;
  for (const [date, lines] of days(opinion)) {
    const settled = (line: string) => !isOpen(line, opinion, of.journal);
    const ours = lines.filter(settled);
    expect(asRecorded(of, date).filter(settled), `on ${date}`).toEqual(ours);
    const { listed, known } = offAsText(of, date);
    expect(listed, `off the vehicle on ${date}`).toBe(known);
    compared.days += 1;
    compared.lines += ours.length + 1;
    compared.open += lines.length - ours.length;
  }
}

/** Where a count leaves open which of a lot it took, the rest of its story is open: all of it, or what became of its position. */
function isOpen(line: string, { leftOpen }: Opinion, { parts }: Journal): boolean {
  return leftOpen.some(({ part, of }) =>
    of === 'places' ? line.includes(part) : line.startsWith(`position ${parts.get(part)?.position}:`),
  );
}

/** Every day of the calendar: nothing changes between the days on which something may have. */
function* everyDay({ days }: Opinion): Iterable<readonly [IsoDate, readonly string[]]> {
  const [first] = days.keys();
  const last = [...days.keys()].at(-1) as IsoDate;
  let lines: readonly string[] = [];
  for (let date = first as IsoDate; date <= last; date = addDays(date, 1)) {
    lines = days.get(date) ?? lines;
    yield [date, lines];
  }
}

/** The catalogue and the notes name the same day for what comes: the replay alone does not look at this. */
function agreesOnWhatCame({ parts, sessions }: Journal): boolean {
  return sessions.every((session) =>
    session.parts.every(({ part, did }) => {
      const day = parts.get(part)?.acquired ?? session.date;
      return day === session.date || !(did.includes('acquired') || did.includes('made'));
    }),
  );
}

describe('a second replay, from the rules alone, agrees with the record', () => {
  afterAll(() => {
    if (ASKED > 0) process.stdout.write(`${JSON.stringify(compared)}\n`);
  });

  test('on the demo', () => {
    const sources = loadJournal(fileURLToPath(new URL('../../content', import.meta.url)));
    compare(compileJournal(sources, { today: '2035-12-31' }).record as JournalRecord, ASKED > 0 ? everyDay : undefined);
    expect(compared.lines).toBeGreaterThan(10_000);
  });

  test('on long journals without an error', () => {
    for (let seed = 1; seed <= runs(0.2).numRuns; seed += 1) compare(recordOf(Object.fromEntries(generateJournal(40, seed))));
  });

  test('on journals as a restorer writes them', () => {
    fc.assert(
      fc.property(workshops(30), (workshop) => compare(recordOf(workshopFiles(workshop)))),
      runs(0.2),
    );
  });

  test('on whatever the record finds no fault in', () => {
    fc.assert(
      fc.property(soundJournals.filter(agreesOnWhatCame), (of) => compare(record(of))),
      runs(0.2),
    );
  });

  test('on whatever the rules allow: the record finds no fault in it', () => {
    fc.assert(
      fc.property(seasons, (of) => {
        const errors = replay(of).diagnostics.filter(({ severity }) => severity === 'error');
        expect(errors.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
        compare(record(of));
      }),
      runs(0.4),
    );
  });
});
