import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { JournalRecord } from '../record.ts';

/** A picture that a note names has a caption or an alternative text. */
export function pictureWords({ journal }: JournalRecord): Diagnostic[] {
  return journal.sessions.flatMap((session) =>
    session.pictures.flatMap((picture) => {
      if (picture.place === null || picture.caption !== null || picture.alt !== null) return [];
      const name = picture.file.slice(picture.file.lastIndexOf('/') + 1);
      const hint = 'Say in a few words what it shows: `caption:` under `pictures`, or between the brackets of `![…]`.';
      return [diagnostic('A904', picture.place, `The picture \`${name}\` has neither a caption nor an alternative text.`, { hint })];
    }),
  );
}
