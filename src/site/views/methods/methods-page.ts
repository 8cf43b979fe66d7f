import { type MethodGroup, type MethodsIndex, methodsIndex } from '../../../journal/registers/methods.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';

const METHODS = shown('methods', ({ record }) => methodsIndex(record));

export const METHOD_QUESTIONS: readonly AnyQuestion[] = [METHODS];

/** What was tried, by method, by material and by what was used. */
export const methodsPage = (sheet: Sheet): MethodsIndex => sheet.ask(METHODS);

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
