import { type MethodGroup, type MethodsIndex, methodsIndex } from '../../../journal/registers/methods.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** What was tried, by method, by material and by what was used. */
export function methodsPage({ record }: RecordSheet): MethodsIndex {
  return methodsIndex(record);
}

/** How often it came well: `2 good, 1 not said`. */
export function resultWords({ results: { good, fair, poor, unsaid } }: MethodGroup): string {
  const counts: readonly (readonly [number, string])[] = [
    [good, 'good'],
    [fair, 'fair'],
    [poor, 'poor'],
    [unsaid, 'not said'],
  ];
  return counts
    .filter(([n]) => n > 0)
    .map(([n, words]) => `${n} ${words}`)
    .join(', ');
}
