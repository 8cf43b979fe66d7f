/** The whole of an evening as one page: what is said most often first, the rest behind one tap. */
import type { FormField } from '../form.ts';
import type { FieldProblem } from '../problems.ts';
import { type Value, type Values, withoutEmpty } from '../values.ts';
import { isRunning } from './clock.ts';
import { fieldView } from './field-view.ts';
import { button, labelOf, make, newId } from './make.ts';
import type { Sheet } from './sheet.ts';
import { SENDING } from './state.ts';

/** What one evening in so many speaks of stands on the page without being asked for. */
const OFTEN = 1 / 8;
/** So many notes say what is spoken of; until then the first fields of the format are shown. */
const YOUNG = 10;
const AT_FIRST = 5;

export function noteView(sheet: Sheet): HTMLElement {
  const { form, use, notes } = sheet.data;
  const { fields } = sheet.draft;
  const isShown = (field: FormField, n: number): boolean =>
    field.required || fields[field.name] !== undefined || (use[field.name] ?? 0) >= OFTEN || (notes.length < YOUNG && n < AT_FIRST);
  const shown = form.filter(isShown).map((field) => section(sheet, field));
  const more = make('div', { class: 'more', role: 'group', 'aria-label': 'More to say' });
  const said = make('div', {}, ...shown);
  for (const field of form.filter((each) => !shown.some((one) => one.dataset.field === each.name))) {
    more.append(
      button(labelOf(field.name), (event) => {
        (event.currentTarget as HTMLElement).remove();
        said.append(section(sheet, field));
        said.lastElementChild?.querySelector<HTMLElement>('button, input, textarea')?.focus();
      }),
    );
  }
  return make('div', { class: 'note' }, said, more, prose(sheet), make('div', { class: 'elsewhere', role: 'status' }));
}

function section(sheet: Sheet, field: FormField): HTMLElement {
  const at = { sheet, field, holder: sheet.draft.fields, way: [field.name], around: [] };
  if (field.of !== 'fields') return make('div', { 'data-field': field.name }, fieldView(at));
  const id = newId();
  return make('section', { 'aria-labelledby': id, 'data-field': field.name }, make('h2', { id }, labelOf(field.name)), fieldView(at));
}

function prose(sheet: Sheet): HTMLElement {
  const id = newId();
  const input = make('textarea', {
    id,
    rows: '6',
    class: 'prose',
    autocapitalize: 'sentences',
    spellcheck: 'true',
    'aria-describedby': 'problem-prose',
  });
  input.value = sheet.draft.prose;
  input.addEventListener('input', () => {
    sheet.draft = { ...sheet.draft, prose: input.value };
    sheet.changed();
  });
  return make(
    'section',
    { 'data-way': 'prose-of-note' },
    make('h2', {}, make('label', { for: id }, 'In words')),
    input,
    make('p', { class: 'problem', id: 'problem-prose', hidden: true }),
  );
}

/** Shows each problem at its field, at the nearest that is on the page where that is not. @returns how many stand in the way of publishing */
export function showProblems(view: HTMLElement, sheet: Sheet, problems: readonly FieldProblem[]): number {
  for (const slot of view.querySelectorAll<HTMLElement>('.problem')) {
    slot.hidden = true;
    slot.replaceChildren();
  }
  const elsewhere = view.querySelector<HTMLElement>('.elsewhere');
  elsewhere?.replaceChildren();
  const onPage = problems.map((problem) => ({ ...problem, way: problem.way && wayOnPage(sheet.draft.fields, problem.way) }));
  const told = onPage.filter((problem) => !isOnItsWay(sheet, problem));
  for (const problem of told) {
    const words = make('span', { class: problem.severity, 'data-code': problem.code }, `${problem.message} ${problem.hint ?? ''} `);
    const slot = problem.file === null ? slotFor(view, problem.way) : null;
    if (slot === null) elsewhere?.append(make('p', { class: 'problem' }, problem.file === null ? '' : `In ${problem.file}: `, words));
    else {
      slot.append(words);
      slot.hidden = false;
    }
  }
  return told.filter(({ severity }) => severity === 'error').length;
}

/** The note has no entry for one that was left empty, so there the same entry has a smaller number than here. */
function wayOnPage(fields: Values, way: NonNullable<FieldProblem['way']>): NonNullable<FieldProblem['way']> {
  let at: Value | undefined = fields;
  return way.map((step) => {
    const here: string | number = Array.isArray(at) && typeof step === 'number' ? (filledPlaces(at)[step] ?? step) : step;
    at = typeof at === 'object' ? (at as Values)[here] : undefined;
    return here;
  });
}

function filledPlaces(list: readonly Value[]): number[] {
  return list.flatMap((item, n) => (withoutEmpty({ item }).item === undefined ? [] : [n]));
}

function slotFor(view: HTMLElement, way: FieldProblem['way']): HTMLElement | null {
  if (way === null) return view.querySelector('#problem-prose');
  for (let length = way.length; length > 0; length -= 1) {
    const field = view.querySelector(`[data-way="${CSS.escape(way.slice(0, length).join('/'))}"]`);
    const slot = field && [...field.children].find((one) => one.classList.contains('problem'));
    if (slot) return slot as HTMLElement;
  }
  return null;
}

/** A picture that is still being sent, and a clock that runs, are no faults. */
function isOnItsWay(sheet: Sheet, { way }: FieldProblem): boolean {
  const value = way?.reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], sheet.draft.fields);
  return isRunning(value) || (typeof value === 'string' && value.startsWith(SENDING));
}
