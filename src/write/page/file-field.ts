/** A picture or a paper: taken by the camera or chosen, shown at once, and sent as soon as it can be. */
import type { FormField } from '../form.ts';
import { type At, write } from './field-view.ts';
import { button, labelOf, make, newId } from './make.ts';
import { pictureOf, takeIn } from './sending.ts';

/** What the device is asked for. */
export function accepts(field: FormField): string {
  return field.writtenAs === 'paper-file' ? 'image/*,application/pdf' : 'image/*';
}

export function whatOf(field: FormField): 'picture' | 'paper' {
  return field.writtenAs === 'paper-file' ? 'paper' : 'picture';
}

export function fileField(at: At): HTMLElement {
  const { sheet, field, holder } = at;
  const id = newId();
  const shown = make('div', { class: 'thumb' });
  const input = make('input', { id, type: 'file', accept: accepts(field) });
  const show = (): void => {
    const name = String(holder[field.name] ?? '');
    shown.replaceChildren();
    if (name === '') return;
    shown.append(
      pictureOf(sheet, name, whatOf(field)),
      button('Take away', () => {
        write(at, undefined);
        show();
      }),
    );
  };
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (!file) return;
    void takeIn(sheet, file, whatOf(field)).then((name) => {
      write(at, name);
      show();
    });
    input.value = '';
  });
  show();
  const words = field.writtenAs === 'paper-file' ? `${labelOf(field.name)}: photograph or file` : `${labelOf(field.name)}: take or choose`;
  return make('div', {}, make('label', { for: id, class: 'as-button' }, words), input, shown);
}
