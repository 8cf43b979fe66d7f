/** Two texts that differ, beside each other, and what may be done about it. */
import { make } from './make.ts';

export function sideBySide(
  heading: string,
  left: readonly [string, string],
  right: readonly [string, string],
  ...actions: readonly HTMLElement[]
): HTMLElement {
  const [mine, theirs] = [left[1].split('\n'), right[1].split('\n')];
  const side = ([words]: readonly [string, string], lines: readonly string[], others: readonly string[]): HTMLElement => {
    const known = new Set(others);
    const shown = lines.map((line) => make(known.has(line) ? 'span' : 'mark', {}, `${line}\n`));
    return make('section', {}, make('h3', {}, words), make('pre', { tabindex: '0', 'aria-label': words }, ...shown));
  };
  return make(
    'div',
    { class: 'differ' },
    make('h2', { tabindex: '-1' }, heading),
    make('div', { class: 'sides' }, side(left, mine, theirs), side(right, theirs, mine)),
    make('p', { class: 'actions' }, ...actions),
  );
}
