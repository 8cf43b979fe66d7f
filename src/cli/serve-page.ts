/** Serving the page to write on: where it listens, and how its address is told. */
import { accessSync, constants, existsSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { renderUnicodeCompact } from 'uqr';
import { reasonOf } from '../load/problems.ts';
import { serveWriting } from '../write/serve.ts';
import type { Effects } from './effects.ts';
import { EXIT, Refusal } from './exit-codes.ts';

export interface ServePage {
  readonly folder: string;
  readonly cache: string;
  readonly port: number;
  readonly phone: boolean;
  /** The address to listen on, for a phone; else the one that this machine has in its network. */
  readonly host: string | undefined;
  today(): string;
  evening(): string;
}

/**
 * Serves until the process is stopped.
 *
 * @throws Refusal when the folder is no journal or takes no writing, or the address cannot be listened on
 */
export async function serveThePage({ folder, cache, port, phone, host, today, evening }: ServePage, effects: Effects): Promise<void> {
  refuseUnwritable(folder);
  const at = phone ? (host ?? addressInNetwork()) : '127.0.0.1';
  const tell = (text: string): void => effects.err(`asfound: ${text}`);
  const serving = await serveWriting({ folder, cache, today, evening, host: at, port, tell }).catch((error: NodeJS.ErrnoException) => {
    throw new Refusal(EXIT.cannotReadOrWrite, `${at} port ${port} cannot be listened on: ${reasonOf(error)}.`);
  });
  if (phone)
    effects.err(
      `${renderUnicodeCompact(serving.address, { border: 2 })}\n\nPoint the camera of the phone at it. It works in this network, until this is stopped.\n`,
    );
  effects.err(`Write at ${serving.address}\n`);
  await new Promise<void>((stop) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop());
  });
  await serving.close();
}

function refuseUnwritable(folder: string): void {
  if (!existsSync(join(folder, 'journal.yaml'))) {
    throw new Refusal(EXIT.cannotReadOrWrite, `${folder} is no journal: it has no journal.yaml. Make one with \`asfound init DIR\`.`);
  }
  for (const path of [folder, join(folder, 'sessions'), join(folder, 'papers')].filter((one) => existsSync(one))) {
    try {
      accessSync(path, constants.W_OK);
    } catch (error) {
      throw new Refusal(EXIT.cannotReadOrWrite, `${path} takes no writing: ${reasonOf(error)}.`);
    }
  }
}

/** The first address that only the local network knows (RFC 1918), else the first of any. */
function addressInNetwork(): string {
  const own = Object.values(networkInterfaces()).flatMap((all) => all ?? []);
  const addresses = own.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address);
  const at = addresses.find((address) => /^(?:10\.|192\.168\.|172\.(?:1[6-9]|2\d|3[01])\.)/.test(address)) ?? addresses[0];
  if (at === undefined)
    throw new Refusal(EXIT.cannotReadOrWrite, 'this machine is in no network; connect it, or name an address with --host.');
  return at;
}
