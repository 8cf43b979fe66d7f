/** What the page asks of the server. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { type Desk, digestAt } from './desk.ts';
import { type Draft, type Drafts, isDraft, isKey, openDrafts } from './drafts.ts';
import { LARGEST_FILE, laidBy, layIn, NotTaken } from './laid-files.ts';
import { makeNote, noteAt, pictureFolder, textOf } from './make-note.ts';
import { firmsOf, lastParts, namesOf, nextBag, useOf } from './names.ts';
import { readNote } from './note-text.ts';
import { previewOf } from './preview.ts';
import { problemsByField } from './problems.ts';

/** A note is a few kilobytes; this is more than the largest that is read. */
const LARGEST_DRAFT = 2 * 1024 * 1024;

/** @param desk the journal that is written to */
export function writeApi(desk: Desk): Hono {
  const drafts = openDrafts(desk.cache, desk.folder);
  const api = new Hono();
  const small = bodyLimit({ maxSize: LARGEST_DRAFT, onError: (context) => context.text('That is too much for a note.\n', 413) });
  api.get('/journal', (context) => context.json(journalData(desk, drafts)));
  api.get('/note', (context) => noteFor(context, desk));
  api.put('/drafts/:key', small, (context) => keepDraft(context, desk, drafts));
  api.delete('/drafts/:key', (context) => {
    drafts.remove(keyOf(context));
    return context.body(null, 204);
  });
  api.post('/drafts/:key/note', (context) => becomeNote(context, desk, drafts));
  api.put('/drafts/:key/:what{picture|paper}', (context) => takeFile(context, desk, drafts));
  api.get('/drafts/:key/:what{picture|paper}/:name', (context) => previewLaid(context, drafts));
  api.get('/picture', (context) => previewKnown(context, desk));
  return api;
}

/** What the page begins with. */
function journalData(desk: Desk, drafts: Drafts) {
  const opened = desk.journal();
  const { record, sources } = opened;
  return {
    title: record?.journal.settings.title ?? 'A journal',
    journal: drafts.folder.slice(-16),
    today: desk.today(),
    evening: desk.evening(),
    form: desk.form,
    names: record ? namesOf(record) : {},
    offers: { firms: record ? firmsOf(record) : [] },
    lastParts: record ? lastParts(record) : [],
    nextBag: record ? nextBag(record) : 1,
    person: record && record.journal.people.size > 0 ? [...record.journal.people.keys()][0] : null,
    use: useOf(opened, desk.form),
    notes: notesOf(desk),
    pictures: sources.assets.map(({ path }) => path),
    drafts: drafts.all().filter(({ became }) => became === null),
  };
}

function notesOf(desk: Desk): { path: string; date: string; title: string }[] {
  const { sources, record } = desk.journal();
  const known = new Map(record?.journal.sessions.map((session) => [session.file, session]));
  return sources.files
    .filter(({ path }) => path.startsWith('sessions/'))
    .map(({ path }) => ({ path, date: known.get(path)?.date ?? path.slice(9, 19), title: known.get(path)?.title ?? path }))
    .sort((a, b) => (a.date < b.date ? 1 : -1));
}

function noteFor(context: Context, desk: Desk) {
  const path = context.req.query('path') ?? '';
  const text = noteAt(desk, path);
  if (text === null) return context.text('There is no such note.\n', 404);
  return context.json({ path, digest: digestAt(desk.folder, path), text, says: readNote(text, path, desk.form) });
}

/** Keeps a draft and says what `check` would say of it as a note. */
async function keepDraft(context: Context, desk: Desk, drafts: Drafts) {
  const key = keyOf(context);
  const draft: unknown = await context.req.json().catch(() => null);
  if (!isDraft(draft) || draft.key !== key) return context.text('That is no draft.\n', 400);
  const there = drafts.read(key);
  const { kept, draft: now } = there?.became ? { kept: false, draft: there } : drafts.keep({ ...draft, became: null });
  if (kept) return context.json({ kept, draft: now, ...checked(desk, drafts, now) });
  const mine = textOf(desk, draft)?.text;
  const theirs = now.became === null ? textOf(desk, now)?.text : noteAt(desk, now.became);
  return context.json({ kept, draft: now, problems: [], mine, theirs }, 409);
}

function checked(desk: Desk, drafts: Drafts, draft: Draft) {
  const becomes = textOf(desk, draft);
  if (becomes === null) return { problems: [], byHand: true };
  const folder = `${dirname(becomes.path)}/${pictureFolder(becomes.path)}`;
  const files = laidBy(drafts.filesOf(draft.key)).map(({ name, what }) => (what === 'paper' ? `papers/${name}` : folder + name));
  const problems = problemsByField(desk.problemsWith(becomes.path, becomes.text, files), becomes.path, becomes.text, desk.form);
  return { problems, byHand: false };
}

function becomeNote(context: Context, desk: Desk, drafts: Drafts) {
  const draft = drafts.read(keyOf(context));
  if (draft === null) return context.text('There is no such draft.\n', 404);
  // The answer may have been lost on its way.
  if (draft.became !== null) return context.json({ made: true, path: draft.became });
  const made = makeNote(desk, draft, laidBy(drafts.filesOf(draft.key)));
  if (!made.made) return context.json(made, 409);
  drafts.keep({ ...draft, became: made.path });
  return context.json(made);
}

async function takeFile(context: Context, desk: Desk, drafts: Drafts) {
  const what = context.req.param('what') as 'picture' | 'paper';
  const bytes = Number(context.req.header('content-length') ?? Number.NaN);
  const { body } = context.req.raw;
  if (!Number.isSafeInteger(bytes) || body === null) return context.text('Say how long it is.\n', 411);
  if (bytes > LARGEST_FILE) return context.text(`A file may have ${LARGEST_FILE / 1024 / 1024} MB.\n`, 413);
  const key = keyOf(context);
  const folder = drafts.filesOf(key);
  const corrects = drafts.read(key)?.corrects?.path ?? null;
  const beside =
    what === 'paper'
      ? join(desk.folder, 'papers')
      : corrects === null
        ? null
        : join(desk.folder, dirname(corrects), pictureFolder(corrects));
  const prefix = what === 'picture' ? pictureFolder(corrects) : '';
  try {
    const taken = (name: string): boolean => beside !== null && existsSync(join(beside, name));
    const file = await layIn(folder, { what, name: context.req.query('name') ?? '', bytes, body, taken });
    return context.json({ name: prefix + file.name });
  } catch (error) {
    if (error instanceof NotTaken) return context.text(`${error.message}\n`, 415);
    throw error;
  }
}

async function previewLaid(context: Context, drafts: Drafts) {
  const laid = laidBy(drafts.filesOf(keyOf(context))).find(
    ({ name, what }) => name === context.req.param('name') && what === context.req.param('what'),
  );
  return laid ? sendPreview(context, laid.file) : context.text('There is no such picture.\n', 404);
}

/** Only what was found in the journal is shown: a path from outside is looked up, and never opened. */
async function previewKnown(context: Context, desk: Desk) {
  const asset = desk.journal().sources.assets.find(({ path }) => path === context.req.query('path'));
  return asset ? sendPreview(context, join(desk.folder, asset.path)) : context.text('There is no such picture.\n', 404);
}

async function sendPreview(context: Context, file: string) {
  const preview = await previewOf(file);
  return preview === null
    ? context.text('It cannot be shown.\n', 415)
    : context.body(new Uint8Array(preview), 200, { 'Content-Type': 'image/jpeg' });
}

function keyOf(context: Context): string {
  const key = context.req.param('key') ?? '';
  if (!isKey(key)) throw new NoSuchDraft();
  return key;
}

/** A key that no draft can have. */
export class NoSuchDraft extends Error {}
