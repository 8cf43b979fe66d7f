/** The whole of an evening as one page: what is said most often first, the rest behind one tap. */
import type { FormField } from '../form.ts';
import type { FieldProblem } from '../problems.ts';
import { type Value, type Values, withoutEmpty } from '../values.ts';
import { isRunning } from './clock.ts';
import { type At, fieldView } from './field-view.ts';
import { button, labelOf, make, newId } from './make.ts';
import type { Sheet } from './sheet.ts';
import { SENDING } from './state.ts';

/** What one evening in so many speaks of has a line of its own, to be unfolded. */
const OFTEN = 1 / 8;
/** So many notes say what is spoken of; until then the first fields of the format have lines. */
const YOUNG = 10;
const AT_FIRST = 5;

export function noteView(sheet: Sheet): HTMLElement {
  const { form, use, notes } = sheet.data;
  const { fields } = sheet.draft;
  const isChief = (field: FormField): boolean => field.required || field.everyEvening;
  const isLikely = (field: FormField): boolean =>
    (use[field.name] ?? 0) >= OFTEN || (notes.length < YOUNG && form.indexOf(field) < AT_FIRST);
  const others = form.filter((field) => !isChief(field));
  const said = others.filter(({ name }) => fields[name] !== undefined);
  const likely = others.filter((field) => !said.includes(field) && isLikely(field));
  const rest = others.filter((field) => !said.includes(field) && !likely.includes(field));
  const chief = form.filter(isChief).map((field) => section(sheet, field));
  const [parts, ...first] = chief.toReversed();
  const open = make('div', {}, ...said.map((field) => section(sheet, field)));
  return make(
    'div',
    { class: 'note' },
    make('div', { class: 'chief-fields' }, ...first.toReversed()),
    prose(sheet),
    ...(parts ? [parts] : []),
    open,
    ...likely.map((field) => folded(sheet, field)),
    moreToSay(sheet, rest, open),
    make('div', { class: 'elsewhere', role: 'status' }),
  );
}

/** What is seldom spoken of: one tap brings it onto the page. */
function moreToSay(sheet: Sheet, fields: readonly FormField[], onto: HTMLElement): HTMLElement {
  const more = make('div', { class: 'more', role: 'group', 'aria-label': 'More to say' });
  for (const field of fields) {
    more.append(
      button(labelOf(field.name), (event) => {
        (event.currentTarget as HTMLElement).remove();
        onto.append(section(sheet, field));
        onto.lastElementChild?.querySelector<HTMLElement>('button, input, textarea')?.focus();
      }),
    );
  }
  return make('details', { class: 'fold' }, make('summary', {}, 'More to say'), more);
}

function folded(sheet: Sheet, field: FormField): HTMLElement {
  const id = newId();
  const heading = make('summary', {}, make('h2', { id, class: 'fold-name' }, labelOf(field.name)));
  return make(
    'section',
    { 'aria-labelledby': id, 'data-field': field.name },
    make('details', { class: 'fold' }, heading, fieldView(placeOf(sheet, field))),
  );
}

function placeOf(sheet: Sheet, field: FormField): At {
  return { sheet, field, holder: sheet.draft.fields, way: [field.name], around: [] };
}

function section(sheet: Sheet, field: FormField): HTMLElement {
  const at = placeOf(sheet, field);
  if (field.of !== 'fields') return make('div', { 'data-field': field.name }, fieldView(at));
  const id = newId();
  return make('section', { 'aria-labelledby': id, 'data-field': field.name }, make('h2', { id }, labelOf(field.name)), fieldView(at));
}

function prose(sheet: Sheet): HTMLElement {
  const id = newId();
  const input = make('textarea', {
    id,
    rows: '3',
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
      if (problem.severity === 'error') unfold(slot);
    }
  }
  return told.filter(({ severity }) => severity === 'error').length;
}

/** What is to be mended is not hidden in what is folded away. */
function unfold(slot: HTMLElement): void {
  for (let at = slot.closest('details'); at; at = at.parentElement?.closest('details') ?? null) at.open = true;
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
