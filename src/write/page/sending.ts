/** Files on their way: kept on the device until the server has each of them as a whole. */

import type { Value, Values } from '../values.ts';
import { ask, askPicture, Refused } from './ask.ts';
import { filesOnDevice, newKey, type WaitingFile } from './device.ts';
import { make } from './make.ts';
import type { Sheet } from './sheet.ts';
import { SENDING } from './state.ts';

const AGAIN_MS = 3000;

/** Pictures that were taken while the page is open, by the name that stands in the fields. */
const shown = new Map<string, string>();

/** @returns what stands in the field until the file is sent */
export async function takeIn(sheet: Sheet, file: File, what: WaitingFile['what']): Promise<string> {
  const waiting: WaitingFile = { id: newKey(), key: sheet.draft.key, what, name: file.name, blob: file };
  const name = SENDING + waiting.id;
  shown.set(name, URL.createObjectURL(file));
  await filesOnDevice.keep(waiting).catch(() => undefined);
  void sendUntilSent(sheet, waiting);
  return name;
}

/** Goes on with what was not sent when the page was last closed. */
export async function goOnSending(sheet: Sheet): Promise<void> {
  const all = await filesOnDevice.all().catch(() => []);
  for (const file of all.filter(({ key }) => key === sheet.draft.key)) void sendUntilSent(sheet, file);
}

async function sendUntilSent(sheet: Sheet, file: WaitingFile): Promise<void> {
  const waits = SENDING + file.id;
  for (;;) {
    try {
      const { name } = await ask<{ name: string }>(`drafts/${file.key}/${file.what}?name=${encodeURIComponent(file.name)}`, {
        method: 'PUT',
        body: file.blob,
      });
      sent(sheet, waits, name);
      await filesOnDevice.remove(file.id).catch(() => undefined);
      return;
    } catch (error) {
      if (error instanceof Refused && error.status < 500 && error.status !== 401) return refused(waits, error.message);
      await new Promise((again) => setTimeout(again, AGAIN_MS));
    }
  }
}

/** The name that the note has for it takes the place of what stood there until then. */
function sent(sheet: Sheet, waits: string, name: string): void {
  const address = shown.get(waits);
  if (address !== undefined) shown.set(name, address);
  replaced(sheet.draft.fields, waits, name);
  sheet.changed();
  for (const element of document.querySelectorAll<HTMLElement>(`[data-file="${waits}"]`)) {
    element.dataset.file = name;
    const words = element.querySelector('figcaption');
    if (words) words.textContent = name;
  }
}

function replaced(values: Values | Value[], from: string, to: string): void {
  for (const [name, value] of Object.entries(values)) {
    if (value === from) (values as Values)[name] = to;
    else if (typeof value !== 'string') replaced(value, from, to);
  }
}

function refused(waits: string, why: string): void {
  for (const words of document.querySelectorAll(`[data-file="${waits}"] figcaption`)) words.textContent = `Not taken: ${why}`;
}

/** A picture of the draft, or of the note that is corrected. */
export function pictureOf(sheet: Sheet, name: string, what: WaitingFile['what']): HTMLElement {
  const image = make('img', { alt: '' });
  const words = make('figcaption', {}, name.startsWith(SENDING) ? 'On its way to the server.' : name);
  const figure = make('figure', { 'data-file': name }, image, words);
  const known = shown.get(name);
  if (known !== undefined) image.src = known;
  else if (!name.startsWith(SENDING))
    void lookedUp(sheet, name, what).then((address) => address !== null && image.setAttribute('src', address));
  return figure;
}

async function lookedUp(sheet: Sheet, name: string, what: WaitingFile['what']): Promise<string | null> {
  const { key, corrects } = sheet.draft;
  const folder = corrects === null ? null : corrects.path.replace(/[^/]*$/, '');
  const places = [`drafts/${key}/${what}/${encodeURIComponent(name.split('/').pop() ?? name)}`];
  if (folder !== null) places.push(`picture?path=${encodeURIComponent(folder + name)}`);
  if (what === 'paper') places.push(`picture?path=${encodeURIComponent(`papers/${name}`)}`);
  for (const place of places) {
    const address = await askPicture(place).catch(() => null);
    if (address !== null) return address;
  }
  return null;
}
