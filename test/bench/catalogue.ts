import type { Random } from './random.ts';
import { FASTENERS, FINISHES, PLACES, STORES, SUBSYSTEMS, type SubsystemWords } from './trade-words.ts';

export interface BenchPart {
  readonly id: string;
  readonly name: string;
  readonly subsystem: string;
  readonly origin: string | null;
  readonly count: number;
  /** The position it is a candidate for; null for the part that makes the position. */
  readonly for: string | null;
  readonly found: 'fitted' | 'loose' | 'missing';
  /** Where it lies at the start. */
  readonly at: string | null;
  readonly marks: string | null;
  readonly finish: string | null;
  readonly condition: number | null;
}

/** A position with the part that makes it and, for some, one candidate. */
export interface BenchPosition {
  readonly main: BenchPart;
  readonly candidate: BenchPart | null;
  /** How the candidate comes to be here. */
  readonly arrives: 'start' | 'acquired' | 'made';
  /** Small enough for a bag. */
  readonly small: boolean;
}

/**
 * Makes the positions of a vehicle, dealt evenly over the subsystems.
 *
 * @param count how many positions; at least one a subsystem
 */
export function makePositions(random: Random, count: number): BenchPosition[] {
  const taken = new Set<string>();
  const decks = SUBSYSTEMS.map((subsystem) => ({ subsystem, names: random.shuffle(namesOf(subsystem)) }));
  return Array.from({ length: Math.max(count, decks.length) }, (_, n) => {
    const deck = decks[n % decks.length];
    if (deck === undefined) throw new RangeError('No subsystems.');
    const round = Math.floor(n / decks.length);
    const name = deck.names[round % deck.names.length];
    if (name === undefined) throw new RangeError('No names.');
    return makePosition(random, deck.subsystem.id, name, taken);
  });
}

interface Name {
  readonly noun: string;
  readonly place: string;
  readonly says: string;
}

function namesOf(subsystem: SubsystemWords): Name[] {
  return subsystem.nouns.flatMap((noun) => PLACES.map((place) => ({ noun, place: place.id, says: place.says })));
}

function makePosition(random: Random, subsystem: string, name: Name, taken: Set<string>): BenchPosition {
  const lot = random.chance(0.15);
  const noun = lot ? `${name.noun} ${random.pick(FASTENERS)}` : name.noun;
  const id = freeId(`${noun} ${name.place}`.toLowerCase().replaceAll(' ', '-'), taken);
  const found = random.chance(0.02) ? 'missing' : random.chance(0.02) ? 'loose' : 'fitted';
  const main: BenchPart = {
    id,
    name: `${noun.charAt(0).toUpperCase()}${noun.slice(1)}, ${name.says}`,
    subsystem,
    origin: found === 'missing' ? null : random.chance(0.85) ? 'original' : 'earlier-replacement',
    count: lot ? random.between(3, 12) : 1,
    for: null,
    found,
    at: found === 'loose' ? random.pick(STORES) : null,
    marks: random.chance(0.2) ? `stamped ${random.between(100, 999)}` : null,
    finish: random.chance(0.5) ? random.pick(FINISHES) : null,
    condition: found === 'missing' || random.chance(0.5) ? null : random.between(0, 3),
  };
  const candidate = random.chance(0.25) ? makeCandidate(random, main, taken) : null;
  return { main, ...(candidate ?? { candidate: null, arrives: 'start' }), small: lot || random.chance(0.3) };
}

function makeCandidate(random: Random, main: BenchPart, taken: Set<string>): Pick<BenchPosition, 'candidate' | 'arrives'> {
  const origin = random.pick(['donor', 'new-old-stock', 'reproduction', 'new', 'period', 'made']);
  const arrives = origin === 'made' ? 'made' : random.chance(0.4) ? 'start' : 'acquired';
  const candidate: BenchPart = {
    id: freeId(`${main.id}-${origin === 'made' ? 'made' : 'spare'}`, taken),
    name: `${main.name}, ${origin === 'made' ? 'made to pattern' : 'spare'}`,
    subsystem: main.subsystem,
    origin,
    count: main.count,
    for: main.id,
    found: 'fitted',
    at: arrives === 'start' ? random.pick(STORES) : null,
    marks: null,
    finish: null,
    condition: null,
  };
  return { candidate, arrives };
}

function freeId(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let n = 2; taken.has(id); n += 1) id = `${wanted}-${n}`;
  taken.add(id);
  return id;
}
