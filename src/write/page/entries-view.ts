/** A list of entries: those there are, each a line that opens, and one tap to add another. */
import type { FormField } from '../form.ts';
import { isGroup, type Value, type Values } from '../values.ts';
import { chooser, nameOf } from './chooser.ts';
import { isRunning } from './clock.ts';
import { type At, fieldView, textsOf } from './field-view.ts';
import { accepts, whatOf } from './file-field.ts';
import { button, labelOf, make, newId } from './make.ts';
import { takeIn } from './sending.ts';
import type { Sheet } from './sheet.ts';

/** A field that this share of the entries has is shown without being asked for. */
const OFTEN = 1 / 3;
/** Where there are few notes yet that could say so, the first few of each entry are shown too, and its last words. */
const AT_FIRST = 4;
const YOUNG = 10;

export function entriesView(at: At): HTMLElement {
  const { field, holder, sheet } = at;
  const list = make('div', { class: 'entries' });
  const undo = make('div', { class: 'undo', role: 'status' });
  const entries = (): Values[] =>
    Array.isArray(holder[field.name]) ? (holder[field.name] as Value[]).filter((one): one is Values => isGroup(one)) : [];
  const set = (all: Values[]): void => {
    if (all.length === 0) delete holder[field.name];
    else holder[field.name] = all;
    sheet.changed();
  };
  const show = (open: number | null): void => {
    list.replaceChildren(...entries().map((entry, n) => entryView({ ...at, entry, n, open: n === open, remove: () => remove(entry) })));
  };
  const add = (entry: Values): void => {
    set([...entries(), entry]);
    undo.replaceChildren();
    show(entries().length - 1);
    list.lastElementChild?.scrollIntoView({ block: 'nearest' });
  };
  const remove = (entry: Values): void => {
    const before = entries();
    set(before.filter((one) => one !== entry));
    show(null);
    undo.replaceChildren(
      `${labelOf(field.name)}: taken away. `,
      button('Put it back', () => {
        set(before);
        undo.replaceChildren();
        show(before.indexOf(entry));
      }),
    );
  };
  show(entries().length === 1 ? 0 : null);
  return make('div', {}, list, undo, adder(at, add));
}

/** Where an entry is about something that has a name, that is what is chosen; where it is about a file, that is what is taken. */
function adder(at: At, add: (entry: Values) => void): HTMLElement {
  const { field, sheet } = at;
  const first = field.fields.find(({ required }) => required);
  if (first?.writtenAs === 'picture-file') return filesAdder(at, first, add);
  if (first && first.names.length > 0 && first.writtenAs !== 'number') {
    const chosen = (id: string): void => add({ ...beginning(at), [first.name]: first.many || first.several ? [id] : id });
    return chooser(sheet, first, `Add to ${labelOf(field.name).toLowerCase()}`, chosen, false).element;
  }
  return button(`Add to ${labelOf(field.name).toLowerCase()}`, () => add(beginning(at)), { class: 'add' });
}

function filesAdder({ sheet, field }: At, first: FormField, add: (entry: Values) => void): HTMLElement {
  const id = newId();
  const input = make('input', { id, type: 'file', accept: accepts(first), multiple: true });
  input.addEventListener('change', () => {
    const files = [...(input.files ?? [])];
    input.value = '';
    void (async () => {
      for (const file of files) add({ [first.name]: await takeIn(sheet, file, whatOf(first)) });
    })();
  });
  return make(
    'div',
    {},
    make('label', { for: id, class: 'as-button' }, `Add to ${labelOf(field.name).toLowerCase()}: take or choose`),
    input,
  );
}

/** What a new entry says by itself: the next number of a bag, the one who writes. */
function beginning({ field, sheet, holder }: At): Values {
  const begun: Values = {};
  for (const one of field.fields) {
    if (one.required && one.writtenAs === 'number' && one.names.includes('bag'))
      begun[one.name] = String(nextBag(sheet.data.nextBag, holder[field.name], one.name));
    if (one.required && one.of === 'fields' && one.many) begun[one.name] = [{}];
    if (one.names.includes('person') && shownFirst({ field, sheet }, one)) {
      const person = nextPerson(sheet, holder[field.name], one.name);
      if (person !== null) begun[one.name] = one.several ? [person] : person;
    }
  }
  return begun;
}

/** Who has no entry of this evening yet; the one who writes where all have. */
function nextPerson({ data }: Sheet, entries: Value | undefined, name: string): string | null {
  const told = Array.isArray(entries) ? entries.flatMap((entry) => (isGroup(entry) ? [entry[name] ?? []].flat() : [])) : [];
  const others = (data.names.person ?? []).map(({ id }) => id);
  return [data.person, ...others].find((id) => id !== null && !told.includes(id)) ?? data.person;
}

function nextBag(next: number, entries: Value | undefined, name: string): number {
  const own = Array.isArray(entries) ? entries.map((entry) => Number(isGroup(entry) ? entry[name] : 0)) : [];
  return Math.max(next - 1, ...own.filter(Number.isFinite)) + 1;
}

function shownFirst({ field, sheet, way = [field.name] }: Pick<At, 'field' | 'sheet'> & { way?: At['way'] }, one: FormField): boolean {
  const use = sheet.data.use;
  const names = way.filter((step) => typeof step === 'string').join('/');
  const isYoung = sheet.data.notes.length < YOUNG || use[names] === undefined;
  const lastWords = field.fields.findLast(({ prose }) => prose);
  if (isYoung && (field.fields.indexOf(one) < AT_FIRST || one === lastWords)) return true;
  return (use[`${names}/${one.name}`] ?? 0) >= OFTEN;
}

interface EntryAt extends At {
  readonly entry: Values;
  readonly n: number;
  readonly open: boolean;
  readonly remove: () => void;
}

function entryView(at: EntryAt): HTMLElement {
  const { entry, field, n, open, remove, way, around } = at;
  const inner = (one: FormField): HTMLElement =>
    fieldView({ ...at, field: one, holder: entry, way: [...way, n, one.name], around: [entry, ...around] });
  const isShown = (one: FormField): boolean => one.required || entry[one.name] !== undefined || shownFirst(at, one);
  const body = make('div', { class: 'body' }, ...field.fields.filter(isShown).map(inner));
  const more = make('div', { class: 'more', role: 'group', 'aria-label': 'More to say' });
  for (const one of field.fields.filter((each) => !isShown(each))) {
    const adding = button(labelOf(one.name), () => {
      const made = inner(one);
      body.append(made);
      adding.remove();
      made.querySelector<HTMLElement>('input, textarea, button')?.focus();
    });
    more.append(adding);
  }
  const line = make('span', {}, summaryOf(at));
  const element = make(
    'details',
    { class: 'entry', 'data-way': [...way, n].join('/') },
    make('summary', {}, line),
    body,
    more,
    make('p', { class: 'problem', hidden: true }),
    button('Take this one away', remove, { class: 'away' }),
  );
  element.open = open;
  element.addEventListener('toggle', () => {
    line.textContent = summaryOf(at);
  });
  newIdFollows(at, body);
  return element;
}

/** An id that is made here follows what is said, until it is written by hand. */
function newIdFollows({ field, entry, sheet }: EntryAt, body: HTMLElement): void {
  const made = field.fields.find(({ writtenAs }) => writtenAs === 'new-id');
  const says = field.fields.find(({ required, prose }) => required && prose);
  if (!made || !says) return;
  body.addEventListener('written', (event) => {
    if ((event as CustomEvent<string>).detail !== says.name) return;
    const input = body.querySelector<HTMLInputElement>(`[data-way$="/${made.name}"] input`);
    if (!input || (input.value !== '' && input.dataset.made !== input.value)) return;
    input.value = idFrom(String(entry[says.name] ?? ''));
    input.dataset.made = input.value;
    entry[made.name] = input.value;
    sheet.changed();
  });
}

function idFrom(words: string): string {
  const plain = words.toLowerCase().normalize('NFKD').replaceAll(/\p{M}/gu, '');
  return plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .split('-')
    .slice(0, 4)
    .join('-');
}

/** The entry in a line. */
function summaryOf({ sheet, field, entry, n }: EntryAt): string {
  const words = field.fields.flatMap((one) => {
    const texts = textsOf(entry[one.name]);
    if (isRunning(texts[0])) return [`since ${texts[0]?.slice(0, -1)}`];
    if (texts.length === 0 || one.writtenAs === 'picture-file') return [];
    if (texts.every((text) => /^\d+$/.test(text))) return [`${labelOf(one.name).toLowerCase()} ${texts.join(', ')}`];
    return [texts.map((text) => nameOf(sheet, one, text)).join(', ')];
  });
  const said = words.join(' · ');
  return said === '' ? `${labelOf(field.name)} ${n + 1}` : said.length > 90 ? `${said.slice(0, 89)}…` : said;
}
