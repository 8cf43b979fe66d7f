import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { SCHEMA_FOLDER, schemaTexts } from '../../editor/schemas/schema-files.ts';
import { todayBy } from '../../site/today.ts';
import { beginJournal, mayBegin } from '../begin-journal.ts';
import type { Command } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { firstJournal } from '../first-journal.ts';
import { refusing } from '../write-new.ts';

/** A small journal that checks and builds at once. */
export const init: Command = {
  name: 'init',
  summary: 'makes a small journal in an empty folder, with comments that teach',
  takes: ['DIR'],
  options: {},
  run: async (_values, [dir = '.'], effects) => {
    const folder = resolve(effects.cwd, dir);
    if (existsSync(folder) && !statSync(folder).isDirectory()) throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is a file.`);
    if (!mayBegin(folder)) {
      throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is not empty; nothing was written. Name a new or an empty folder.`);
    }
    const schemas = [...schemaTexts()].map(([name, text]) => [`${SCHEMA_FOLDER}/${name}`, text] as const);
    const files = new Map([...firstJournal(todayBy(effects.env, effects.now())), ...schemas]);
    refusing(folder, () => beginJournal(folder, files));
    effects.out(`A journal is in ${folder}.\nNext: asfound check --content ${dir}, then asfound dev --content ${dir}.\n`);
    return EXIT.done;
  },
};
