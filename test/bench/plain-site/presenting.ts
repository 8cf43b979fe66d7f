/** The stages that present a note's prose, as rehype plugins; links lead where a name alone can say. */
import type { Root } from 'hast';
import { headings } from '../../../src/markdown/headings.ts';
import type { NoteContext, Target } from '../../../src/markdown/note-context.ts';
import type { NoteFile } from '../../../src/markdown/note-file.ts';
import { ownAnchors } from '../../../src/markdown/own-anchors.ts';
import { pictures } from '../../../src/markdown/pictures.ts';
import { references } from '../../../src/markdown/references.ts';
import { tables } from '../../../src/markdown/tables.ts';
import { taskBoxes } from '../../../src/markdown/task-boxes.ts';

/** Answers for every link of a note (`part:sill-inner`) without knowing the journal. */
class Anything extends Map<string, Target> {
  override get(link: string): Target {
    const [scheme = '', id = ''] = link.split(':');
    return { href: `../${scheme}s/${id}.html`, label: id };
  }
}

const context: NoteContext = { folder: 'sessions', targets: new Anything(), pictures: new Map(), files: new Map() };

/** In the order in which Asfound takes them, after cleaning. */
export const presenting: (() => (tree: Root, file: NoteFile) => void)[] = [
  () =>
    (_, { data }) =>
      void Object.assign(data, { note: context }),
  references,
  pictures,
  tables,
  headings,
  taskBoxes,
  ownAnchors,
];
