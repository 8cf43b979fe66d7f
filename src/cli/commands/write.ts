import { cacheFolder } from '../../site/cache-folder.ts';
import { eveningBy, todayBy } from '../../site/today.ts';
import { CONTENT, type Command } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder } from '../the-journal.ts';

/** A page to write an evening on, and to correct one. */
export const write: Command = {
  name: 'write',
  summary: 'serves a page to write an evening on, at the desk or from a phone',
  takes: [],
  options: {
    content: CONTENT,
    phone: { type: 'boolean', help: 'for a phone in the same network; the address is shown as a code to point its camera at' },
    host: { type: 'string', value: 'ADDRESS', help: 'with --phone: the address of this machine to listen on, where it has several' },
    port: { type: 'string', value: 'N', help: 'the port to listen on (else 4322, or the next that is free)' },
  },
  more: 'The address is a new one at each start. Use --phone only in a network whose users you trust: what goes over it is not encrypted.',
  run: async (values, _takes, effects) => {
    const folder = journalFolder(values, effects);
    const port = Number(values.port ?? 4322);
    if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Refusal(EXIT.notUnderstood, '--port is a number up to 65535.');
    if (values.host !== undefined && !values.phone)
      throw new Refusal(EXIT.notUnderstood, '--host goes with --phone; without it only this machine is served.');
    const { serveThePage } = await import('../serve-page.ts');
    await serveThePage(
      {
        folder,
        cache: cacheFolder(effects.env),
        port,
        phone: values.phone === true,
        host: values.host as string | undefined,
        today: () => todayBy(effects.env, effects.now()),
        evening: () => eveningBy(effects.env, effects.now()),
      },
      effects,
    );
    return EXIT.done;
  },
};
