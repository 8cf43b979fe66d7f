import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { todayBy } from '../../site/today.ts';
import { CONTENT, type Command } from '../command.ts';
import { EXIT } from '../exit-codes.ts';
import { journalFolder } from '../the-journal.ts';

/** For editors, which start it themselves. Standard output is theirs alone. */
export const languageServer: Command = {
  name: 'language-server',
  summary: 'serves an editor by the Language Server Protocol: faults as one types, names, hints, renaming',
  takes: [],
  options: {
    content: { ...CONTENT, help: 'the journal folder (else ASFOUND_CONTENT, else the folder open in the editor)' },
    stdio: { type: 'boolean', help: 'by standard input and output, which is the only way; some editors add it' },
  },
  run: async (values, _takes, effects) => {
    const { createConnection } = await import('vscode-languageserver/node');
    const { serve } = await import('../../editor/server.ts');
    const named = values.content !== undefined || (effects.env.ASFOUND_CONTENT ?? '') !== '';
    const folder = named ? journalFolder(values, effects) : null;
    const connection = createConnection(process.stdin, process.stdout);
    const ended = new Promise<void>((resolve) => connection.onExit(resolve));
    serve(connection, {
      journalIn: (folders) => folder ?? firstJournalIn(folders),
      today: () => todayBy(effects.env, effects.now()),
    });
    await ended;
    return EXIT.done;
  },
};

/** A folder that is open, or the `content` in it. */
function firstJournalIn(folders: readonly string[]): string | null {
  const all = folders.flatMap((folder) => [folder, join(folder, 'content')]);
  return all.find((folder) => existsSync(join(folder, 'journal.yaml'))) ?? null;
}
