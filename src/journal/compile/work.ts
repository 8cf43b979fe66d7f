/** Hours, parts touched, decisions, methods and measurements of a note. */
import type { Decision, Destination, Measurement, Method, PartEntry, PartId, Place, WorkedTime } from '../model.ts';
import { isDoubtful } from '../read/doubtful.ts';
import type { Path } from '../read/source/tree.ts';
import type { SessionSource } from '../schema/session.ts';
import { isWithin, readLimits } from '../values/limits.ts';
import { byDay, readTime } from '../values/time.ts';
import type { NoteContext } from './session.ts';

/** Applies a function to every entry, with its index, and leaves out those that come to nothing or are in doubt. */
export function each<In, Out>(list: readonly In[] | undefined, make: (entry: In, index: number) => Out | null): Out[] {
  const made = (list ?? []).map((entry, index) => {
    const each = make(entry, index);
    return isDoubtful(entry) ? null : each;
  });
  return made.filter((each) => each !== null) as Out[];
}

/** Ids of the parts named; unknown ones are reported and left out. */
export function partsNamed(ids: readonly string[] | undefined, context: NoteContext, ...path: Path): PartId[] {
  return each(ids, (id, i) => context.names.part(id, context.place(...path, i))?.id ?? null);
}

export function hoursOf(list: SessionSource['hours'], context: NoteContext): WorkedTime[] {
  const { names, out, catalogues, date, place } = context;
  return each(list, (entry, i) => {
    const by = names.person(entry.by, place('hours', i, 'by'));
    const on = names.charge(entry.on, place('hours', i, 'on'));
    const time = out.take(readTime(entry.time, date, catalogues.settings.timeZone), place('hours', i, 'time'));
    if (by === null || on === null || time === null) return null;
    const { minutes, span } = time;
    const days = span ? byDay(span, date, catalogues.settings.timeZone) : [{ date, minutes }];
    return { by, on, minutes, days, span, text: entry.time, unpaid: entry.unpaid ?? null, place: place('hours', i) };
  });
}

export function touchedOf(list: SessionSource['parts'], context: NoteContext): PartEntry[] {
  const { names, place } = context;
  return each(list, (entry, i) => {
    const part = names.part(entry.part, place('parts', i, 'part'));
    const at = entry.at === undefined ? null : names.position(entry.at, place('parts', i, 'at'));
    const bags = (['to', 'from'] as const).filter((field) => isMeantAsBag(entry[field]));
    for (const field of bags) reportBag(entry[field] ?? '', place('parts', i, field), context);
    if (part === null || (entry.at !== undefined && at === null) || bags.length > 0) return null;
    return {
      part: part.id,
      did: entry.did ?? [],
      count: entry.count ?? null,
      to: destinationOf(entry.to),
      at,
      from: destinationOf(entry.from),
      how: entry.how ?? null,
      condition: entry.condition ?? null,
      marks: entry.marks ?? null,
      finish: entry.finish ?? null,
      note: entry.note ?? null,
      place: place('parts', i),
    };
  });
}

const BAG = /^bag\s+([1-9]\d{0,4})$/;

function isMeantAsBag(text: string | undefined): boolean {
  return text !== undefined && /^bags?\b/i.test(text) && !BAG.test(text);
}

function reportBag(written: string, place: Place, { out, catalogues }: NoteContext): void {
  if (catalogues.stores.includes(written)) return;
  const number = /\d+/.exec(written)?.[0];
  const hint = `Write \`bag ${number ?? 14}\`${number === undefined ? ', with its number' : ''}.`;
  out.report('A310', place, `\`${written}\` is no bag: a bag is \`bag\` and its number.`, { hint });
}

function destinationOf(text: string | undefined): Destination | null {
  if (text === undefined) return null;
  const bag = BAG.exec(text);
  return bag ? { bag: Number(bag[1]), name: null } : { bag: null, name: text };
}

export function decisionsOf(list: SessionSource['decisions'], context: NoteContext): Decision[] {
  const { names, catalogues, id, date, place } = context;
  return each(list, (entry, i) => {
    const part = names.part(entry.part, place('decisions', i, 'part'));
    const other = entry.with === undefined ? null : names.part(entry.with, place('decisions', i, 'with'));
    if (part === null || (entry.with !== undefined && other === null)) return null;
    return {
      id: `${id}#${i + 1}`,
      session: id,
      date,
      part: part.id,
      position: part.position,
      verdict: entry.verdict,
      with: other?.id ?? null,
      count: entry.count ?? catalogues.positions.get(part.position)?.count ?? 1,
      because: entry.because ?? null,
      place: place('decisions', i),
    };
  });
}

export function methodsOf(list: SessionSource['methods'], context: NoteContext): Method[] {
  return each(list, (entry, i) => ({
    on: partsNamed(entry.on, context, 'methods', i, 'on'),
    how: entry.how,
    with: each(entry.with, (id, j) => context.names.consumable(id, context.place('methods', i, 'with', j))?.id ?? null),
    material: entry.material ?? null,
    result: entry.result ?? null,
    note: entry.note ?? null,
    place: context.place('methods', i),
  }));
}

export function measuredOf(list: SessionSource['measured'], context: NoteContext): Measurement[] {
  const { names, out, place } = context;
  return each(list, (entry, i) => {
    const part = names.part(entry.part, place('measured', i, 'part'));
    const known = entry.limits !== undefined && !isDoubtful(entry);
    const limits = !known ? null : out.take(readLimits(entry.limits ?? '', entry.value), place('measured', i, 'limits'));
    if (part === null) return null;
    return {
      part: part.id,
      what: entry.what,
      as: entry.as ?? null,
      value: entry.value,
      low: limits?.low ?? null,
      high: limits?.high ?? null,
      limitsText: limits ? (entry.limits ?? null) : null,
      within: limits ? isWithin(entry.value, limits) : null,
      note: entry.note ?? null,
      place: place('measured', i),
    };
  });
}
