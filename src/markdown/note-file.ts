import type { NoteContext } from './note-context.ts';

/** A note on its way through the stages: what it names goes along with its text, as `note`. */
export interface NoteFile {
  readonly data: object;
}

/** What a stage needs to know of the journal; the stages run nowhere but where it is handed along. */
export function contextOf({ data }: NoteFile): NoteContext {
  return (data as { readonly note: NoteContext }).note;
}
