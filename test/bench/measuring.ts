import type { BenchPart } from './catalogue.ts';
import type { NoteDraft } from './note-draft.ts';
import { MEASURES } from './trade-sentences.ts';
import type { Workshop } from './workshop.ts';

/** Writes a number of thousandths as a decimal: 9043 is `9.043`. */
export function thousandths(n: number): string {
  return `${Math.floor(n / 1000)}.${String(n % 1000).padStart(3, '0')}`;
}

/** Records a measurement, most within limits, and a row for the table in the prose. */
export function measure(shop: Workshop, part: BenchPart, note: NoteDraft, as: 'found' | 'left'): void {
  const { random } = shop;
  const { what, unit, low } = random.pick(MEASURES);
  const value = `${thousandths(low + random.between(0, 66))} ${unit}`;
  const limits = `${thousandths(low)}..${thousandths(low + 60)} ${unit}`;
  note.add('measured', { part: part.id, what, as, value, limits: random.chance(0.7) ? limits : null });
  note.table.push(`| [${what}](part:${part.id}) | ${as} | ${value} |`);
}
