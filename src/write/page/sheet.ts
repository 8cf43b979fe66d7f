/** The draft under the hands: kept on the device with each letter, and by the server as soon as it can be reached. */
import type { Draft } from '../drafts.ts';
import type { FieldProblem } from '../problems.ts';
import { ask, Refused, send } from './ask.ts';
import type { draftsOnDevice } from './device.ts';
import { type JournalData, type Kept, SENDING } from './state.ts';

export interface Sheet {
  readonly data: JournalData;
  draft: Draft;
  /** Something was written. */
  changed(): void;
  /** Sends what the server does not have yet. @returns whether it has all of it */
  sync(): Promise<boolean>;
  close(): void;
}

export interface Watching {
  said(words: string): void;
  problems(problems: readonly FieldProblem[], byHand: boolean): void;
  /** The draft was changed on another device, or has become a note there. */
  conflict(kept: Kept): void;
}

/** So long after the last letter it is sent, and again when it could not be. */
const QUIET_MS = 500;
const AGAIN_MS = 3000;

export function openSheet(
  data: JournalData,
  draft: Draft,
  sent: boolean,
  device: ReturnType<typeof draftsOnDevice>,
  watching: Watching,
): Sheet {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let unsent = !sent;
  let open = true;
  let underWay: Promise<boolean> | null = null;
  const later = (wait: number): void => {
    clearTimeout(timer);
    if (open) timer = setTimeout(() => void sheet.sync(), wait);
  };
  const tryOnce = async (): Promise<boolean> => {
    const { revision } = sheet.draft;
    const writing = JSON.stringify(sheet.draft);
    try {
      const kept = await send<Kept>('PUT', `drafts/${sheet.draft.key}`, sheet.draft);
      if (!open) return false;
      if (!kept.kept) {
        watching.conflict(kept);
        return false;
      }
      unsent = JSON.stringify(sheet.draft) !== writing;
      sheet.draft = { ...sheet.draft, revision: kept.draft.revision };
      device.keep(sheet.draft, !unsent);
      watching.problems(kept.problems, kept.byHand === true);
      watching.said(unsent ? 'Kept on this device.' : 'Kept on this device and by the server.');
      if (unsent) later(QUIET_MS);
      return !unsent;
    } catch (error) {
      watching.said(whyNot(error));
      if (!(error instanceof Refused) || error.status >= 500) later(AGAIN_MS);
      sheet.draft = { ...sheet.draft, revision };
      return false;
    }
  };
  const sheet: Sheet = {
    data,
    draft,
    changed() {
      unsent = true;
      watching.said(
        device.keep(sheet.draft, false) ? 'Kept on this device.' : 'This device has no room for it; keep the page open until it is sent.',
      );
      later(QUIET_MS);
    },
    async sync() {
      clearTimeout(timer);
      while (underWay !== null) await underWay;
      underWay = tryOnce();
      const done = await underWay.finally(() => {
        underWay = null;
      });
      return done;
    },
    close() {
      open = false;
      clearTimeout(timer);
    },
  };
  return sheet;
}

function whyNot(error: unknown): string {
  if (error instanceof Refused && error.status === 401) return `Kept on this device. ${error.message}`;
  return error instanceof Refused
    ? `Kept on this device. The server says: ${error.message}`
    : 'Kept on this device. The server cannot be reached; it is tried again.';
}

/** The files of a draft that have not been sent. */
export function stillSending(draft: Draft): number {
  return JSON.stringify(draft.fields).split(`"${SENDING}`).length - 1;
}

/** Takes a draft off the server and the device. */
export async function forget(key: string, device: ReturnType<typeof draftsOnDevice>): Promise<void> {
  await ask(`drafts/${key}`, { method: 'DELETE' });
  device.remove(key);
}
