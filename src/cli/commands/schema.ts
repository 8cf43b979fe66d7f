import { existsSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { writeNewFile } from '../../disk/write-new.ts';
import { writeWhole } from '../../disk/write-whole.ts';
import { isOwnSchema, SCHEMA_FILES, SCHEMA_FOLDER, schemaTexts } from '../../editor/schemas/schema-files.ts';
import { CONTENT, type Command, type OptionValues } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder } from '../the-journal.ts';
import { refusing } from '../write-new.ts';

/** The format as JSON Schemas, for editors. */
export const schema: Command = {
  name: 'schema',
  summary: 'writes the format as JSON Schemas (2020-12), which many editors complete and check by',
  takes: [],
  options: {
    content: CONTENT,
    out: { type: 'string', value: 'DIR', help: `where they go (else ${SCHEMA_FOLDER} in the journal)` },
  },
  run: async (values, _takes, effects) => {
    const folder = outFolder(values, effects);
    const texts = [...schemaTexts()];
    for (const [name] of texts) refuseToReplace(join(folder, name));
    for (const [name, text] of texts) {
      const path = join(folder, name);
      refusing(path, () => (existsSync(path) ? writeWhole(path, text) : writeNewFile(path, text)));
    }
    const of = SCHEMA_FILES.map((each) => `  ${each.name.padEnd(24)} ${each.for}\n`).join('');
    effects.out(`The schemas are in ${folder}:\n${of}`);
    return EXIT.done;
  },
};

function outFolder(values: OptionValues, effects: Effects): string {
  if (values.out === undefined || values.out === '') return join(journalFolder(values, effects), SCHEMA_FOLDER);
  const folder = resolve(effects.cwd, String(values.out));
  if (existsSync(folder) && !statSync(folder).isDirectory()) throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is a file.`);
  return folder;
}

/** Only what the program wrote itself is written again. */
function refuseToReplace(path: string): void {
  if (!existsSync(path)) return;
  const own = statSync(path).isFile() && isOwnSchema(readFileSync(path, 'utf8'));
  if (!own) throw new Refusal(EXIT.cannotReadOrWrite, `${path} is there already and is not ours; nothing was written.`);
}
