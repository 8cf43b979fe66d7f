/** The page: which evening, and then that evening. */
import type { Draft } from '../drafts.ts';
import type { Made } from '../make-note.ts';
import type { NoteSays } from '../note-text.ts';
import { ask, Refused, send } from './ask.ts';
import { eveningWords, nightWords } from './day-words.ts';
import { draftsOnDevice, newKey, type OnDevice } from './device.ts';
import { button, make } from './make.ts';
import { noteView, showProblems } from './note-view.ts';
import { goOnSending } from './sending.ts';
import { forget, openSheet, type Sheet, stillSending } from './sheet.ts';
import { sideBySide } from './side-by-side.ts';
import type { JournalData, Kept } from './state.ts';

type Device = ReturnType<typeof draftsOnDevice>;

const page = find('page', HTMLElement);
const bar = find('bar', HTMLElement);
const said = find('kept', HTMLElement);
const makeButton = find('make-note', HTMLButtonElement);
const toStart = find('to-start', HTMLButtonElement);
let sheet: Sheet | null = null;
/** What the list of evenings was made from, while that is on the page. */
let listed: JournalData | null = null;

function find<T extends HTMLElement>(id: string, kind: new () => T): T {
  const element = document.getElementById(id);
  if (!(element instanceof kind)) throw new Error(`the page has no ${id}`);
  return element;
}

function show(...inside: readonly Node[]): void {
  listed = null;
  page.replaceChildren(...inside);
  scrollTo(0, 0);
  page.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
}

async function start(): Promise<void> {
  sheet?.close();
  sheet = null;
  bar.hidden = true;
  toStart.hidden = true;
  try {
    startWith(await ask<JournalData>('journal'));
  } catch (error) {
    const words = error instanceof Refused ? error.message : 'The server cannot be reached. What was typed is kept on this device.';
    show(
      make('h1', { tabindex: '-1' }, 'Not yet'),
      make('p', { class: 'problem' }, words),
      button('Try again', () => void start()),
    );
  }
}

function startWith(data: JournalData): void {
  find('name', HTMLElement).textContent = data.title;
  const device = draftsOnDevice(data.journal);
  const drafts = draftsOf(data, device);
  const begun = drafts.map(({ draft, sent }) =>
    button(`Go on with ${titleOf(draft)}${draft.corrects === null ? '' : ', a correction'}`, () => edit(data, draft, sent, device), {
      class: 'line',
    }),
  );
  const notes = data.notes.map(({ path, date, title }) =>
    button(`${date} ${title}`, () => void correct(data, path, device), { class: 'line' }),
  );
  const older = make('details', {}, make('summary', {}, 'Older evenings'), ...notes.slice(LAST));
  show(
    make('h1', { tabindex: '-1' }, 'Write an evening'),
    ...nightLine(data),
    button(`Write tonight, ${eveningWords(data.evening)}`, () => edit(data, newDraft(data), true, device), { class: 'chief' }),
    ...(begun.length > 0 ? [make('h2', {}, 'Begun'), ...begun] : []),
    make('h2', {}, 'Correct an evening'),
    ...notes.slice(0, LAST),
    ...(notes.length > LAST ? [older] : []),
  );
  listed = data;
}

/** A list that was left open since yesterday would begin the evening of yesterday. */
async function startAgain(): Promise<void> {
  if (listed === null) return;
  const before = listed;
  const now = await ask<JournalData>('journal').catch(() => before);
  if (listed === before && JSON.stringify(now) !== JSON.stringify(before)) startWith(now);
}

function nightLine(data: JournalData): HTMLElement[] {
  const words = nightWords(data);
  return words === null ? [] : [make('p', { class: 'night' }, words)];
}

/** So many evenings are shown at once. */
const LAST = 5;

/** Those of this device and those of the server; of one that both have, the one with what the other lacks. */
function draftsOf(data: JournalData, device: Device): OnDevice[] {
  const here = device.all().filter(({ draft }) => !(draft.became !== null));
  const there = data.drafts.filter((draft) => !here.some((one) => one.draft.key === draft.key && !one.sent));
  const unsent = here.filter(({ sent }) => !sent);
  // What the server had and has no more is a note by now, or was thrown away.
  for (const { draft, sent } of here) if (sent && !data.drafts.some(({ key }) => key === draft.key)) device.remove(draft.key);
  return [...unsent, ...there.map((draft) => ({ draft, sent: true }))];
}

function newDraft(data: JournalData): Draft {
  return { key: newKey(), writer: newKey(), revision: 0, corrects: null, became: null, fields: { date: data.evening }, prose: '' };
}

function titleOf({ fields }: Draft): string {
  return [fields.date, fields.title].filter((one) => typeof one === 'string').join(' ');
}

interface NoteThere {
  readonly path: string;
  readonly digest: string;
  readonly text: string;
  readonly says: NoteSays | null;
}

async function correct(data: JournalData, path: string, device: Device): Promise<void> {
  const note = await ask<NoteThere>(`note?path=${encodeURIComponent(path)}`);
  if (note.says === null) {
    const words =
      'The fields of this note are not sound YAML, so it cannot be shown as a form. Mend it in an editor, or with `asfound check --fix`.';
    toStart.hidden = false;
    show(make('h1', { tabindex: '-1' }, path), make('p', { class: 'problem' }, words), make('pre', { tabindex: '0' }, note.text));
    return;
  }
  edit(
    data,
    { key: newKey(), writer: newKey(), revision: 0, corrects: { path, digest: note.digest }, became: null, ...note.says },
    true,
    device,
  );
}

function edit(data: JournalData, draft: Draft, sent: boolean, device: Device): void {
  sheet?.close();
  // What was taken from the server is gone on with by another writer than the one it came from.
  const writer = sent ? newKey() : draft.writer;
  const own = openSheet(data, { ...structuredClone(draft), writer }, sent, device, {
    said: (words) => {
      said.textContent = words;
    },
    problems: (problems, byHand) => {
      const count = showProblems(view, own, problems);
      makeButton.dataset.problems = String(count);
      if (warnedOf !== sayingOf(own)) makeButton.textContent = makeWords(own);
      if (byHand)
        said.textContent =
          'This cannot be written into the note without touching its comments. Take the change back, or make it in an editor.';
      else if (count > 0) said.textContent = `Kept. ${count === 1 ? 'One thing' : `${count} things`} to mend before it is published.`;
    },
    conflict: (kept) => differ(data, own, kept, device),
  });
  sheet = own;
  const view = noteView(own);
  bar.hidden = false;
  toStart.hidden = false;
  makeButton.textContent = makeWords(own);
  makeButton.onclick = () => void becomeNote(data, own, device);
  const heading = make('h1', { tabindex: '-1' }, headingOf(draft));
  // The day may be changed in the form below.
  if (draft.corrects === null) view.addEventListener('input', () => (heading.textContent = headingOf(own.draft)));
  show(heading, ...(draft.corrects === null ? nightLine(data) : []), view, throwAway(own, device));
  void goOnSending(own);
  // What was only looked at is no draft.
  said.textContent = '';
  if (!sent || draft.revision > 0) void own.sync();
}

function headingOf(draft: Draft): string {
  if (draft.corrects !== null) return `Correct ${titleOf(draft)}`;
  const words = eveningWords(draft.fields.date) ?? 'An evening of no day yet';
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Nothing is thrown away by one tap. */
function throwAway(own: Sheet, device: Device): HTMLElement {
  const sure = button(
    'Yes, throw this draft away',
    () => void forget(own.draft.key, device).then(start, (error: Error) => (said.textContent = error.message)),
    { class: 'away' },
  );
  return make('details', { class: 'rare' }, make('summary', {}, 'Throw this draft away'), sure);
}

/** What the draft said when it was told that something in it is to be mended. */
let warnedOf: string | null = null;

const sayingOf = ({ draft: { key, fields, prose } }: Sheet): string => JSON.stringify([key, fields, prose]);
const makeWords = ({ draft }: Sheet): string => (draft.corrects === null ? 'Make it a note' : 'Write it into the note');

/** Nothing with a fault is written by one tap: the first leads to the fault, and only the second writes it as it is. */
function isToMend(own: Sheet): boolean {
  const count = Number(makeButton.dataset.problems ?? 0);
  if (count === 0 || warnedOf === sayingOf(own)) return false;
  warnedOf = sayingOf(own);
  makeButton.textContent = 'Write it as it is';
  said.textContent = `${count === 1 ? 'One thing is to mend, and stands at its field.' : `${count} things are to mend, and stand at their fields.`} Nothing was written yet.`;
  page.querySelector('.problem .error')?.scrollIntoView({ block: 'center' });
  return true;
}

async function becomeNote(data: JournalData, own: Sheet, device: Device): Promise<void> {
  const waiting = stillSending(own.draft);
  if (waiting > 0) {
    said.textContent = `${waiting === 1 ? 'One picture is' : `${waiting} pictures are`} still on the way. Nothing is lost; try again in a moment.`;
    return;
  }
  if (!(await own.sync())) return;
  if (isToMend(own)) return;
  try {
    const made = await send<Made>('POST', `drafts/${own.draft.key}/note`, {});
    if (!made.made) return notMade(data, own, made, device);
    device.remove(own.draft.key);
    own.close();
    bar.hidden = true;
    show(
      make('h1', { tabindex: '-1' }, 'It is a note now'),
      make('p', { id: 'written-to' }, made.path),
      button('Correct it', () => void ask<JournalData>('journal').then((now) => correct(now, made.path, device))),
      button('All evenings', () => void start()),
    );
  } catch (error) {
    said.textContent = error instanceof Refused ? error.message : 'The server cannot be reached. Nothing is lost; try again.';
  }
}

function notMade(data: JournalData, own: Sheet, made: Extract<Made, { made: false }>, device: Device): void {
  if (made.why === 'no-day') said.textContent = 'A note needs the day of the work.';
  if (made.why === 'by-hand')
    said.textContent = 'This cannot be written into the note without touching its comments. Make the change in an editor.';
  if (made.why !== 'changed') return;
  const path = own.draft.corrects?.path ?? '';
  const goOn = async (): Promise<void> => {
    const corrects = made.theirs === null ? null : { path, digest: (await ask<NoteThere>(`note?path=${encodeURIComponent(path)}`)).digest };
    own.draft = { ...own.draft, corrects };
    own.changed();
    await becomeNote(data, own, device);
  };
  bar.hidden = true;
  show(
    sideBySide(
      'The note was changed on disk meanwhile',
      ['As it would be written', made.mine],
      ['As it lies there now', made.theirs ?? 'It is not there any more.'],
      button(made.theirs === null ? 'Make a note of mine again' : 'Go on with mine: write it in place of that', () => void goOn()),
      button('Look at mine again', () => edit(data, own.draft, true, device)),
      button('Leave the note as it is, and keep mine as a draft', () => void start()),
    ),
  );
}

/** Somebody wrote on with the same draft on another device, or it has become a note there. */
function differ(data: JournalData, own: Sheet, { draft: theirs, mine, theirs: text }: Kept, device: Device): void {
  const ours = own.draft;
  own.close();
  bar.hidden = true;
  const apart = (): void => edit(data, { ...ours, key: newKey(), revision: 0 }, false, device);
  const actions = [
    ...(theirs.became === null
      ? [button('Go on with this one', () => edit(data, { ...ours, revision: theirs.revision }, false, device))]
      : []),
    ...(theirs.became === null ? [button('Go on with the other one', () => edit(data, theirs, true, device))] : []),
    button('Keep both: make this one a draft of its own', apart),
  ];
  const heading =
    theirs.became === null
      ? 'This draft was changed on another device'
      : `This draft has become a note on another device: ${theirs.became}`;
  show(
    sideBySide(
      heading,
      ['Here', mine ?? JSON.stringify(ours.fields, null, 2)],
      ['There', text ?? JSON.stringify(theirs.fields, null, 2)],
      ...actions,
    ),
  );
}

toStart.addEventListener('click', () => void start());
addEventListener('hashchange', () => void start());
addEventListener('online', () => void sheet?.sync());
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState !== 'visible') return;
  void sheet?.sync();
  void startAgain();
});
// The address holds the secret behind its `#`, so the way past the head must not change it.
document.querySelector('[data-skip]')?.addEventListener('click', (event) => {
  event.preventDefault();
  page.focus();
});
void start();
