/** What can be wrong with a file before anything in it is read. */
import { type Diagnostic, diagnostic, startOf } from '../journal/diagnostics/diagnostic.ts';

/** The file system would not give the file up. */
export function unreadable(path: string, reason: string): Diagnostic {
  return diagnostic('A107', startOf(path), `This file cannot be read: ${reason}.`, {
    hint: 'Check its permissions, and that it is still there.',
  });
}

/** The file is larger than a note or catalogue may be. `size` in bytes. */
export function tooLarge(path: string, size: number): Diagnostic {
  const megabytes = (size / 1024 / 1024).toFixed(1);
  return diagnostic('A104', startOf(path), `This file is ${megabytes} MB; a note or catalogue is 1 MB at most. It was not read.`, {
    hint: 'Keep pictures and long papers as files beside the note, and link them.',
  });
}

/** A link that leads out of the journal. */
export function leadsOut(path: string): Diagnostic {
  return diagnostic('A106', startOf(path), 'This symbolic link leads out of the journal folder, so it is not followed.', {
    hint: 'Put a copy of the file into the journal.',
  });
}

/** A file where only catalogues or notes are read, that is none by its name. */
export function stray(path: string): Diagnostic {
  if (path.startsWith('sessions/')) {
    const name = path.slice(path.lastIndexOf('/') + 1).replace(/\.(?:md|markdown|md\.txt)$/i, '.md');
    return diagnostic('A110', startOf(path), 'This file is not read: a note is a file that ends in `.md`.', { hint: `Name it ${name}.` });
  }
  const hint = path.endsWith('.yml') ? `Name it ${path.replace(/\.yml$/, '.yaml')}.` : 'Move it out of this folder, or leave it.';
  return diagnostic('A110', startOf(path), 'This file is not read: a catalogue is a file `NAME.yaml` right in this folder.', { hint });
}

/** What the operating system said, in plain words. */
export function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code ?? '';
  return REASONS[code] ?? (code === '' ? String(error) : `the system says ${code}`);
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOENT: 'what it points to is not there',
  ELOOP: 'its symbolic links go round in a circle',
  EISDIR: 'it is a folder',
  ENOTDIR: 'what should be a folder on the way to it is a file',
  EROFS: 'the disk takes no writing',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'its name is too long',
  EIO: 'the disk reports a fault',
  EMFILE: 'too many files are open',
};
