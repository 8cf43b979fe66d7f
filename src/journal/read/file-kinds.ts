/** What each file of a journal holds, by its path. */
import type * as z from 'zod';
import { consumablesSchema, partsSchema } from '../schema/catalogues.ts';
import { identitySchema } from '../schema/identity.ts';
import { journalSchema } from '../schema/journal.ts';
import { sessionSchema } from '../schema/session.ts';
import { statementSchema } from '../schema/statement.ts';
import { fieldsAt } from './schema-at.ts';

export type FileKind = 'journal' | 'consumables' | 'parts' | 'identity' | 'drawing' | 'statement' | 'note';

/** @param path from the journal folder, parts joined by `/` */
export function kindOfFile(path: string): FileKind {
  if (path === 'journal.yaml') return 'journal';
  if (path === 'consumables.yaml') return 'consumables';
  if (path.startsWith('parts/')) return 'parts';
  if (path.startsWith('identity/')) return 'identity';
  if (path.startsWith('drawings/')) return 'drawing';
  return path.startsWith('statements/') ? 'statement' : 'note';
}

/** What the YAML of a file holds at its top, and its fields. A note has it between its `---` lines. */
export const YAML_OF = {
  journal: { top: 'fields', schema: journalSchema },
  consumables: { top: 'fields', schema: consumablesSchema },
  parts: { top: 'list', schema: partsSchema },
  identity: { top: 'fields', schema: identitySchema },
  statement: { top: 'fields', schema: statementSchema },
  note: { top: 'fields', schema: sessionSchema },
} as const satisfies Readonly<Record<Exclude<FileKind, 'drawing'>, { readonly top: 'fields' | 'list'; readonly schema: z.ZodType }>>;

export const FIELDS_OF_A_NOTE: ReadonlySet<string> = new Set(fieldsAt(sessionSchema, []));
