import type { SessionId } from '../schema/words.ts';

/**
 * The id of what an entry of a note makes: unique in the journal, and the same for as long as the note is.
 *
 * @param field the list it stands in
 * @param index its place there, from 0
 */
export function entryId(session: SessionId, field: string, index: number): string {
  return `${session}#${field}-${index + 1}`;
}
