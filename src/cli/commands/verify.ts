import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { verifyBag } from '../../exports/bag/verify-bag.ts';
import type { Command } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';

/** Whether an archive is still what it was. */
export const verify: Command = {
  name: 'verify',
  summary: 'holds an archive against its sums, and names each file that differs, is missing or is too many',
  takes: ['FOLDER'],
  options: {},
  more: 'Any bag by RFC 8493 will do, of this program or another. An archive that is one ZIP file is unpacked first.\nNothing is changed, nothing is fetched.',
  run: async (_values, [folder], effects) => {
    if (folder === undefined) throw new Refusal(EXIT.notUnderstood, '`verify` needs the FOLDER that holds bagit.txt.');
    const path = resolve(effects.cwd, folder);
    const found = statSync(path, { throwIfNoEntry: false });
    if (found === undefined) throw new Refusal(EXIT.cannotReadOrWrite, `there is no folder ${folder}.`);
    if (!found.isDirectory()) {
      throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is one file. Unpack it first, and verify the folder that comes out of it.`);
    }
    const { problems, files, octets, algorithms } = await verifyBag(path);
    for (const { path: at, what } of problems) effects.out(`${at === '' ? 'The bag' : at} ${what}.\n`);
    const read = `${files} file${files === 1 ? '' : 's'} read, ${octets} octets of payload, sums by ${algorithms.join(' and ') || 'nothing'}`;
    effects.err(
      problems.length === 0
        ? `Whole: ${read}.\n`
        : `Not whole: ${problems.length} thing${problems.length === 1 ? '' : 's'} to tell; ${read}.\n`,
    );
    return problems.length === 0 ? EXIT.done : EXIT.journalHasErrors;
  },
};
