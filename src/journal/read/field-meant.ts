import { didYouMean, nearest } from '../diagnostics/nearest.ts';

/** What is laid to something is `on` it where work is told, and `for` it where a bill is. */
const SAID_FOR: ReadonlyMap<string, string> = new Map([
  ['on', 'for'],
  ['for', 'on'],
  ['part', 'for'],
]);

/** The field that a name which is none here was meant for; null where it may be anything. */
export function fieldMeant(name: string, known: readonly string[]): string | null {
  const other = SAID_FOR.get(name);
  return nearest(name, known) ?? (other !== undefined && known.includes(other) ? other : null);
}

/** The same as a question, or what else may help; null for nothing. */
export function fieldAsked(name: string, known: readonly string[]): string | null {
  const other = nearest(name, known) === null ? fieldMeant(name, known) : null;
  return other === null ? didYouMean(name, known) : didYouMean(other, [other]);
}
