import type { ParseArgsConfig } from 'node:util';
import type { Effects } from './effects.ts';
import type { Exit } from './exit-codes.ts';

export type OptionValues = Readonly<Record<string, string | boolean | undefined>>;

export interface Option {
  readonly type: 'string' | 'boolean';
  readonly short?: string;
  /** How its value is shown in the help: `DIR`. */
  readonly value?: string;
  readonly help: string;
}

/** One command: data for the help, and what it does. */
export interface Command {
  readonly name: string;
  readonly summary: string;
  /** Names of what stands after the options: `DIR`. */
  readonly takes: readonly string[];
  /** The last of these may be several: words that need no quotation marks. */
  readonly takesMore?: boolean;
  readonly options: Readonly<Record<string, Option>>;
  readonly more?: string;
  run(values: OptionValues, takes: readonly string[], effects: Effects): Promise<Exit>;
}

export const CONTENT: Option = {
  type: 'string',
  value: 'DIR',
  help: 'the journal folder (else ASFOUND_CONTENT, else ./content, else the folder you are in)',
};
/** Of a command that writes into the journal. */
export const DRY: Option = { type: 'boolean', help: 'shows what would be written, and writes nothing' };
export const OUT: Option = { type: 'string', value: 'DIR', help: 'where the site goes (else ./dist)' };

/** The options as node:util takes them, `--help` among them. */
export function parserOptions(command: Command): NonNullable<ParseArgsConfig['options']> {
  const entries = Object.entries(command.options).map(([name, { type, short }]) => [
    name,
    short === undefined ? { type } : { type, short },
  ]);
  return { ...Object.fromEntries(entries), help: { type: 'boolean', short: 'h' } };
}
