import type { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import { PEOPLE } from './trade-words.ts';

/**
 * Writes who worked how long. Clock ranges stand only in the first session of a day and one a person,
 * so that none overlap; lengths are short, so that a day of several sessions holds them.
 *
 * @param ofDay which session of its day it is, from 0
 */
export function writeHours(random: Random, note: NoteDraft, on: readonly string[], ofDay: number): void {
  const crew = random.shuffle(PEOPLE).slice(0, random.chance(0.3) ? 2 : 1);
  for (const by of crew) {
    const minutes = random.between(6, 16) * 10;
    const time = ofDay === 0 && random.chance(0.7) ? clockRange(random, minutes) : lengthOf(minutes);
    note.add('hours', { by, on: random.pick(on), time });
  }
}

function clockRange(random: Random, minutes: number): string {
  const start = random.between(18 * 6, 22 * 6) * 10;
  return `${clock(start)}-${clock((start + minutes) % 1440)}`;
}

function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

function lengthOf(minutes: number): string {
  const rest = minutes % 60;
  if (minutes < 60) return `${minutes}m`;
  return rest === 0 ? `${minutes / 60}h` : `${Math.floor(minutes / 60)}h${String(rest).padStart(2, '0')}m`;
}
