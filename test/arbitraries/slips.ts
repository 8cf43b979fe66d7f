/** Single slips of the hand, put into a sound journal before it is written out. */
import type { Line, Note, Workshop } from './workshop.ts';

/** A random number from 0 to less than n. */
export type Roll = (n: number) => number;
export type Slip = (of: Workshop, roll: Roll) => Workshop | null;

/** Fields that hold an id, by the list that they stand in. */
const IDS: Readonly<Record<string, readonly string[]>> = {
  parts: ['part'],
  decisions: ['part'],
  hours: ['by', 'on'],
  used: ['consumable', 'on'],
  bought: ['consumable'],
  opens: ['id', 'before'],
  closes: ['id'],
  defers: ['id', 'to'],
  reached: ['milestone'],
};

interface Spot {
  readonly note: number;
  readonly line: number;
}

function spots(of: Workshop, suits: (line: Line) => boolean): Spot[] {
  return of.notes.flatMap(({ lines }, note) => lines.flatMap((line, n) => (suits(line) ? [{ note, line: n }] : [])));
}

function withLines(of: Workshop, note: number, change: (lines: readonly Line[]) => readonly Line[]): Workshop {
  return { ...of, notes: of.notes.map((one, n) => (n === note ? { ...one, lines: [...change(one.lines)] } : one)) };
}

/** Two letters the wrong way round, one left out, one twice, or another one. */
function mistyped(id: string, roll: Roll): string {
  const at = roll(id.length - 1);
  const [before, here, next, after] = [id.slice(0, at), id[at] ?? '', id[at + 1] ?? '', id.slice(at + 2)];
  const made = [before + next + here + after, before + next + after, before + here + here + next + after, `${before}q${next}${after}`][
    roll(4)
  ];
  const sound = made !== undefined && made !== id && /^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(made);
  return sound ? made : `${id}x`;
}

const idMistyped: Slip = (of, roll) => {
  const all = spots(of, ({ field }) => field in IDS);
  const spot = all[roll(all.length)];
  const line = spot && of.notes[spot.note]?.lines[spot.line];
  if (!spot || !line || typeof line.says === 'string') return null;
  const fields = (IDS[line.field] ?? []).filter((name) => name in (line.says as object));
  const field = fields[roll(fields.length)];
  if (field === undefined) return null;
  const says = { ...line.says, [field]: mistyped(line.says[field] ?? '', roll) };
  return withLines(of, spot.note, (lines) => lines.map((one, n) => (n === spot.line ? { ...one, says } : one)));
};

const entryForgotten: Slip = (of, roll) => {
  const all = spots(of, () => true);
  const spot = all[roll(all.length)];
  return spot ? withLines(of, spot.note, (lines) => lines.filter((_, n) => n !== spot.line)) : null;
};

const entryDoubled: Slip = (of, roll) => {
  const all = spots(of, () => true);
  const spot = all[roll(all.length)];
  return spot ? withLines(of, spot.note, (lines) => lines.flatMap((line, n) => (n === spot.line ? [line, line] : [line]))) : null;
};

/** What two evenings close to each other hold stands each under the other's date. */
const notesSwapped: Slip = (of, roll) => {
  const first = roll(of.notes.length - 1);
  const second = Math.min(of.notes.length - 1, first + 1 + roll(3));
  const [a, b] = [of.notes[first], of.notes[second]] as [Note, Note];
  const notes = of.notes.map((one, n) => (n === first ? { ...one, lines: b.lines } : n === second ? { ...one, lines: a.lines } : one));
  return { ...of, notes };
};

export const SLIPS: Readonly<Record<string, Slip>> = {
  'an id mistyped': idMistyped,
  'an entry forgotten': entryForgotten,
  'two notes swapped': notesSwapped,
  'an entry doubled': entryDoubled,
};
