import { flowMapping, type Value } from './flow-mapping.ts';
import type { Gates } from './gates.ts';
import { pounds } from './money-text.ts';
import { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import type { Stand } from './stand.ts';
import { takeStep } from './steps.ts';
import type { StockRoom } from './stock-room.ts';
import { writeHours } from './time-sheet.ts';
import type { Workshop } from './workshop.ts';

/** What an evening is made from, shared by all of them. */
export interface Season extends Workshop {
  readonly stands: readonly Stand[];
  readonly gates: Gates;
  readonly stock: StockRoom;
  /** Ids of the sessions so far. */
  readonly ids: Set<string>;
}

/** Plays one evening: two to five positions, mostly of one subsystem, and everything that goes with them. */
export function playEvening(
  season: Season,
  session: number,
  day: { readonly date: string; readonly nth: number },
): { readonly note: NoteDraft; readonly earlier: string | null } {
  const { random } = season;
  const touched = chooseStands(season);
  const first = touched[0];
  if (first === undefined) throw new RangeError('No positions.');
  const { main } = first.position;
  const id = freeId(season.ids, `${day.date}-${main.subsystem}-${main.id}`);
  const note = new NoteDraft(id, day.date, `${main.name.replace(',', '')}${random.pick(TURNS)}`);
  const earlier = first.last;
  for (const stand of touched) takeStep(season, stand, note);
  const on = [main.subsystem, ...touched.slice(0, 2).map((stand) => stand.position.main.id)];
  writeHours(random, note, on, day.nth);
  for (let uses = random.below(3); uses > 0; uses -= 1) season.stock.useOrBuy(random.pick(on), note);
  season.gates.play(session, random.pick(on), note);
  if (random.chance(0.03)) note.addText('bills', bill(random, main.subsystem));
  if (random.chance(0.04)) note.addText('film', film(random, touched));
  return { note, earlier };
}

const TURNS = ['', ' and its neighbours', ' once more', ' at last', ' by lamp light', ' and what was behind it'];

function chooseStands(season: Season): Stand[] {
  const { random, stands } = season;
  const focus = random.pick(stands).position.main.subsystem;
  const near = stands.filter((stand) => stand.position.main.subsystem === focus);
  const chosen = new Set<Stand>();
  for (let n = random.between(2, random.between(3, 5)); n > 0; n -= 1) {
    chosen.add(random.pick(random.chance(0.85) ? near : stands));
  }
  return [...chosen];
}

function freeId(taken: Set<string>, wanted: string): string {
  let id = wanted;
  for (let n = 2; taken.has(id); n += 1) id = `${wanted}-${n}`;
  taken.add(id);
  return id;
}

function bill(random: Random, subsystem: string): string {
  const costs = Array.from({ length: random.between(2, 3) }, () => random.between(150, 4000));
  const carriage = random.between(300, 900);
  const total = costs.reduce((sum, cost) => sum + cost, carriage);
  const lines = costs.map((cost, n) => flowMapping({ what: `Sundries ${n + 1}`, as: 'part', for: subsystem, cost: pounds(cost) }));
  return `{ from: a stockist, total: ${pounds(total)}, carriage: ${pounds(carriage)}, tax: 20%, lines: [${lines.join(', ')}] }`;
}

function film(random: Random, touched: readonly Stand[]): string {
  const reel = random.between(1, 400);
  const marks = touched.map((stand, n): [string, Value] => [`${n + 1}:${random.between(10, 59)}`, stand.current.id]);
  const shows = marks.map(([time, part]) => `"${time}": ${part}`).join(', ');
  return `{ clip: "https://example.org/film/reel-${reel}.mp4", title: Reel ${reel}, shows: { ${shows} } }`;
}
