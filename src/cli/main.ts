import { parseArgs } from 'node:util';
import { didYouMean } from '../journal/diagnostics/nearest.ts';
import { Unproved } from '../site/proof/text-of-pdf.ts';
import { isEpoch } from '../site/today.ts';
import { type Command, type OptionValues, parserOptions } from './command.ts';
import { allCommands, COMMAND_NAMES, commandNamed } from './commands.ts';
import { type Effects, realEffects } from './effects.ts';
import { EXIT, type Exit, Refusal } from './exit-codes.ts';
import { commandHelp, generalHelp } from './help.ts';
import { ownFault } from './own-fault.ts';

/**
 * Runs one command line.
 *
 * @param argv what follows the name of the program
 * @returns the exit code; it never throws
 */
export async function main(argv: readonly string[] = process.argv.slice(2), effects: Effects = realEffects()): Promise<Exit> {
  try {
    return await dispatch(argv, effects);
  } catch (error) {
    if (error instanceof Refusal) {
      effects.err(`asfound: ${error.message}\n`);
      return error.exit;
    }
    if (error instanceof Unproved) {
      effects.err(`asfound: ${error.message}\n`);
      return EXIT.cannotReadOrWrite;
    }
    return ownFault(error, effects);
  }
}

/** @throws Refusal for a day of building that is none: a site made on another would not be the one asked for */
function checkEpoch({ SOURCE_DATE_EPOCH: epoch = '' }: Effects['env']): void {
  if (epoch === '' || isEpoch(epoch)) return;
  const told = `SOURCE_DATE_EPOCH is ${JSON.stringify(epoch.slice(0, 40))}, which is no number of seconds since 1970 before the year 10000.`;
  throw new Refusal(EXIT.notUnderstood, told);
}

/** @throws Refusal where the clock has stopped or was never set: what is packed into files with a time could not be written */
function checkClock({ now }: Effects): void {
  const year = now().getFullYear();
  if (year >= 1980 && year < 2100) return;
  throw new Refusal(EXIT.cannotReadOrWrite, `by the clock of this machine it is the year ${year}. Set it first.`);
}

async function dispatch(argv: readonly string[], effects: Effects): Promise<Exit> {
  const [name, ...rest] = argv;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    effects[name === undefined ? 'err' : 'out'](generalHelp(await allCommands()));
    return name === undefined ? EXIT.notUnderstood : EXIT.done;
  }
  const command = await commandNamed(name);
  if (!command) {
    throw new Refusal(EXIT.notUnderstood, `there is no command \`${name}\`. ${didYouMean(name, COMMAND_NAMES) ?? ''}`.trim());
  }
  const { values, takes } = understood(command, rest);
  if (values.help === true) {
    effects.out(commandHelp(command));
    return EXIT.done;
  }
  const fits = takes.length === command.takes.length || (command.takesMore === true && takes.length > command.takes.length);
  if (!fits) {
    const wanted = command.takes.length === 0 ? 'takes nothing after its options' : `needs ${command.takes.join(' ')}`;
    throw new Refusal(EXIT.notUnderstood, `\`${command.name}\` ${wanted}. See \`asfound ${command.name} --help\`.`);
  }
  checkEpoch(effects.env);
  checkClock(effects);
  return command.run(values, takes, effects);
}

function understood(command: Command, rest: readonly string[]): { values: OptionValues; takes: string[] } {
  const options = parserOptions(command);
  try {
    const { values, positionals } = parseArgs({ args: [...rest], options, allowPositionals: true });
    return { values: values as OptionValues, takes: positionals };
  } catch (error) {
    const unknown = /Unknown option '(--?[^' ]+)/.exec((error as Error).message)?.[1];
    if (unknown === undefined) throw new Refusal(EXIT.notUnderstood, valueProblem(command, (error as Error).message));
    const hint =
      didYouMean(
        unknown,
        Object.keys(options).map((name) => `--${name}`),
      ) ?? '';
    throw new Refusal(EXIT.notUnderstood, `\`${command.name}\` has no option \`${unknown}\`. ${hint}`.trim());
  }
}

/** An option without its value, or with one that it does not take. */
function valueProblem(command: Command, message: string): string {
  const name = /--([\w-]+)/.exec(message)?.[1] ?? '';
  const option = command.options[name];
  if (option?.type === 'string') return `\`--${name}\` needs its value: \`--${name} ${option.value ?? 'VALUE'}\`.`;
  return name === '' ? `${message.split('\n')[0]}.` : `\`--${name}\` takes no value.`;
}
