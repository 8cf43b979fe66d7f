import type { Command } from './command.ts';
import { EXIT_HELP } from './exit-codes.ts';

/** What `asfound --help` prints. */
export function generalHelp(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((command) => command.name.length));
  const rows = commands.map((command) => `  ${command.name.padEnd(width)}  ${command.summary}`);
  return `asfound COMMAND [options]: publishes a restoration build journal.

${rows.join('\n')}

asfound COMMAND --help tells more of each.

${EXIT_HELP}
`;
}

/** What `asfound COMMAND --help` prints. */
export function commandHelp(command: Command): string {
  const rows = Object.entries(command.options).map(([name, option]) => {
    const value = option.value === undefined ? '' : ` ${option.value}`;
    return [`--${name}${value}`, option.help] as const;
  });
  const all = [...rows, ['--help', 'this text'] as const];
  const width = Math.max(...all.map(([left]) => left.length));
  const takes = command.takes.map((each) => ` ${each}`).join('');
  const more = command.more === undefined ? '' : `\n${command.more}\n`;
  return `asfound ${command.name}${takes} [options]: ${command.summary}

${all.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join('\n')}
${more}
${EXIT_HELP}
`;
}
