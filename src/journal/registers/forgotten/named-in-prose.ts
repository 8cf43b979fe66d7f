import type { IsoDate, Part, PartId, Place, Session } from '../../model.ts';
import { partsNamedIn } from '../named-in.ts';
import { perRecord, type RegisterSource } from '../source.ts';
import { orderedSessions } from '../stays.ts';

/** A part that the prose of a note calls by its name, and that no field and no link of the note names. */
export interface NamedOnly {
  readonly part: PartId;
  readonly session: Session;
  /** Where its name first stands. */
  readonly place: Place;
}

/** Parts that notes up to the end of a day speak of in words alone, in the order of the notes. */
export function namedOnlyAt(record: RegisterSource, date: IsoDate): readonly NamedOnly[] {
  return namedOnly(record).filter(({ session }) => session.date <= date);
}

const namedOnly = perRecord((record) => {
  const names = namesOf(record.journal.parts.values());
  return orderedSessions(record).flatMap((session) => {
    const known = partsNamedIn(record, session);
    const found = new Map<PartId, number>();
    for (const { part, at } of namesIn(session.body, names)) if (!known.has(part) && !found.has(part)) found.set(part, at);
    return [...found].map(([part, at]) => ({ part, session, place: placeIn(session, at, record.journal.parts.get(part)) }));
  });
});

/** A name in its words, and whose it is; null where several parts are called so. */
interface Name {
  readonly words: readonly string[];
  part: PartId | null;
}

/** Names by their first word, longer ones first. */
type Names = ReadonlyMap<string, readonly Name[]>;

/**
 * The whole name of a part, and what stands before its first comma: `Front brake drum` for `Front brake drum, nearside`.
 * One word alone is a name only where it is the whole of one.
 */
function namesOf(parts: Iterable<Part>): Names {
  const byWords = new Map<string, Name>();
  const add = (words: readonly string[], part: PartId) => {
    const known = byWords.get(words.join(' '));
    if (known && known.part !== part) known.part = null;
    else if (!known) byWords.set(words.join(' '), { words, part });
  };
  for (const { id, name } of parts) {
    const whole = wordsOf(name).map(({ word }) => word);
    const short = wordsOf(name.split(',')[0] ?? '').map(({ word }) => word);
    if (whole.length > 0) add(whole, id);
    if (short.length > 1 && short.length < whole.length) add(short, id);
  }
  const names = [...byWords.values()].sort((a, b) => b.words.length - a.words.length);
  return Map.groupBy(names, ({ words: [first = ''] }) => first);
}

interface Word {
  /** Lower case; a full stop for whatever ends a thought. */
  readonly word: string;
  readonly at: number;
}

function wordsOf(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{N}]+|[.;:!?|]|\n\s*\n/gu)].map(({ 0: found, index }) => ({
    word: /^[\p{L}\p{N}]/u.test(found) ? found.toLowerCase() : '.',
    at: index,
  }));
}

/** Names in a text, each with its offset; where one begins the longest counts, and none within it. */
function* namesIn(body: string, names: Names): Generator<{ readonly part: PartId; readonly at: number }> {
  const words = wordsOf(withoutTargets(body));
  for (let n = 0; n < words.length; n += 1) {
    const { word, at } = words[n] as Word;
    const found = names.get(word)?.find((name) => name.words.every((one, k) => words[n + k]?.word === one));
    if (!found) continue;
    if (found.part !== null) yield { part: found.part, at };
    n += found.words.length - 1;
  }
}

/** What links lead to, and code, is nobody's words. Offsets stay. */
function withoutTargets(body: string): string {
  return body.replaceAll(/\]\([^)\n]*\)|\]\[[^\]\n]*\]|`[^`\n]*`|^[ \t]*\[[^\]\n]+\]:.*$|<[^>\n]*>/gm, (all) => '.'.padEnd(all.length));
}

function placeIn({ file, body, bodyLine }: Session, at: number, part: Part | undefined): Place {
  const above = body.slice(0, at).split('\n');
  const line = bodyLine + above.length - 1;
  const column = (above.at(-1)?.length ?? 0) + 1;
  return { file, line, column, endLine: line, endColumn: column + (part?.name.split(',')[0]?.length ?? 1) };
}
