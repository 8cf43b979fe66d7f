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

export const ARRIVED = '1990-01-01';
/** From the arrival to the last day a made-up note may carry, 2026-09-09. */
const SPAN_DAYS = 13400;
const DAY = 86_400_000;

/**
 * Makes a whole journal without an error in it, as texts by path. The same numbers give the same bytes.
 *
 * @param sessions how many notes; there are 0.4 positions to each
 * @param seed which of the possible journals
 */
export function generateJournal(sessions: number, seed: number): Map<string, string> {
  const random = randomFrom(seed);
  const positions = makePositions(random, Math.round(sessions * 0.4));
  const season: Season = {
    random,
    bags: 0,
    stands: positions.map(standAsFound),
    gates: new Gates(random, sessions),
    stock: new StockRoom(random, openingStock()),
    ids: new Set(),
  };
  const notes = datesOf(sessions).map((day, session) => {
    const { note, earlier } = playEvening(season, session, day);
    return [`sessions/${note.id}.md`, note.frontMatter() + prose(random, note, earlier)] as const;
  });
  return new Map([...catalogueFiles(positions), ...notes]);
}

function catalogueFiles(positions: readonly BenchPosition[]): [string, string][] {
  const parts = SUBSYSTEMS.map(({ id }): [string, string] => [`parts/${id}.yaml`, partsYaml(positions, id)]);
  return [['journal.yaml', journalYaml(ARRIVED)], ['consumables.yaml', consumablesYaml()], ...parts];
}

/** The day of each session, in order, and which one of its day it is. */
function datesOf(sessions: number): { readonly date: string; readonly nth: number }[] {
  const pace = Math.min(2.6, SPAN_DAYS / sessions);
  const days = Array.from({ length: sessions }, (_, n) => Math.floor(n * pace) + 1);
  return days.map((day, n) => ({
    date: new Date(Date.parse(ARRIVED) + day * DAY).toISOString().slice(0, 10),
    nth: n - days.indexOf(day, Math.max(0, n - 40)),
  }));
}

/** Writes a generated journal into a folder, which is made if it is not there. */
export async function writeJournal(folder: string, sessions: number, seed: number): Promise<void> {
  for (const [path, text] of generateJournal(sessions, seed)) {
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
