import type { StillToDo } from '../../../journal/registers/at-milestone.ts';
import { counted } from '../page/words.ts';

/** What was still to be done when a milestone was reached, as a sentence; null where there was nothing. */
export function stillToDoWords({ empty, undone }: StillToDo): string | null {
  const parts = counted(empty, 'part that has its place on the vehicle was', 'parts that have their place on the vehicle were');
  const facts = [
    ...(empty > 0 ? [`${parts} off it`] : []),
    ...(undone > 0 ? [`work that had been decided on was still to be done on ${counted(undone, 'part')}`] : []),
  ];
  return facts.length === 0 ? null : `At the end of that day ${facts.join(', and ')}.`;
}
