import type { Command } from '../command.ts';
import { CONTENT } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder } from '../the-journal.ts';

/** The site, served while it is being written. */
export const dev: Command = {
  name: 'dev',
  summary: 'serves the site and shows each saved note, or what is wrong with it',
  takes: [],
  options: {
    content: CONTENT,
    port: { type: 'string', value: 'N', help: 'the port to listen on (else 4321, or the next that is free)' },
    host: { type: 'string', value: 'ADDRESS', help: 'the address to listen on (else this machine only)' },
  },
  run: async (values, _takes, effects) => {
    const folder = journalFolder(values, effects);
    const port = Number(values.port ?? 4321);
    if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Refusal(EXIT.notUnderstood, `--port is a number up to 65535.`);
    const { serveJournal } = await import('../serve-journal.ts');
    await serveJournal({ folder, port, host: (values.host as string | undefined) ?? 'localhost' }, effects);
    return EXIT.done;
  },
};
