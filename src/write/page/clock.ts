/** Hours by the clock: one tap when work begins, one when it ends. */
import type { At } from './field-view.ts';
import { problemId, write } from './field-view.ts';
import { button, labelOf, make, newId } from './make.ts';

const RUNNING = /^\d\d:\d\d-$/;

/** Whether a clock was started and not stopped. */
export function isRunning(value: unknown): boolean {
  return typeof value === 'string' && RUNNING.test(value);
}

function now(): string {
  const clock = new Date();
  return `${String(clock.getHours()).padStart(2, '0')}:${String(clock.getMinutes()).padStart(2, '0')}`;
}

export function clockField(at: At): HTMLElement {
  const { field, holder, way } = at;
  const id = newId();
  const input = make('input', {
    id,
    type: 'text',
    autocomplete: 'off',
    'aria-describedby': problemId(way),
    placeholder: '19:10-21:40 or 1h30m',
  });
  const start = button('Start the clock', () => set(`${now()}-`));
  const stop = button('Stop the clock', () => set(`${input.value}${now()}`));
  const show = (): void => {
    start.hidden = input.value !== '';
    stop.hidden = !isRunning(input.value);
  };
  const set = (value: string): void => {
    input.value = value;
    write(at, value);
    show();
    (stop.hidden ? input : stop).focus({ preventScroll: true });
  };
  input.value = String(holder[field.name] ?? '');
  input.addEventListener('input', () => {
    write(at, input.value);
    show();
  });
  show();
  return make('div', { class: 'clock' }, make('label', { for: id }, labelOf(field.name)), input, start, stop);
}
