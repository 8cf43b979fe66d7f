import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { type BenchPosition, makePositions } from './catalogue.ts';
import { consumablesYaml, journalYaml, openingStock, partsYaml } from './catalogue-text.ts';
import { playEvening, type Season } from './evening.ts';
import { Gates } from './gates.ts';
import { prose } from './prose.ts';
import { randomFrom } from './random.ts';
import { standAsFound } from './stand.ts';
import { StockRoom } from './stock-room.ts';
import { SUBSYSTEMS } from './trade-words.ts';

/** The day of the last note. Journals end here and begin as much earlier as they are long. */
export const LAST_DAY = '2026-11-24';
/** Longer journals have several sessions a day. */
const LONGEST_DAYS = 13_500;
const DAYS_A_SESSION = 2.6;
const DAY_MS = 86_400_000;

/** What a journal has other than by its length. */
export interface Shape {
  /** 0.4 to a session where it is not said. */
  readonly positions?: number;
  /** From the first evening to the last. */
  readonly days?: number;
}

/**
 * Makes a whole journal without an error in it, as texts by path. The same numbers give the same bytes.
 *
 * @param sessions how many notes
 * @param seed which of the possible journals
 */
export function generateJournal(sessions: number, seed: number, shape: Shape = {}): Map<string, string> {
  const random = randomFrom(seed);
  const positions = makePositions(random, shape.positions ?? Math.round(sessions * 0.4));
  const season: Season = {
    random,
    bags: 0,
    stands: positions.map(standAsFound),
    gates: new Gates(random, sessions),
    stock: new StockRoom(random, openingStock()),
    ids: new Set(),
  };
  const pace = Math.min(DAYS_A_SESSION, (shape.days ?? LONGEST_DAYS) / sessions);
  const span = Math.ceil(pace * sessions);
  const notes = datesOf(sessions, pace, span).map((day, session) => {
    const { note, earlier } = playEvening(season, session, day);
    return [`sessions/${note.id}.md`, note.frontMatter() + prose(random, note, earlier)] as const;
  });
  return new Map([
    ['journal.yaml', journalYaml(daysBefore(span), daysBefore(Math.floor(span / 2)))],
    ...catalogueFiles(positions),
    ...notes,
  ]);
}

function catalogueFiles(positions: readonly BenchPosition[]): [string, string][] {
  const parts = SUBSYSTEMS.map(({ id }): [string, string] => [`parts/${id}.yaml`, partsYaml(positions, id)]);
  return [['consumables.yaml', consumablesYaml()], ...parts];
}

/** The day of each session, in order, and which one of its day it is. */
function datesOf(sessions: number, pace: number, span: number): { readonly date: string; readonly nth: number }[] {
  const days = Array.from({ length: sessions }, (_, n) => span - 1 - Math.floor(n * pace));
  return days.map((day, n) => ({ date: daysBefore(day), nth: n - days.indexOf(day) }));
}

function daysBefore(days: number): string {
  return new Date(Date.parse(LAST_DAY) - days * DAY_MS).toISOString().slice(0, 10);
}

/** Writes a generated journal into a folder, which is made if it is not there. */
export async function writeJournal(folder: string, sessions: number, seed: number, shape: Shape = {}): Promise<void> {
  for (const [path, text] of generateJournal(sessions, seed, shape)) {
    const file = join(folder, path);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

if (import.meta.main) {
  const { values } = parseArgs({
    options: {
      out: { type: 'string' },
      sessions: { type: 'string', default: '100' },
      seed: { type: 'string', default: '1952' },
    },
  });
  if (values.out === undefined) {
    console.error('Say where to: --out DIR [--sessions 100] [--seed 1952]');
    process.exitCode = 2;
  } else {
    await writeJournal(values.out, Number(values.sessions), Number(values.seed));
  }
}
