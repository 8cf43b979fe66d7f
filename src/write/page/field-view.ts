/** A field as something to fill in, made from what the schema says of it. */
import type { FormField } from '../form.ts';
import { isGroup, type Value, type Values } from '../values.ts';
import { chooser, nameOf } from './chooser.ts';
import { clockField } from './clock.ts';
import { entriesView } from './entries-view.ts';
import { fileField } from './file-field.ts';
import { button, labelOf, make, newId } from './make.ts';
import { placeField } from './place-field.ts';
import type { Sheet } from './sheet.ts';

export type Way = readonly (string | number)[];

/** Where a field stands, and what it is part of. */
export interface At {
  readonly sheet: Sheet;
  readonly field: FormField;
  /** The group that holds the value under the name of the field. */
  readonly holder: Values;
  readonly way: Way;
  /** The groups around it, the nearest first. */
  readonly around: readonly Values[];
}

export function fieldView(at: At): HTMLElement {
  const { field, way } = at;
  const inside = controlOf(at);
  const element = make('div', { class: `field ${field.of}`, 'data-way': way.join('/') }, ...inside);
  element.append(make('p', { class: 'problem', id: problemId(way), hidden: true }));
  return element;
}

export function problemId(way: Way): string {
  return `problem-${way.join('-')}`;
}

function controlOf(at: At): HTMLElement[] {
  const { field } = at;
  if (field.of === 'fields' && field.many) return [entriesView(at)];
  if (field.of === 'table') return [tableField(at)];
  if (field.writtenAs === 'picture-file' || field.writtenAs === 'paper-file') return [fileField(at)];
  if (field.writtenAs === 'place') return [placeField(at)];
  if (field.writtenAs === 'clock') return [clockField(at)];
  if (field.words !== null) return [wordsField(at)];
  if (field.names.length > 0 && !(field.writtenAs === 'number' && !field.many)) return [namesField(at)];
  return field.many ? [linesField(at)] : [textField(at)];
}

export function write({ sheet, holder, field }: At, value: Value | undefined): void {
  if (value === undefined || value === '' || (Array.isArray(value) && value.length === 0)) delete holder[field.name];
  else holder[field.name] = value;
  sheet.changed();
}

/** A line of text, a day, a number, or some sentences. */
function textField(at: At): HTMLElement {
  const { sheet, field, holder, way } = at;
  const id = newId();
  const list = field.offers === null ? null : newId();
  const value = String(holder[field.name] ?? '');
  const described = { id, 'aria-describedby': problemId(way), 'aria-required': field.required ? 'true' : null };
  const input =
    field.prose && list === null
      ? make('textarea', { ...described, rows: '1', autocapitalize: 'sentences' })
      : make('input', {
          ...described,
          type: field.writtenAs === 'day' ? 'date' : 'text',
          inputmode: field.writtenAs === 'number' ? 'numeric' : null,
          autocomplete: 'off',
          autocapitalize: 'none',
          list,
        });
  input.value = value;
  input.addEventListener('input', () => {
    write(at, input.value);
    input.dispatchEvent(new CustomEvent('written', { bubbles: true, detail: field.name }));
  });
  const offered = field.offers === null ? [] : sheet.data.offers[field.offers].map((words) => make('option', { value: words }));
  return make(
    'div',
    {},
    make('label', { for: id }, labelOf(field.name)),
    input,
    ...(list === null ? [] : [make('datalist', { id: list }, ...offered)]),
  );
}

/** Several texts, one on each line. */
function linesField(at: At): HTMLElement {
  const { field, holder, way } = at;
  const id = newId();
  const input = make('textarea', { id, rows: '2', 'aria-describedby': problemId(way) });
  input.value = textsOf(holder[field.name]).join('\n');
  input.addEventListener('input', () =>
    write(
      at,
      input.value.split('\n').filter((line) => line.trim() !== ''),
    ),
  );
  return make('div', {}, make('label', { for: id }, `${labelOf(field.name)}, one on each line`), input);
}

/** Some of a few words, each a tap. */
function wordsField(at: At): HTMLElement {
  const { field, holder } = at;
  const id = newId();
  const buttons = (field.words ?? []).map((word) => {
    const element = button(word.replaceAll('-', ' '), () => {
      const chosen = textsOf(holder[field.name]);
      const others = chosen.filter((one) => one !== word);
      const next = chosen.includes(word) ? others : field.many ? [...others, word] : [word];
      write(at, field.many ? next : next[0]);
      show();
    });
    element.dataset.word = word;
    return element;
  });
  const show = (): void => {
    const chosen = textsOf(holder[field.name]);
    for (const element of buttons) element.setAttribute('aria-pressed', String(chosen.includes(element.dataset.word ?? '')));
  };
  show();
  return make(
    'div',
    { role: 'group', 'aria-labelledby': id },
    make('p', { class: 'label', id }, labelOf(field.name)),
    make('div', { class: 'words' }, ...buttons),
  );
}

/** One or several names: what is chosen can be taken away again by a tap. */
function namesField(at: At): HTMLElement {
  const { sheet, field, holder } = at;
  const isList = field.many || field.several;
  const chosen = make('div', { class: 'chosen' });
  const choose = (id: string): void => {
    const before = textsOf(holder[field.name]);
    write(at, isList ? [...before.filter((one) => one !== id), id] : id);
    show();
  };
  const choosing = chooser(sheet, field, labelOf(field.name), choose, true);
  const show = (): void => {
    const all = textsOf(holder[field.name]);
    chosen.replaceChildren(
      ...all.map((id) =>
        button(
          nameOf(sheet, field, id),
          () => {
            write(at, isList ? textsOf(holder[field.name]).filter((one) => one !== id) : undefined);
            show();
            choosing.focus();
          },
          { 'aria-label': `${nameOf(sheet, field, id)}: take away`, class: 'taken' },
        ),
      ),
    );
    choosing.element.classList.toggle('answered', all.length > 0);
    choosing.element.classList.toggle('full', !isList && all.length > 0);
  };
  show();
  return make('div', {}, choosing.element, chosen);
}

/** Values under names that one gives oneself. */
function tableField(at: At): HTMLElement {
  const { sheet, field, holder, way } = at;
  const [inside] = field.fields;
  const rows = make('div', {});
  const table = (): Values => (isGroup(holder[field.name]) ? (holder[field.name] as Values) : {});
  const show = (): void => {
    rows.replaceChildren(
      ...Object.keys(table()).map((name) => {
        const row = make('fieldset', { class: 'row' }, make('legend', { class: 'readers-only' }, name));
        if (inside) row.append(fieldView({ ...at, field: { ...inside, name }, holder: table(), way: [...way, name] }));
        row.append(
          button('Take away', () => {
            const { [name]: _, ...others } = table();
            write(at, Object.keys(others).length === 0 ? undefined : others);
            show();
          }),
        );
        return row;
      }),
    );
  };
  const id = newId();
  const input = make('input', { id, type: 'text', autocomplete: 'off', autocapitalize: 'none' });
  const add = (): void => {
    const name = input.value.trim();
    if (name === '' || name in table()) return;
    holder[field.name] = { ...table(), [name]: inside?.many ? [] : '' };
    input.value = '';
    sheet.changed();
    show();
  };
  show();
  return make(
    'div',
    {},
    make('p', { class: 'label' }, labelOf(field.name)),
    rows,
    make('label', { for: id }, 'For'),
    input,
    button('Add', add),
  );
}

export function textsOf(value: Value | undefined): string[] {
  if (typeof value === 'string') return value === '' ? [] : [value];
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : [];
}
