/** Threads of journal.yaml, and the picture that the record opens with: what they name is known once all else is. */
import type { Journal, Session, Thread } from '../model.ts';
import type { JournalFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';
import { readNewId } from '../schema/fields.ts';
import { known } from './believed.ts';
import type { Names } from './context.ts';

/** Parts that nobody knows are reported and left out. */
export function compileThreads({ threads }: JournalFields, tree: Tree, names: Names, out: Reporter): Thread[] {
  return Object.entries(threads).map(([id, { title, parts }]) => {
    out.take(readNewId(id), tree.keyPlaceOf(['threads', id]));
    return { id, title, parts: known(parts.map((part, n) => names.part(part, tree.placeOf(['threads', id, 'parts', n]))?.id ?? null)) };
  });
}

/** A front picture is one that a note shows; any other is reported. */
export function checkFront({ settings }: Pick<Journal, 'settings'>, sessions: readonly Session[], tree: Tree, out: Reporter): void {
  const { front } = settings;
  if (front === null || sessions.some(({ pictures }) => pictures.some(({ file }) => file === front))) return;
  out.report('A901', tree.placeOf(['front']), `No note shows a picture \`${front}\`.`, {
    hint: 'Name a picture of a session by its path: `sessions/2031-03-12-front-brakes/drum.jpg`.',
  });
}
