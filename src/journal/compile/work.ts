/** Hours, parts touched, decisions, methods and measurements of a note. */
import type { Attribution, Decision, Measurement, Method, PartEntry, PersonId, Place, WorkedTime } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { destinationOf } from '../schema/fields.ts';
import { isWithin, readLimits, unitLeftOut } from '../values/limits.ts';
import { byDay, readTime } from '../values/time.ts';
import { believed, given, known, partsNamed } from './believed.ts';
import { UNDER_GENERAL } from './context.ts';
import { paperNamed } from './media.ts';
import type { NoteAtHand } from './session.ts';
import { whichOf } from './which-of.ts';

export function hoursOf(list: NoteFields['hours'], context: NoteAtHand): WorkedTime[] {
  const { names, out, catalogues, date } = context;
  return believed(list, ({ says, place, placeOf }) => {
    const by = says.by === null ? onlyPerson(says.time, place, context) : names.person(says.by, placeOf('by'));
    const on = says.on === null ? UNDER_GENERAL : names.charge(says.on, placeOf('on'));
    const time = out.take(readTime(says.time, date, catalogues.settings.timeZone), placeOf('time'));
    if (by === null || on === null || time === null) return null;
    const { minutes, span } = time;
    const days = span ? byDay(span, date, catalogues.settings.timeZone) : [{ date, minutes }];
    return { by, on, minutes, days, span, text: says.time, unpaid: says.unpaid, perHour: null, place };
  });
}

/** Who worked where no entry says it: nobody else could be meant. */
function onlyPerson(time: string, place: Place, { catalogues, out }: NoteAtHand): PersonId | null {
  const [person, ...others] = [...catalogues.people.keys()];
  if (person !== undefined && others.length === 0) return person;
  const hint =
    person === undefined
      ? 'Name people in journal.yaml, under `people`.'
      : `Write \`{ by: ${person}, time: ${time} }\`, or ${others.map((id) => `\`${id}\``).join(', ')}; \`by: [${[person, others[0]].join(', ')}]\` where they worked the same time.`;
  out.report('A302', place, 'The field `by` is missing.', { hint });
  return null;
}

export function touchedOf(list: NoteFields['parts'], context: NoteAtHand): PartEntry[] {
  const { names } = context;
  return believed(list, (entry) => {
    const { says, place, placeOf } = entry;
    const part = names.part(says.part, placeOf('part'));
    const at = given(says.at, (id) => names.position(id, placeOf('at')));
    const wrote = [
      { name: says.to?.name ?? null, at: placeOf('to') },
      ...says.from.map((from, n) => ({ name: destinationOf(from).name, at: placeOf('from', n) })),
    ];
    const bags = wrote.filter(({ name }) => isMeantAsBag(name));
    for (const bag of bags) reportBag(bag.name ?? '', bag.at, context);
    if (part === null || (says.at !== null && at === null) || bags.length > 0) return null;
    const which = whichOf(says, part, placeOf('which'), context.out);
    const into = partsNamed(says.into, entry, context, 'into');
    if (says.did.includes('fitted') && says.into.length > 1) {
      context.out.report('A303', placeOf('into', 1), 'One part was expected, a second stands here.', {
        hint: 'Name the one that it was fitted into.',
      });
    }
    const more = {
      ...sourcesOf(entry, context),
      pattern: given(says.pattern, (id) => names.part(id, placeOf('pattern'))?.id ?? null),
      quoted: given(says.quoted, (written) => names.money(written, placeOf('quoted'))),
    };
    if (says.asWas === false && says.note === null) {
      const hint = 'Add `note:` and how it goes now.';
      context.out.report(
        'A302',
        placeOf('as-was'),
        `\`as-was: no\` needs a \`note\`: \`${part.id}\` goes back otherwise than it came off.`,
        { hint },
      );
    }
    return { ...says, ...more, part: part.id, at, which, into, count: says.count ?? which?.length ?? null, place };
  });
}

/** `from`: the parts that something was made from, else the one place that it was taken from. */
function sourcesOf({ says, placeOf }: WrittenEntry<Says>, { names, out }: NoteAtHand): Pick<PartEntry, 'from' | 'madeFrom'> {
  if (says.did.includes('made')) {
    return { from: null, madeFrom: known(says.from.map((id, n) => names.part(id, placeOf('from', n))?.id ?? null)) };
  }
  const [first, second] = says.from;
  if (second !== undefined) {
    out.report('A303', placeOf('from', 1), 'One place was expected, a second stands here.', { hint: 'Write an entry for each place.' });
  }
  return { from: first === undefined ? null : destinationOf(first), madeFrom: [] };
}

type Says = NoteFields['parts'][number]['says'];

/** What was believed of origins that evening. */
export function attributedOf(list: NoteFields['attributed'], context: NoteAtHand): Attribution[] {
  const { names, id, date } = context;
  return believed(list, ({ says, place, placeOf }) => {
    const part = names.part(says.part, placeOf('part'));
    const by = given(says.by, (who) => names.person(who, placeOf('by')));
    const paper = given(says.paper, (written) => paperNamed(written, context, placeOf('paper')));
    return part === null ? null : { ...says, part: part.id, by, paper, session: id, date, place };
  });
}

function isMeantAsBag(name: string | null | undefined): boolean {
  return /^bags?\b/i.test(name ?? '');
}

function reportBag(written: string, place: Place, { out, catalogues }: NoteAtHand): void {
  if (catalogues.stores.includes(written)) return;
  const number = /\d+/.exec(written)?.[0];
  const hint = `Write \`bag ${number ?? 14}\`${number === undefined ? ', with its number' : ''}.`;
  out.report('A310', place, `\`${written}\` is no bag: a bag is \`bag\` and its number.`, { hint });
}

export function decisionsOf(list: NoteFields['decisions'], context: NoteAtHand): Decision[] {
  const { names, catalogues, id, date } = context;
  return believed(list, ({ says, place, placeOf }, i) => {
    const part = names.part(says.part, placeOf('part'));
    const other = given(says.with, (id) => names.part(id, placeOf('with')));
    if (part === null || (says.with !== null && other === null)) return null;
    const { position } = part;
    const which = part && whichOf(says, part, placeOf('which'), context.out);
    const count = says.count ?? which?.length ?? catalogues.positions.get(position)?.count ?? 1;
    return { ...says, part: part.id, with: other?.id ?? null, id: `${id}#${i + 1}`, session: id, date, position, which, count, place };
  });
}

export function methodsOf(list: NoteFields['methods'], context: NoteAtHand): Method[] {
  return believed(list, (entry) => ({
    ...entry.says,
    on: partsNamed(entry.says.on, entry, context, 'on'),
    with: known(entry.says.with.map((id, n) => context.names.consumable(id, entry.placeOf('with', n))?.id ?? null)),
    place: entry.place,
  }));
}

export function measuredOf(list: NoteFields['measured'], { names, out }: NoteAtHand): Measurement[] {
  return believed(list, ({ says, doubtful, place, placeOf }) => {
    const part = names.part(says.part, placeOf('part'));
    const { limits: limitsText, ...rest } = says;
    const leftOut = limitsText === null || doubtful ? null : unitLeftOut(limitsText, says.value);
    if (leftOut !== null) out.take(leftOut, placeOf('value'));
    const limits =
      limitsText === null || doubtful || leftOut !== null ? null : out.take(readLimits(limitsText, says.value), placeOf('limits'));
    if (part === null) return null;
    return {
      ...rest,
      part: part.id,
      low: limits?.low ?? null,
      high: limits?.high ?? null,
      limitsText: limits && limitsText,
      within: limits && isWithin(says.value, limits),
      place,
    };
  });
}
