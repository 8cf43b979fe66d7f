import { main } from '../../src/cli/main.ts';

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

export interface World {
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly terminal?: boolean;
  readonly now?: Date;
}

/** Runs a command line in this process, in a world of its own. */
export async function run(argv: readonly string[], { cwd, env = {}, terminal = false, now = NOON }: World): Promise<Ran> {
  const said = { out: '', err: '' };
  const exit = await main(argv, {
    cwd,
    env: { ASFOUND_CACHE: `${cwd}/.asfound-cache`, ...env },
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    terminal,
    now: () => now,
    onInterrupt: () => () => undefined,
  });
  return { exit, ...said };
}

/** The middle of the day of the tests, so that no time zone moves it. */
const NOON = new Date(2031, 2, 12, 12);
