import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { SCHEMA_FOLDER, schemaTexts } from '../../editor/schemas/schema-files.ts';
import { eveningBy, todayBy } from '../../site/today.ts';
import { beginJournal, mayBegin } from '../begin-journal.ts';
import type { Command } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { emptyJournal, sampleJournal } from '../first-journal.ts';
import { shellWord } from '../shell-word.ts';
import { refusing } from '../write-new.ts';

/** A journal that checks and builds at once. */
export const init: Command = {
  name: 'init',
  summary: 'makes a journal in an empty folder, with comments that teach',
  takes: ['DIR'],
  options: { sample: { type: 'boolean', help: 'with three parts and two evenings to look at; they say how they are deleted' } },
  run: async (values, [dir = '.'], effects) => {
    const folder = resolve(effects.cwd, dir);
    if (existsSync(folder) && !statSync(folder).isDirectory()) throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is a file.`);
    if (!mayBegin(folder)) {
      throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is not empty; nothing was written. Name a new or an empty folder.`);
    }
    const schemas = [...schemaTexts()].map(([name, text]) => [`${SCHEMA_FOLDER}/${name}`, text] as const);
    const begun = values.sample ? sampleJournal(todayBy(effects.env, effects.now())) : emptyJournal(eveningBy(effects.env, effects.now()));
    refusing(folder, () => beginJournal(folder, new Map([...begun, ...schemas])));
    effects.out(`A journal is in ${folder}.\n${values.sample ? sampleWords(dir) : firstSteps(dir)}`);
    return EXIT.done;
  },
};

function firstSteps(dir: string): string {
  const content = `--content ${shellWord(dir)}`;
  return `Next:
  1. journal.yaml: what the vehicle is, when it came, who works on it, and what it is divided into.
  2. parts/brakes.yaml: a part on each line; each subsystem has such a file of its name.
  3. asfound write ${content}      tonight, on a page; or in an editor: asfound new ${content}
  4. asfound check ${content}      then asfound dev ${content}, to look at it
Two evenings to look at first: asfound init --sample DIR.
`;
}

function sampleWords(dir: string): string {
  const content = `--content ${shellWord(dir)}`;
  return `Its two evenings are an example: look at them with asfound dev ${content}.
To begin your own, delete the two folders in sessions/ and the parts in parts/brakes.yaml; or make an empty one, with asfound init DIR.
`;
}
