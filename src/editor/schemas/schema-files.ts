import { YAML_OF } from '../../journal/read/file-kinds.ts';
import { jsonSchemaOf } from './json-schema.ts';

/** Which files of a journal each schema is for. A closed statement is written by the program alone. */
export const SCHEMA_FILES = [
  { name: 'journal.schema.json', of: 'journal', title: 'journal.yaml: the vehicle, people, money and places', for: 'journal.yaml' },
  { name: 'consumables.schema.json', of: 'consumables', title: 'consumables.yaml: what is used up', for: 'consumables.yaml' },
  { name: 'parts.schema.json', of: 'parts', title: 'parts/<subsystem>.yaml: every part and candidate of a subsystem', for: 'parts/*.yaml' },
  { name: 'identity.schema.json', of: 'identity', title: 'identity/<name>.yaml: a points table of an authority', for: 'identity/*.yaml' },
  { name: 'note.schema.json', of: 'note', title: 'The front matter of a note', for: 'sessions/**/*.md' },
] as const;

/** The folder that they lie in, in a journal. Names that begin with a dot are no part of its record. */
export const SCHEMA_FOLDER = '.schemas';

/** Stands in every schema that the program wrote, which it may therefore write again. */
const WRITTEN = 'Written by `asfound schema`, which makes it anew.';

/** Whether a file that is there is a schema that the program wrote. */
export function isOwnSchema(text: string): boolean {
  return text.includes(`"$comment": ${JSON.stringify(WRITTEN)}`);
}

/** @returns the text of every schema, by the name of its file */
export function schemaTexts(): ReadonlyMap<string, string> {
  return new Map(
    SCHEMA_FILES.map(({ name, of, title }) => [
      name,
      `${JSON.stringify({ $comment: WRITTEN, ...jsonSchemaOf(YAML_OF[of].schema, title) }, null, 2)}\n`,
    ]),
  );
}
