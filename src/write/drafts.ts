/** Drafts on disk, until they are notes: outside the journal, each whole or not at all. */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { removeLeftOvers, writeWhole } from '../disk/write-whole.ts';
import { digestOf } from './desk.ts';
import type { NoteSays } from './note-text.ts';
import { isGroup } from './values.ts';

/** What is being written on one or several devices. */
export interface Draft extends NoteSays {
  readonly key: string;
  /** Grows by one with each change that was kept. */
  readonly revision: number;
  /** Tells who writes it from others: what the same writer sends again, when an answer was lost, takes the place of what came. */
  readonly writer: string;
  /** The note that it corrects, and how that lay on disk when it was taken up; null for a new one. */
  readonly corrects: { readonly path: string; readonly digest: string } | null;
  /** The note that it has become. */
  readonly became: string | null;
}

export interface Drafts {
  readonly folder: string;
  all(): Draft[];
  read(key: string): Draft | null;
  /** @returns what is kept now: of a draft that was changed meanwhile the other one, and `kept` is false */
  keep(draft: Draft): { readonly kept: boolean; readonly draft: Draft };
  /** The folder of what was laid by a draft. */
  filesOf(key: string): string;
  remove(key: string): void;
}

const KEY = /^[0-9a-f]{16,32}$/;

export function isKey(key: string): boolean {
  return KEY.test(key);
}

/** @param journal the folder of the journal, each of which has drafts of its own */
export function openDrafts(cache: string, journal: string): Drafts {
  const folder = join(cache, 'drafts', digestOf(journal).slice(0, 16));
  const fileOf = (key: string): string => {
    if (!isKey(key)) throw new Error('no key of a draft');
    return join(folder, `${key}.json`);
  };
  const read = (key: string): Draft | null => {
    try {
      const draft: unknown = JSON.parse(readFileSync(fileOf(key), 'utf8'));
      return isDraft(draft) ? draft : null;
    } catch {
      return null;
    }
  };
  return {
    folder,
    read,
    all: () =>
      existsSync(folder)
        ? readdirSync(folder)
            .filter((name) => name.endsWith('.json') && isKey(name.slice(0, -5)))
            .flatMap((name) => read(name.slice(0, -5)) ?? [])
        : [],
    keep(draft) {
      const there = read(draft.key);
      if (there !== null && there.revision !== draft.revision && there.writer !== draft.writer) return { kept: false, draft: there };
      const next = { ...draft, revision: Math.max(draft.revision, there?.revision ?? 0) + 1 };
      writeWhole(fileOf(draft.key), JSON.stringify(next));
      removeLeftOvers(folder);
      return { kept: true, draft: next };
    },
    filesOf: (key) => join(folder, fileOf(key).slice(folder.length + 1, -5)),
    remove(key) {
      rmSync(fileOf(key), { force: true });
      rmSync(fileOf(key).slice(0, -5), { recursive: true, force: true });
    },
  };
}

/** Whether something that came from outside is a draft. */
export function isDraft(value: unknown): value is Draft {
  const draft = value as Draft;
  return (
    isGroup(draft as never) &&
    isKey(String(draft.key)) &&
    isKey(String(draft.writer)) &&
    Number.isSafeInteger(draft.revision) &&
    isGroup(draft.fields) &&
    typeof draft.prose === 'string' &&
    isValue(draft.fields, 0) &&
    (draft.corrects === null || (typeof draft.corrects?.path === 'string' && typeof draft.corrects.digest === 'string')) &&
    (draft.became === null || typeof draft.became === 'string')
  );
}

/** Nothing in a note lies deeper. */
const DEEPEST = 8;

function isValue(value: unknown, depth: number): boolean {
  if (typeof value === 'string') return true;
  return typeof value === 'object' && value !== null && depth < DEEPEST && Object.values(value).every((one) => isValue(one, depth + 1));
}
