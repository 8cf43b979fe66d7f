/** Journals for tests, written as the fields a test is about; everything else has a plain default. */
import type {
  ActionWord,
  BagFilling,
  Decision,
  Destination,
  IsoDate,
  ItemOpening,
  Journal,
  Part,
  PartEntry,
  Place,
  Position,
  Session,
  Verdict,
} from '../../src/journal/model.ts';
import { type JournalRecord, type Ledger, WORKSHOP } from '../../src/journal/record.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { partSchema } from '../../src/journal/schema/catalogues.ts';
import { blankEntry, blankSession } from './blank.ts';

export const ARRIVED = '2030-09-14';
export const TODAY = '2031-12-31';

export const placeAt = (file: string, line = 1): Place => ({ file, line, column: 1, endLine: line, endColumn: 2 });

type PartFields = Partial<Omit<Part, 'id' | 'position' | 'makesPosition'>> & { readonly for?: string };

/** A part of the catalogue; without `for` it makes the position of its id. */
export function part(id: string, fields: PartFields = {}): Part {
  const { for: of, ...rest } = fields;
  return {
    ...partSchema.parse({ id, name: id }),
    subsystem: 'brakes',
    origin: of === undefined ? 'original' : 'donor',
    position: of ?? id,
    makesPosition: of === undefined,
    inside: null,
    bag: null,
    found: of === undefined ? 'fitted' : 'loose',
    store: null,
    missing: 0,
    missingWhich: null,
    hazards: [],
    components: [],
    place: placeAt('parts/brakes.yaml'),
    ...rest,
  };
}

type EntryFields = Partial<Omit<PartEntry, 'part' | 'did' | 'to' | 'from'>> & { readonly to?: string; readonly from?: string };

/** An entry under `parts`; `to` and `from` as a note has them. */
export function did(id: string, words: ActionWord | readonly ActionWord[], fields: EntryFields = {}): PartEntry {
  const { to, from, ...rest } = fields;
  return {
    ...blankEntry('parts', { part: id }),
    did: typeof words === 'string' ? [words] : words,
    which: null,
    madeFrom: [],
    quoted: null,
    place: placeAt('sessions/note.md'),
    ...rest,
    to: destination(to),
    from: destination(from),
  };
}

function destination(text: string | undefined): Destination | null {
  if (text === undefined) return null;
  const bag = /^bag (\d+)$/.exec(text);
  return bag ? { bag: Number(bag[1]), name: null } : { bag: null, name: text };
}

/** A decision as a note has it; `journal` fills in its session, date, position and count. */
export type DecisionFields = Partial<Omit<Decision, 'part' | 'verdict'>> & Pick<Decision, 'part' | 'verdict'>;

export function decide(id: string, verdict: Verdict, fields: Partial<Decision> = {}): DecisionFields {
  return { because: 'it is so', ...fields, part: id, verdict };
}

type SessionFields = Partial<Omit<Session, 'decisions' | 'opens' | 'closes' | 'defers' | 'reached' | 'bags' | 'emptied'>> & {
  readonly decisions?: readonly DecisionFields[];
  readonly opens?: readonly (Partial<ItemOpening> & Pick<ItemOpening, 'id'>)[];
  readonly closes?: readonly string[];
  readonly defers?: readonly { readonly id: string; readonly to: string }[];
  readonly reached?: readonly { readonly milestone: string; readonly withOpen?: readonly string[]; readonly because?: string }[];
  readonly bags?: readonly (number | (Partial<BagFilling> & Pick<BagFilling, 'bag'>))[];
  readonly emptied?: readonly number[];
};

/** A session before `journal` has given its entries their places. */
export interface Evening {
  readonly date: IsoDate;
  readonly name: string;
  readonly fields: SessionFields;
}

/** One evening; sessions of one day are told apart by `name`. */
export function evening(date: IsoDate, fields: SessionFields = {}, name = 'work'): Evening {
  return { date, name, fields };
}

export interface JournalFields {
  readonly parts: readonly Part[];
  readonly evenings?: readonly Evening[];
  readonly stores?: readonly string[];
  readonly milestones?: readonly string[];
  readonly subsystems?: readonly string[];
}

export function journal({
  parts,
  evenings = [],
  stores = ['shelf A1', 'shelf B2', 'loft'],
  milestones = ['stripped', 'first-start', 'road-test'],
  subsystems = ['brakes', 'frame'],
}: JournalFields): Journal {
  const positions = new Map<string, Position>();
  for (const maker of parts.filter((one) => one.makesPosition)) {
    const { id, name, subsystem, count, weight, components, inside } = maker;
    const belonging = parts.filter((one) => one.position === id && one !== maker).map((one) => one.id);
    positions.set(id, { id, name, subsystem, count, weight, components, inside, parts: [id, ...belonging] });
  }
  return {
    settings: {
      title: 'The bakery van',
      about: null,
      vehicle: { make: 'Quernby', model: 'Ten', year: '1952', marks: [] },
      keeper: null,
      arrived: ARRIVED,
      currency: 'GBP',
      currencyDigits: 2,
      timeZone: 'Europe/London',
      locale: 'en-GB',
      address: null,
      stock: 'fifo',
      markUp: new Map(),
      deductible: [],
      workshop: { name: null, address: null, taxNumber: null, tax: null },
      client: { name: null, address: null, reference: null, terms: null },
      shows: [],
      copies: new Map(),
      front: null,
      keepPictureFacts: [],
    },
    people: new Map(),
    threads: [],
    drawings: [],
    identityTables: [],
    subsystems: new Map(subsystems.map((id) => [id, { id, name: id, budgetMinutes: null, budgetMoney: null }])),
    milestones: milestones.map((id, order) => ({ id, name: id, order })),
    stores,
    consumables: new Map(),
    parts: new Map(parts.map((one) => [one.id, one])),
    positions,
    statements: [],
    sessions: evenings.map((one) => sessionOf(one, positions, parts)),
  };
}

function sessionOf({ date, name, fields }: Evening, positions: ReadonlyMap<string, Position>, parts: readonly Part[]): Session {
  const id = `${date}-${name}`;
  const file = `sessions/${id}.md`;
  let line = 1;
  const place = () => placeAt(file, ++line);
  return {
    ...(blankSession() as unknown as Session),
    correctsPlace: null,
    datePlace: placeAt(file),
    links: [],
    body: '',
    title: name,
    ...fields,
    id,
    file,
    date,
    parts: (fields.parts ?? []).map((entry) => ({ ...entry, place: place() })),
    decisions: (fields.decisions ?? []).map((one, index) => {
      const position = parts.find((other) => other.id === one.part)?.position ?? one.part;
      const count = positions.get(position)?.count ?? 1;
      return {
        id: `${id}#${index + 1}`,
        session: id,
        date,
        position,
        with: null,
        count,
        which: null,
        because: null,
        place: place(),
        ...one,
      };
    }),
    bags: (fields.bags ?? []).map((bag) => {
      const told = typeof bag === 'number' ? { bag } : bag;
      return { holds: ['2 bolts'], off: null, goesBack: null, picture: null, place: place(), ...told };
    }),
    emptied: (fields.emptied ?? []).map((bag) => ({ bag, place: place() })),
    opens: (fields.opens ?? []).map((one) => ({
      kind: 'task',
      what: one.id,
      before: null,
      on: null,
      price: null,
      hours: null,
      from: null,
      due: null,
      place: place(),
      ...one,
    })),
    closes: (fields.closes ?? []).map((item) => ({ id: item, how: null, place: place() })),
    defers: (fields.defers ?? []).map(({ id: item, to }) => ({ id: item, to, because: 'later', place: place() })),
    reached: (fields.reached ?? []).map(({ milestone, withOpen = [], because = null }) => ({
      milestone,
      withOpen,
      because,
      place: place(),
    })),
  };
}

const NO_LEDGER: Ledger = { entries: [], bills: [], stock: new Map(), received: [], valuations: [] };

/** The journal replayed. */
export function record(of: Journal, { day = TODAY, ledger = NO_LEDGER }: { day?: IsoDate; ledger?: Ledger } = {}): JournalRecord {
  return { journal: of, history: replay(of).history, ledger, day, copy: WORKSHOP };
}

/** The record, and a complaint when the journal has an error: for tests that are not about errors. */
export function soundRecord(fields: JournalFields, day: IsoDate = TODAY): JournalRecord {
  const of = journal(fields);
  const errors = replay(of).diagnostics.filter(({ severity }) => severity === 'error');
  if (errors.length > 0) throw new Error(errors.map(({ code, message }) => `${code} ${message}`).join('\n'));
  return record(of, { day });
}

/** The codes that replaying a journal gives, in the order found. */
export function codes(fields: JournalFields): string[] {
  return replay(journal(fields)).diagnostics.map(({ code }) => code);
}

/** The journal as it was written at the end of a day: the catalogue, and only the notes up to then. */
export function journalUpTo(of: Journal, date: IsoDate): Journal {
  return { ...of, sessions: of.sessions.filter((session) => session.date <= date) };
}
