/** Finds the kept pages that show what they would show now. */
import type { Address } from '../addresses.ts';
import type { SiteRecord } from '../record.ts';
import { type RecordSheet, sheetOf } from '../views/page/sheet.ts';
import type { Asked, Asking } from './asking.ts';
import { digestOf } from './digest.ts';
import type { KeptPage, PageStore } from './page-store.ts';
import type { AnyQuestion } from './question.ts';

/**
 * Asks again what a page asked when it was made.
 *
 * @param questions by their names
 * @returns a function that gives back the page when every answer is as it was, noting what it was told for the next build;
 *   null where it has to be made
 */
export function takingOver(
  record: SiteRecord,
  questions: ReadonlyMap<string, AnyQuestion>,
  store: PageStore,
  asking: Asking,
): (page: Address) => Promise<KeptPage | null> {
  const desk = sheetOf(record, 'index.html');
  const alike: (boolean | undefined)[] = [];
  const again: number[] = [];
  const isAlike = async (number: number): Promise<boolean> => {
    const asked = store.shared[number];
    if (asked === undefined) return false;
    const same = await isAnsweredAlike(desk, questions, asked);
    if (same) again[number] = asking.numberAgain(asked);
    alike[number] = same;
    return same;
  };
  return async (page) => {
    const kept = store.get(page);
    if (kept === undefined) return null;
    const { shared, own } = kept.told;
    // Only the first page that asked a question waits for its answer.
    for (const number of shared) if (!(alike[number] ?? (await isAlike(number)))) return null;
    if (own.length > 0) {
      const sheet = sheetOf(record, page);
      for (const asked of own) if (!(await isAnsweredAlike(sheet, questions, asked))) return null;
    }
    return { bytes: kept.bytes, told: { shared: new Set([...shared].map((number) => again[number] as number)), own } };
  };
}

/** What cannot be answered any more is not answered alike: the page is made, and tells what is wrong where something is. */
async function isAnsweredAlike(sheet: RecordSheet, questions: ReadonlyMap<string, AnyQuestion>, asked: Asked): Promise<boolean> {
  const question = questions.get(asked.question);
  if (question === undefined) return false;
  try {
    const words = asked.words as readonly never[];
    const answer = question.key?.(sheet, ...words) ?? (await question.answer(sheet, ...words));
    return digestOf(answer) === asked.answer;
  } catch {
    return false;
  }
}
