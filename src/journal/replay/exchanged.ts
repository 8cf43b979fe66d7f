import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import type { Session } from '../model.ts';

/** How many notes apart two may be that are taken to have changed places. */
const FARTHEST = 4;

/** What is warned of can be: by itself it is no sign that notes changed places. */
function errorsIn(found: readonly Diagnostic[]): number {
  return found.filter(({ severity }) => severity === 'error').length;
}

/**
 * Looks whether several things that cannot be come from one slip: two notes that bear each other's dates.
 *
 * @param sessions in order
 * @param found what replaying them found
 * @param replayed what replaying others finds
 * @returns what was found, with all that the exchange explains in the place of one message
 */
export function withExchange(
  sessions: readonly Session[],
  found: readonly Diagnostic[],
  replayed: (sessions: readonly Session[]) => readonly Diagnostic[],
): readonly Diagnostic[] {
  if (found.length < 2 || errorsIn(found) === 0) return found;
  const index = new Map(sessions.map(({ file }, n) => [file, n]));
  const first = Math.min(...found.map(({ place }) => index.get(place.file) ?? Number.POSITIVE_INFINITY));
  if (!Number.isFinite(first)) return found;
  const tried = pairsAbout(first, sessions.length).flatMap(([a, b]) => {
    const left = replayed(exchanged(sessions, a, b));
    const known = new Set(found.map(keyOf));
    const explains = found.length - left.length;
    const mends = explains >= 2 && errorsIn(left) < errorsIn(found);
    return mends && left.every((one) => known.has(keyOf(one))) ? [{ a, b, left, explains }] : [];
  });
  const [best] = tried.sort((x, y) => y.explains - x.explains || x.b - x.a - (y.b - y.a));
  if (!best) return found;
  return [...best.left, wrongWayRound(sessions[best.a] as Session, sessions[best.b] as Session, best.explains)];
}

/** Notes close to each other, one of which may be the first of which something was found, or stand shortly before it. */
function pairsAbout(first: number, count: number): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (let a = Math.max(0, first - FARTHEST); a <= first; a += 1) {
    for (let b = a + 1; b <= Math.min(count - 1, a + FARTHEST); b += 1) pairs.push([a, b]);
  }
  return pairs;
}

function exchanged(sessions: readonly Session[], a: number, b: number): readonly Session[] {
  const [one, other] = [sessions[a] as Session, sessions[b] as Session];
  const as = (session: Session, { id, date }: Session): Session => ({ ...session, id, date });
  return sessions.map((session, n) => (n === a ? as(other, one) : n === b ? as(one, other) : session));
}

function keyOf({ code, place }: Diagnostic): string {
  return `${code} ${place.file}:${place.line}:${place.column}`;
}

function wrongWayRound(one: Session, other: Session, explains: number): Diagnostic {
  const message = `This note and \`${other.id}\` seem to be the wrong way round: if each had the other's date, ${explains} things that cannot be would be as they should.`;
  const hint = `Exchange their dates and the names of their files: \`date: ${other.date}\` here, and \`date: ${one.date}\` there.`;
  const related = [{ place: other.datePlace ?? startOf(other.file), message: 'This is the other note.' }];
  return diagnostic('A520', one.datePlace ?? startOf(one.file), message, { hint, related });
}
