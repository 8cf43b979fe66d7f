/** What is kept on this device until the server has it: drafts as text, pictures as they came from the camera. */
import type { Draft } from '../drafts.ts';

export interface OnDevice {
  readonly draft: Draft;
  /** The server has all of it. */
  readonly sent: boolean;
}

export interface WaitingFile {
  readonly id: string;
  readonly key: string;
  readonly what: 'picture' | 'paper';
  readonly name: string;
  readonly blob: Blob;
}

/** A key for a draft, or for a file: 64 bits of chance. */
export function newKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @param journal says whose drafts they are */
export function draftsOnDevice(journal: string) {
  const prefix = `asfound/${journal}/`;
  return {
    /** @returns whether there was room for it */
    keep(draft: Draft, sent: boolean): boolean {
      try {
        localStorage.setItem(prefix + draft.key, JSON.stringify({ draft, sent } satisfies OnDevice));
        return true;
      } catch {
        return false;
      }
    },
    all(): OnDevice[] {
      const keys = Array.from({ length: localStorage.length }, (_, n) => localStorage.key(n) ?? '');
      return keys.filter((key) => key.startsWith(prefix)).flatMap((key) => parsed(localStorage.getItem(key)));
    },
    remove: (key: string): void => localStorage.removeItem(prefix + key),
  };
}

function parsed(text: string | null): OnDevice[] {
  try {
    return text === null ? [] : [JSON.parse(text) as OnDevice];
  } catch {
    return [];
  }
}

const STORE = 'files';

function opened(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const request = indexedDB.open('asfound', 1);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE, { keyPath: 'id' }));
    request.addEventListener('success', () => done(request.result));
    request.addEventListener('error', () => fail(request.error));
  });
}

async function inStore<T>(mode: IDBTransactionMode, act: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const database = await opened();
  try {
    return await new Promise<T>((done, fail) => {
      const transaction = database.transaction(STORE, mode);
      const request = act(transaction.objectStore(STORE));
      transaction.addEventListener('complete', () => done(request.result));
      transaction.addEventListener('error', () => fail(transaction.error));
      transaction.addEventListener('abort', () => fail(transaction.error));
    });
  } finally {
    database.close();
  }
}

export const filesOnDevice = {
  keep: (file: WaitingFile): Promise<unknown> => inStore('readwrite', (store) => store.put(file)),
  all: (): Promise<WaitingFile[]> => inStore('readonly', (store) => store.getAll() as IDBRequest<WaitingFile[]>),
  remove: (id: string): Promise<unknown> => inStore('readwrite', (store) => store.delete(id)),
};
