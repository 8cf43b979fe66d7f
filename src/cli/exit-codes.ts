/** What a command ends with; listed in every `--help`. */
export const EXIT = {
  done: 0,
  journalHasErrors: 1,
  notUnderstood: 2,
  cannotReadOrWrite: 3,
  ownFault: 70,
} as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];

export const EXIT_HELP = `Exit codes: 0 done; 1 the journal has errors; 2 the command was not understood;
3 something could not be read or written; 70 a fault of asfound itself.`;

/** A command cannot go on, for a reason that the user can mend. Printed in one line, never with a stack trace. */
export class Refusal extends Error {
  readonly exit: Exit;
  constructor(exit: Exit, message: string) {
    super(message);
    this.exit = exit;
  }
}
