/** The folder that the pictures of a note lie in; a note that is a file alone is moved into one. */
import { existsSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder } from '../../disk/folders.ts';
import type { Session } from '../../journal/model.ts';
import { refusing } from '../write-new.ts';

export interface NoteFolder {
  /** Inside the journal: `sessions/2031-03-12-front-brakes`. */
  readonly folder: string;
  /** The file that has to be moved into it first; null where the note lies there. */
  readonly bare: string | null;
}

/** @returns null for a note alone that names files beside it, which would no longer be beside it */
export function noteFolderOf(session: Session): NoteFolder | null {
  const { file, body } = session;
  if (file.endsWith('/index.md')) return { folder: dirname(file), bare: null };
  const beside = dirname(file);
  const { pictures, film, bags } = session;
  const named = [...pictures.map((one) => one.file), ...film.map((one) => one.file), ...bags.map(({ picture }) => picture)];
  const isBeside = named.some((path) => path !== null && dirname(path) === beside);
  const isRelative =
    /\]\(\s*<?(?!#|\/|[a-z][\w+.-]*:)[^\s)]|^\s*\[[^\]]+\]:\s*(?!#|\/|[a-z][\w+.-]*:)\S|(?:src|href)\s*=\s*["'](?!#|\/|[a-z][\w+.-]*:)/im.test(
      body,
    );
  return isBeside || isRelative ? null : { folder: file.replace(/\.md$/, ''), bare: file };
}

/** @throws Refusal when a note lies there already, or the file cannot be moved */
export function moveIntoFolder(journal: string, { folder, bare }: NoteFolder): void {
  if (bare === null) return;
  const to = join(journal, folder, 'index.md');
  refusing(to, () => {
    if (existsSync(to)) throw new Error(`${to} is there already`);
    makeFolder(join(journal, folder));
    renameSync(join(journal, bare), to);
  });
}
