/** Parts that a purchase brings into the catalogue: bought, catalogued and acquired in one entry. */
import Fraction from 'fraction.js';
import { GENERAL, type SubsystemId } from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { NoteFields, NoteSource, PartFields, PartsFile } from './journal-source.ts';
import type { WrittenEntry } from './written-entry.ts';

type Bought = NoteFields['bought'][number]['says']['makes'][number];
type Touched = NoteFields['parts'][number];

function madeIn({ bought, bills }: NoteFields): Bought[] {
  return [...bought, ...bills.flatMap(({ says }) => says.lines)].flatMap(({ says }) => says.makes);
}

/** The catalogue entries of what notes bring, each under the subsystem of the position that it is for. */
export function catalogueOf(notes: readonly NoteSource[], parts: readonly PartsFile[]): PartsFile[] {
  const subsystems = new Map(parts.flatMap(({ parts: list, subsystem }) => list.map(({ says }) => [says.id, subsystem] as const)));
  return notes.flatMap(({ file, source, tree, undated }) =>
    madeIn(source).map((made): PartsFile => {
      const subsystem: SubsystemId = subsystems.get(made.says.for) ?? GENERAL;
      return { file, subsystem, parts: [{ ...made, says: candidateOf(made.says, undated ? null : source.date) }], tree };
    }),
  );
}

/** @param acquired the day of the note, before which nobody knew of it */
function candidateOf({ id, name, origin, for: position, count }: Bought['says'], acquired: IsoDate | null): PartFields {
  const nothing = {
    evidence: null,
    numbered: null,
    in: null,
    found: null,
    missing: null,
    missingWhich: [],
    within: null,
    at: null,
    marks: null,
    finish: null,
  };
  const none = { condition: null, hazard: [], component: [], weight: new Fraction(1), private: null, note: null };
  return { ...nothing, ...none, id, name, origin, count, for: position, acquired };
}

/** The notes with what their purchases bring acquired, before anything else that a note did. An id that is taken brings nothing. */
export function withAcquired(notes: readonly NoteSource[], parts: readonly PartsFile[]): NoteSource[] {
  const taken = new Set(parts.flatMap(({ parts: list }) => list.map(({ says }) => says.id)));
  return notes.map((note) => {
    const made = madeIn(note.source).filter(({ says }) => !taken.has(says.id));
    return made.length === 0 ? note : { ...note, source: { ...note.source, parts: [...made.map(acquired), ...note.source.parts] } };
  });
}

/** An entry under `parts` that says nothing yet. */
const NOTHING_DONE: Touched['says'] = {
  part: '',
  did: [],
  to: null,
  at: null,
  from: [],
  count: null,
  which: [],
  into: [],
  how: null,
  pattern: null,
  goesBack: null,
  stack: [],
  asWas: null,
  work: null,
  due: null,
  quoted: null,
  condition: null,
  marks: null,
  finish: null,
  torque: null,
  note: null,
};

function acquired({ says: { id, at }, ...written }: Bought): Touched {
  return { ...written, says: { ...NOTHING_DONE, part: id, did: ['acquired'], to: at } } satisfies WrittenEntry<Touched['says']>;
}
