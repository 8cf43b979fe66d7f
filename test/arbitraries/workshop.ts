/**
 * Sound journals of a workshop as their entries, written out as a restorer would write them: parts that come off, lie
 * about, go out, are replaced and go back, assemblies, lots, bags, open items and milestones. A slip is put into the
 * entries before they are written.
 */
import fc from 'fast-check';
import { addDays } from '../../src/journal/values/date.ts';

/** One entry of a list of a note: the field it stands under, and its own fields in order. */
export interface Line {
  readonly field: 'parts' | 'bags' | 'emptied' | 'opens' | 'closes' | 'defers' | 'reached' | 'decisions' | 'hours' | 'used' | 'bought';
  /** A number for `emptied`. */
  readonly says: Readonly<Record<string, string>> | string;
}

export interface Note {
  readonly date: string;
  readonly name: string;
  readonly lines: readonly Line[];
}

export interface Workshop {
  readonly parts: readonly Readonly<Record<string, string>>[];
  readonly notes: readonly Note[];
}

const ARRIVED = '2030-09-14';
const STORES = ['shelf A1', 'shelf B2', 'loft'];
const FIRMS = ['the plater', 'the brake works'];
const MILESTONES = ['stripped', 'first-start', 'road-test'];

/** Names far enough from each other that a slip of the hand in one is no other one. */
const SINGLE = ['bonnet', 'radiator-shell', 'steering-box', 'windscreen', 'magneto', 'fuel-tank', 'speedometer'];
const INNER = [
  ['impulse-coupling', 'magneto'],
  ['glass', 'windscreen'],
  ['drain-plug', 'fuel-tank'],
] as const;
const CANDIDATES = [
  ['bonnet-repro', 'bonnet'],
  ['tank-from-donor', 'fuel-tank'],
  ['clock-new-old', 'speedometer'],
] as const;
const LOTS = [
  ['wheel-nuts', 5],
  ['cylinder-bolts', 8],
] as const;

const CATALOGUE: readonly Readonly<Record<string, string>>[] = [
  ...SINGLE.map((id) => ({ id, name: id, origin: 'original' })),
  ...INNER.map(([id, outer]) => ({ id, name: id, origin: 'original', in: outer })),
  ...CANDIDATES.map(([id, of]) => ({ id, name: id, origin: 'donor', for: of })),
  ...LOTS.map(([id, count]) => ({ id, name: id, origin: 'original', count: String(count) })),
];

/** What a part is like while evenings are made up, in the simplest words. */
type Spot = 'on' | 'absent' | 'gone' | `store ${string}` | `bag ${number}` | `out ${string}`;

/** A random number from 0 to less than n. */
type Roll = (n: number) => number;

class Evenings {
  readonly #roll: Roll;
  readonly #at = new Map<string, Spot>();
  readonly #lots = new Map<string, { on: number; off: { spot: Spot; count: number }[] }>();
  readonly #bags = new Set<number>();
  readonly #open = new Map<string, number | null>();
  #reached = 0;
  #items = 0;
  #cleaner = 2000;

  constructor(roll: Roll) {
    this.#roll = roll;
    for (const id of SINGLE) this.#at.set(id, 'on');
    for (const [id] of INNER) this.#at.set(id, 'on');
    for (const [id] of CANDIDATES) this.#at.set(id, 'absent');
    for (const [id, count] of LOTS) this.#lots.set(id, { on: count, off: [] });
  }

  #pick<T>(list: readonly T[]): T {
    return list[this.#roll(list.length)] as T;
  }

  /** One evening's entries: each can be, after those before it. */
  evening(): Line[] {
    const lines: Line[] = [];
    const filled = new Set<number>();
    const touched = new Set<string>();
    const kinds = 3 + this.#roll(4);
    for (let n = 0; n < kinds; n += 1) lines.push(...this.#something(lines, filled, touched));
    return lines;
  }

  #something(lines: readonly Line[], filled: Set<number>, touched: Set<string>): Line[] {
    const kind = this.#roll(20);
    if (kind < 10) return this.#single(filled, touched);
    if (kind < 13) return this.#lot(filled, touched);
    if (kind < 14) return this.#emptied(filled, lines);
    if (kind < 15) return this.#opened();
    if (kind < 16) return this.#closedOrPutOff(touched);
    if (kind < 17) return this.#milestone(lines, touched);
    if (kind < 18) return [{ field: 'decisions', says: { part: this.#pick(SINGLE), verdict: 'defer', because: 'Later.' } }];
    if (kind < 19)
      return [
        { field: 'hours', says: { by: this.#pick(['rh', 'jm']), on: this.#pick(['brakes', ...SINGLE]), time: `${10 + this.#roll(50)}m` } },
      ];
    return this.#cleanerUsed();
  }

  #cleanerUsed(): Line[] {
    if (this.#cleaner < 200) {
      this.#cleaner += 5000;
      return [{ field: 'bought', says: { consumable: 'brake-cleaner', amount: '5 L', cost: '20.00' } }];
    }
    const ml = 50 + this.#roll(100);
    this.#cleaner -= ml;
    return [{ field: 'used', says: { consumable: 'brake-cleaner', amount: `${ml} ml`, on: 'brakes' } }];
  }

  /** Where something is put: a store, or a bag filled in this note. */
  #place(filled: Set<number>): { readonly to: string; readonly bag: Line[] } {
    if (this.#roll(3) > 0) return { to: this.#pick(STORES), bag: [] };
    const [known] = filled;
    if (known !== undefined) return { to: `bag ${known}`, bag: [] };
    let bag = 1;
    while (this.#bags.has(bag)) bag += 1;
    filled.add(bag);
    this.#bags.add(bag);
    return { to: `bag ${bag}`, bag: [{ field: 'bags', says: { bag: String(bag), holds: '[some small things]' } }] };
  }

  #carrierOf(id: string): string | null {
    return INNER.find(([inner]) => inner === id)?.[1] ?? null;
  }

  #standing(position: string): string | null {
    return [position, ...CANDIDATES.filter(([, of]) => of === position).map(([id]) => id)].find((id) => this.#at.get(id) === 'on') ?? null;
  }

  /** Whether a part may be touched: what it is in is on the vehicle with it, and it was left alone this evening. */
  #isFree(id: string, touched: ReadonlySet<string>): boolean {
    const carrier = this.#carrierOf(id);
    return !touched.has(id) && (carrier === null || this.#at.get(carrier) === 'on');
  }

  #single(filled: Set<number>, touched: Set<string>): Line[] {
    const free = [...this.#at.keys()].filter((id) => this.#isFree(id, touched) && this.#at.get(id) !== 'gone');
    if (free.length === 0) return [];
    const id = this.#pick(free);
    touched.add(id);
    const spot = this.#at.get(id) ?? 'gone';
    if (spot === 'on') return this.#offOrWork(id, filled);
    if (spot === 'absent') return this.#comes(id);
    if (spot.startsWith('out ')) return this.#back(id);
    return this.#fromStore(id, filled);
  }

  #offOrWork(id: string, filled: Set<number>): Line[] {
    if (this.#roll(4) === 0) return [{ field: 'parts', says: { part: id, did: this.#pick(['cleaned', 'inspected', 'lubricated']) } }];
    const { to, bag } = this.#place(filled);
    this.#at.set(id, to.startsWith('bag') ? (to as Spot) : `store ${to}`);
    return [...bag, { field: 'parts', says: { part: id, did: this.#pick(['removed', '[removed, inspected]']), to } }];
  }

  #comes(id: string): Line[] {
    const to = this.#pick(STORES);
    this.#at.set(id, `store ${to}`);
    return [{ field: 'parts', says: { part: id, did: 'acquired', to } }];
  }

  #back(id: string): Line[] {
    const to = this.#pick(STORES);
    this.#at.set(id, `store ${to}`);
    return [{ field: 'parts', says: { part: id, did: 'returned', to } }];
  }

  #fromStore(id: string, filled: Set<number>): Line[] {
    const home = CANDIDATES.find(([one]) => one === id)?.[1] ?? id;
    const holds = INNER.some(([, outer]) => outer === home);
    const may = this.#standing(home) === null && !(holds && id !== home);
    const what = this.#roll(10);
    if (may && what < 6) {
      this.#at.set(id, 'on');
      return [{ field: 'parts', says: { part: id, did: this.#pick(['fitted', '[cleaned, fitted]']) } }];
    }
    if (what < 7) {
      const firm = this.#pick(FIRMS);
      this.#at.set(id, `out ${firm}`);
      return [{ field: 'parts', says: { part: id, did: 'sent-out', to: firm } }];
    }
    if (what < 9) {
      const { to, bag } = this.#place(filled);
      this.#at.set(id, to.startsWith('bag') ? (to as Spot) : `store ${to}`);
      return [...bag, { field: 'parts', says: { part: id, did: 'stored', to } }];
    }
    if (holds || id === home) return [{ field: 'parts', says: { part: id, did: 'repaired' } }];
    this.#at.set(id, 'gone');
    return [{ field: 'parts', says: { part: id, did: 'gone', how: this.#pick(['scrapped', 'sold']) } }];
  }

  #lot(filled: Set<number>, touched: Set<string>): Line[] {
    const id = this.#pick(LOTS)[0];
    const lot = this.#lots.get(id);
    if (!lot || touched.has(id)) return [];
    touched.add(id);
    const [first] = lot.off;
    if (first && this.#roll(2) === 0) {
      lot.off.shift();
      lot.on += first.count;
      const from = first.spot.replace('store ', '');
      return [{ field: 'parts', says: { part: id, did: 'fitted', from, count: String(first.count) } }];
    }
    if (lot.on === 0) return [];
    const count = 1 + this.#roll(lot.on);
    const { to, bag } = this.#place(filled);
    const spot: Spot = to.startsWith('bag') ? (to as Spot) : `store ${to}`;
    const there = lot.off.find((one) => one.spot === spot);
    if (there) there.count += count;
    else lot.off.push({ spot, count });
    lot.on -= count;
    return [...bag, { field: 'parts', says: { part: id, did: 'removed', count: String(count), to } }];
  }

  /** A bag with nothing of the catalogue in it any more is emptied. */
  #emptied(filled: ReadonlySet<number>, lines: readonly Line[]): Line[] {
    const said = new Set(lines.filter(({ field }) => field === 'emptied').map(({ says }) => says));
    const inUse = new Set<Spot>([...this.#at.values(), ...[...this.#lots.values()].flatMap(({ off }) => off.map(({ spot }) => spot))]);
    const free = [...this.#bags].filter((bag) => !filled.has(bag) && !inUse.has(`bag ${bag}`) && !said.has(String(bag)));
    const [bag] = free;
    if (bag === undefined) return [];
    this.#bags.delete(bag);
    return [{ field: 'emptied', says: String(bag) }];
  }

  #opened(): Line[] {
    const id = `${this.#pick(['bleed', 'seal', 'trace', 'ask', 'cap'])}-${['front', 'rear', 'near', 'off', 'upper', 'lower'][this.#items % 6]}-${this.#items}`;
    this.#items += 1;
    const left = MILESTONES.slice(this.#reached);
    const before = left.length === 0 || this.#roll(3) === 0 ? null : this.#pick(left);
    this.#open.set(id, before === null ? null : MILESTONES.indexOf(before));
    return [{ field: 'opens', says: { id, kind: 'task', what: 'Something to do', ...(before === null ? {} : { before }) } }];
  }

  #closedOrPutOff(touched: Set<string>): Line[] {
    const ids = [...this.#open.keys()].filter((id) => !touched.has(id));
    if (ids.length === 0) return [];
    const id = this.#pick(ids);
    touched.add(id);
    const last = MILESTONES.length - 1;
    if (this.#roll(3) === 0 && this.#reached <= last) {
      this.#open.set(id, last);
      return [{ field: 'defers', says: { id, to: MILESTONES[last] as string, because: 'Not now.' } }];
    }
    this.#open.delete(id);
    return [{ field: 'closes', says: { id, how: 'Done.' } }];
  }

  /** Reached with everything due before it closed in the same note. */
  #milestone(lines: readonly Line[], touched: Set<string>): Line[] {
    const next = MILESTONES[this.#reached];
    if (next === undefined || lines.some(({ field }) => field === 'reached') || this.#roll(3) > 0) return [];
    const due = [...this.#open].filter(([, before]) => before !== null && before <= this.#reached).map(([id]) => id);
    if (due.some((id) => touched.has(id) || lines.some(({ says }) => typeof says !== 'string' && says.id === id))) return [];
    for (const id of due) this.#open.delete(id);
    for (const id of due) touched.add(id);
    this.#reached += 1;
    return [...due.map((id): Line => ({ field: 'closes', says: { id, how: 'Done.' } })), { field: 'reached', says: { milestone: next } }];
  }
}

/** A sound journal of up to so many evenings, one a day. */
export function workshops(most: number): fc.Arbitrary<Workshop> {
  const rolls = fc.array(fc.nat({ max: 0x7fffffff }), { minLength: 60, maxLength: 60 });
  return fc.tuple(fc.integer({ min: Math.min(8, most), max: most }), rolls).map(([evenings, seeds]) => {
    let at = 0;
    const roll: Roll = (n) => {
      at += 1;
      const seed = (seeds[at % seeds.length] ?? 0) ^ Math.imul(at, 0x9e3779b1);
      const mixed = Math.imul(seed ^ (seed >>> 15), 0x85ebca6b) >>> 0;
      return ((mixed ^ (mixed >>> 13)) >>> 0) % n;
    };
    const making = new Evenings(roll);
    const notes = Array.from({ length: evenings }, (_, n) => ({
      date: addDays(ARRIVED, 2 * n + 1),
      name: 'work',
      lines: making.evening(),
    }));
    return { parts: CATALOGUE, notes };
  });
}

const JOURNAL = `title: Van
vehicle: { make: Quernby }
arrived: ${ARRIVED}
currency: GBP
time-zone: Europe/London
locale: en-GB
people: { rh: { name: Ruth, rate: 0 }, jm: { name: Jory, rate: 0 } }
subsystems: { brakes: { name: Brakes } }
milestones: { stripped: Stripped, first-start: First start, road-test: Road test }
stores: [${STORES.join(', ')}]
`;

const ORDER: readonly Line['field'][] = [
  'hours',
  'parts',
  'decisions',
  'bought',
  'used',
  'bags',
  'emptied',
  'opens',
  'closes',
  'defers',
  'reached',
];

/** The journal as its files. */
export function workshopFiles({ parts, notes }: Workshop): Record<string, string> {
  const entry = (says: Line['says']) =>
    typeof says === 'string'
      ? says
      : `{ ${Object.entries(says)
          .map(([name, value]) => `${name}: ${value}`)
          .join(', ')} }`;
  const note = ({ date, lines }: Note) => {
    const fields = ORDER.flatMap((field) => {
      const own = lines.filter((line) => line.field === field);
      return own.length === 0 ? [] : [`${field}:\n${own.map(({ says }) => `  - ${entry(says)}\n`).join('')}`];
    });
    return `---\ndate: ${date}\ntitle: An evening\n${fields.join('')}---\n`;
  };
  return {
    'journal.yaml': JOURNAL,
    'consumables.yaml': 'brake-cleaner: { name: Brake cleaner, unit: L, opening: { amount: 2 L, value: 9.00 } }\n',
    'parts/brakes.yaml': parts.map((part) => `- ${entry(part)}\n`).join(''),
    ...Object.fromEntries(notes.map((one) => [`sessions/${one.date}-${one.name}.md`, note(one)])),
  };
}
