/** Choosing what a field names: by a tap on what is likely, or by a few letters. */
import type { Sort } from '../../journal/diagnostics/diagnostic.ts';
import type { FormField } from '../form.ts';
import type { Named } from '../names.ts';
import { isGroup, type Value } from '../values.ts';
import { button, make, newId } from './make.ts';
import type { Sheet } from './sheet.ts';

/** So many are offered at once. */
const MOST_OFFERED = 8;

export interface Choice extends Named {
  readonly sort: Sort;
  /** What tells it from others of that name. */
  readonly more: string;
  /** Small letters that are looked in. */
  readonly found: string;
}

/** All that a field may name, as it is written in the field. */
export function choicesOf(sheet: Sheet, { name: field, names }: FormField): Choice[] {
  return names.flatMap((sort) =>
    (sort === 'bag' && field === 'to' ? bagsToFill(sheet) : namedBy(sheet, sort)).map(({ id, name }) =>
      choice(sort, written(id, sort, names), sort === 'bag' ? `bag ${id}` : name, sort === 'bag' ? name : id),
    ),
  );
}

/** What stands in a field that takes stores too says that it is a bag. */
function written(id: string, sort: Sort, names: readonly Sort[]): string {
  return sort === 'bag' && names.includes('store') ? `bag ${id}` : id;
}

function choice(sort: Sort, id: string, name: string, more: string): Choice {
  return { sort, id, name, more, found: `${id} ${name} ${more}`.toLowerCase() };
}

/** The journal's, and those that this very draft brings. */
function namedBy(sheet: Sheet, sort: Sort): readonly Named[] {
  const known = sheet.data.names[sort] ?? [];
  if (sort !== 'bag') return known;
  const own = entriesOf(sheet.draft.fields.bags).map(({ bag }) => ({ id: String(bag ?? ''), name: 'of this evening' }));
  return [...own.filter(({ id }) => id !== '' && !known.some((one) => one.id === id)), ...known];
}

/** Those of this evening, and the next free number: into a bag that an earlier one filled nothing goes. */
function bagsToFill(sheet: Sheet): readonly Named[] {
  const named = textsIn(Object.values(sheet.draft.fields)).flatMap((text) => /^bag (\d+)$/.exec(text)?.[1] ?? []);
  const own = entriesOf(sheet.draft.fields.bags).flatMap(({ bag }) => (typeof bag === 'string' && bag !== '' ? [bag] : []));
  const tonight = [...new Set([...own, ...named])];
  const known = namedBy(sheet, 'bag');
  const next = Math.max(sheet.data.nextBag, ...tonight.map((id) => Number(id) + 1));
  return [
    ...tonight.map((id) => known.find((one) => one.id === id) ?? { id, name: 'of this evening' }),
    { id: String(next), name: 'the next free number' },
  ];
}

/**
 * What is most likely meant: what this evening names already, then what the last ones did. Where several sorts of things may be
 * named, some of each are among the first.
 */
function likely(sheet: Sheet, field: FormField, choices: readonly Choice[]): Choice[] {
  const tonight = new Set(textsIn(Object.entries(sheet.draft.fields).flatMap(([name, value]) => (name === 'date' ? [] : [value]))));
  const last = sheet.data.lastParts;
  const rank = ({ id }: Choice): number =>
    tonight.has(id) ? 0 : field.names.includes('part') && last.includes(id) ? 1 + last.indexOf(id) : 1000;
  const nth = new Map<Sort, number>();
  return choices
    .map((one, n) => ({ one, rank: rank(one), n }))
    .sort((a, b) => a.rank - b.rank || a.n - b.n)
    .map(({ one, rank: own }, n) => {
      const turn = own === 0 ? 0 : (nth.get(one.sort) ?? 0) + 1;
      nth.set(one.sort, turn);
      return { one, turn, n };
    })
    .sort((a, b) => a.turn - b.turn || a.n - b.n)
    .map(({ one }) => one);
}

/** Each word that was typed begins some word of what is looked for, or stands in it. */
export function matching(choices: readonly Choice[], typed: string): Choice[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const found = choices.filter((one) => words.every((word) => one.found.includes(word)));
  const begins = ({ found: text }: Choice): boolean => words.every((word) => ` ${text}`.includes(` ${word}`) || text.includes(`-${word}`));
  return [...found.filter(begins), ...found.filter((one) => !begins(one))];
}

export interface Chooser {
  readonly element: HTMLElement;
  focus(): void;
}

/**
 * @param words what is asked for
 * @param choose told what was chosen, or written freely
 */
export function chooser(sheet: Sheet, field: FormField, words: string, choose: (id: string) => void, free: boolean): Chooser {
  const id = newId();
  const input = make('input', { id, type: 'text', autocomplete: 'off', autocapitalize: 'none', spellcheck: 'false', enterkeyhint: 'done' });
  const offered = make('div', { class: 'offered', role: 'group', 'aria-label': `${words}: offered` });
  const told = make('p', { class: 'readers-only', role: 'status' });
  const take = (chosen: string): void => {
    input.value = '';
    choose(chosen);
    offer();
  };
  const offer = (): void => {
    const choices = choicesOf(sheet, field);
    const typed = input.value.trim();
    input.closest('.chooser')?.classList.toggle('typed', typed !== '');
    const found = typed === '' ? likely(sheet, field, choices) : matching(choices, typed);
    offered.replaceChildren(...found.slice(0, MOST_OFFERED).map((one) => offeredButton(one, () => take(one.id))));
    if (typed !== '') told.textContent = found.length === 0 ? 'Nothing of that name.' : `${found.length} found.`;
    if (typed !== '' && free && !found.some((one) => one.id === typed))
      offered.append(button(`“${typed}” as written`, () => take(typed), { class: 'choice' }));
  };
  input.addEventListener('input', offer);
  input.addEventListener('focus', offer);
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const [first] = matching(choicesOf(sheet, field), input.value.trim());
    if (input.value.trim() === '') return;
    if (first) take(first.id);
    else if (free) take(input.value.trim());
  });
  // What was typed and not chosen is not lost when the finger goes elsewhere.
  if (free)
    input.addEventListener('change', () =>
      setTimeout(
        () => input.isConnected && input.value.trim() !== '' && !offered.contains(document.activeElement) && take(input.value.trim()),
        200,
      ),
    );
  offer();
  return {
    element: make('div', { class: 'chooser' }, make('label', { for: id }, words), input, told, offered),
    focus: () => input.focus(),
  };
}

function offeredButton({ id, name, more }: Choice, act: () => void): HTMLButtonElement {
  const element = button('', act, { class: 'choice', 'data-id': id });
  element.append(
    make('span', {}, name === '' ? id : name),
    ...(name === '' || name === more || more === '' ? [] : [make('small', {}, ` ${more}`)]),
  );
  return element;
}

/** What an id is called, for a line that tells what was chosen. */
export function nameOf(sheet: Sheet, field: FormField, id: string): string {
  return choicesOf(sheet, field).find((one) => one.id === id)?.name || id;
}

function entriesOf(value: Value | undefined) {
  return Array.isArray(value) ? value.filter((one) => isGroup(one)) : [];
}

function textsIn(values: readonly Value[]): string[] {
  return values.flatMap((value) => (typeof value === 'string' ? [value] : textsIn(Object.values(value))));
}
