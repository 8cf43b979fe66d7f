import { type Consumable, HAZARDS, type Hazard, type IsoDate, type PartId, type Session } from '../model.ts';
import { whereKey } from '../replay/words.ts';
import { addDays } from '../values/date.ts';
import { keptIn } from '../values/once.ts';
import { carriersOf, insideAt } from './assemblies.ts';
import { unsafePlaces } from './made-safe.ts';
import { consumablesNamedIn, partsNamedIn } from './named-in.ts';
import { perRecord, type RegisterSource } from './source.ts';

/** A hazard as a label prints it: `lead paint`. */
export function hazardInWords(hazard: Hazard): string {
  return hazard.replaceAll('-', ' ');
}

/** The hazards that a part carries at the end of a day: none once all of it is gone or made safe, and none before it is here. */
export function hazardsOfPart(record: RegisterSource, part: PartId, date: IsoDate): readonly Hazard[] {
  const { hazards = [] } = record.journal.parts.get(part) ?? {};
  return hazards.length > 0 && unsafePlaces(record, part, date).length > 0 ? hazards : [];
}

/** Something of a part that lies at one place, `place` being its `whereKey`. */
export interface Lying {
  readonly part: PartId;
  readonly place: string;
}

/** The hazards of what lies at certain places at the end of a day, and of what is in it: none of pieces that were surely made safe. */
export function hazardsOfLying(record: RegisterSource, things: Iterable<Lying>, date: IsoDate): readonly Hazard[] {
  return inOrder([...things].flatMap((thing) => hazardsThere(record, thing, date)));
}

function hazardsThere(record: RegisterSource, { part, place }: Lying, date: IsoDate): readonly Hazard[] {
  const { hazards = [] } = record.journal.parts.get(part) ?? {};
  const isUnsafe = hazards.length > 0 && unsafePlaces(record, part, date).some(({ where }) => whereKey(where) === place);
  const inside = insideAt(record, part, date).map((one) => ({ part: one.part, place: whereKey(one.where) }));
  return [...(isUnsafe ? hazards : []), ...hazardsOfLying(record, inside, date)];
}

/** The hazards of several parts and of what is in them at the end of a day, each once, in the order of the list. */
export function hazardsOfParts(record: RegisterSource, parts: Iterable<PartId>, date: IsoDate): readonly Hazard[] {
  const asked = [...parts].filter((part) => everDangerous(record).has(part));
  return inOrder(asked.flatMap((part) => withInside(record, part, date)).flatMap((part) => hazardsOfPart(record, part, date)));
}

/** Parts that carry a hazard, and those that one of them was ever in: of all others there is nothing to ask on any day. */
const everDangerous = perRecord((record): ReadonlySet<PartId> => {
  const found = new Set([...record.journal.parts.values()].filter(({ hazards }) => hazards.length > 0).map(({ id }) => id));
  // What is added while it goes on is gone through too.
  for (const part of found) for (const carrier of carriersOf(record, part)) found.add(carrier);
  return found;
});

function withInside(record: RegisterSource, part: PartId, date: IsoDate): readonly PartId[] {
  return [part, ...insideAt(record, part, date).flatMap((one) => withInside(record, one.part, date))];
}

/**
 * The hazards that a session touches, in any of its fields: those it names itself, those of the parts it names and of
 * what is in them, as they were before it or after it, and those of the consumables it names.
 */
export function hazardsOfSession(record: RegisterSource, session: Session): readonly Hazard[] {
  return keptIn(touchedBy(record), session, () => hazardsTouched(record, session));
}

const touchedBy = perRecord(() => new Map<Session, readonly Hazard[]>());

function hazardsTouched(record: RegisterSource, session: Session): readonly Hazard[] {
  const before = addDays(session.date, -1);
  const parts = [...partsNamedIn(record, session)];
  const consumables = [...consumablesNamedIn(session)].flatMap((id) => record.journal.consumables.get(id) ?? []);
  return inOrder([
    ...session.cautions,
    ...hazardsOfParts(record, parts, before),
    ...hazardsOfParts(record, parts, session.date),
    ...consumables.flatMap(hazardsOfConsumable),
  ]);
}

/**
 * What a hazard statement tells of the hazards of the trade. Only what follows from its words: flammable liquids and
 * vapours that make drowsy (solvents), isocyanates, lead, chromates and cadmium, what is under pressure, what heats itself.
 */
const TOLD: readonly (readonly [RegExp, Hazard])[] = [
  [/^(H22[2-6]|H336)$/, 'solvents'],
  [/^(H22[239]|H28[0-4])$/, 'pressure'],
  [/^H25[12]$/, 'oily-rags'],
  [/^(H26[01])$/, 'light-metal'],
  [/^EUH201A?$/, 'lead-paint'],
  [/^EUH20[37]$/, 'plating'],
  [/^EUH204$/, 'isocyanates'],
  [/^EUH212$/, 'dust'],
];

/** The hazards of the trade that a consumable has: those the catalogue gives it, and those its statements tell. */
export function hazardsOfConsumable({ hazards, statements }: Consumable): readonly Hazard[] {
  const codes = statements.flatMap((code) => code.split('+'));
  return inOrder([...hazards, ...TOLD.flatMap(([pattern, hazard]) => (codes.some((code) => pattern.test(code)) ? [hazard] : []))]);
}

function inOrder(found: readonly Hazard[]): readonly Hazard[] {
  return HAZARDS.filter((hazard) => found.includes(hazard));
}
