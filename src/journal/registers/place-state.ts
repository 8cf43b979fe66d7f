/** What stands at a position in one word, for drawings and lists that show all of them at once. */
import type { Origin } from '../model.ts';
import { originInWords } from '../replay/words.ts';
import type { RegisterRow } from './register.ts';

export type PlaceKind =
  /** Every place of it holds what the works put there. */
  | 'original'
  /** Something of another origin stands there. */
  | 'stand-in'
  /** Some places of it hold an original, others another part or nothing. */
  | 'partly'
  /** Nothing stands there, and what belongs there is here. */
  | 'off'
  /** Nothing stands there, and what belonged there is missing or gone, stayed behind, stands elsewhere, or was left off. */
  | 'missing';

export interface PlaceState {
  readonly kind: PlaceKind;
  /** Of what stands in; null for every other kind, and where nobody knows. */
  readonly origin: Origin | null;
  /** Something asks for a decision. */
  readonly undecided: boolean;
  /** `original`, `stand-in: reproduction`, `off for now` */
  readonly words: string;
}

const LOST: ReadonlySet<string> = new Set(['missing', 'gone', 'left-off', 'not-yet', 'elsewhere', 'stayed-behind']);

export function placeStateOf(row: RegisterRow): PlaceState {
  const undecided = row.undecided > 0;
  const asks = undecided ? ', undecided' : '';
  const of = (kind: PlaceKind, words: string, origin: Origin | null = null): PlaceState => ({
    kind,
    origin,
    undecided,
    words: words + asks,
  });
  if (row.fitted.length === 0) return of(LOST.has(row.outcome.kind) ? 'missing' : 'off', row.outcome.words);
  const originals = row.fitted.reduce((sum, { origin, count }) => (origin === 'original' ? sum + count : sum), 0);
  if (originals === row.count) return of('original', 'original');
  if (originals > 0) return of('partly', `${originals} of ${row.count} original`);
  const origins = [...new Set(row.fitted.map(({ origin }) => origin))];
  return of('stand-in', `stand-in: ${origins.map(originInWords).join(', ')}`, origins[0] ?? null);
}
