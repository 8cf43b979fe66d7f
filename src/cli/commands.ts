import type { Command } from './command.ts';

/** By its name, how each command is loaded, in the order of the help: one run needs the code of one. */
const LOADED: Readonly<Record<string, () => Promise<Command>>> = {
  init: async () => (await import('./commands/init.ts')).init,
  new: async () => (await import('./commands/new.ts')).newNote,
  intake: async () => (await import('./commands/intake.ts')).intake,
  write: async () => (await import('./commands/write.ts')).write,
  find: async () => (await import('./commands/find.ts')).find,
  check: async () => (await import('./commands/check.ts')).check,
  rename: async () => (await import('./commands/rename.ts')).rename,
  move: async () => (await import('./commands/move.ts')).move,
  split: async () => (await import('./commands/split.ts')).split,
  dev: async () => (await import('./commands/dev.ts')).dev,
  build: async () => (await import('./commands/build.ts')).build,
  book: async () => (await import('./commands/book.ts')).book,
  sheet: async () => (await import('./commands/sheet.ts')).sheet,
  'work-order': async () => (await import('./commands/work-order.ts')).workOrder,
  labels: async () => (await import('./commands/labels.ts')).labels,
  statement: async () => (await import('./commands/statement.ts')).statement,
  archive: async () => (await import('./commands/archive.ts')).archive,
  verify: async () => (await import('./commands/verify.ts')).verify,
  schema: async () => (await import('./commands/schema.ts')).schema,
  'language-server': async () => (await import('./commands/language-server.ts')).languageServer,
};

export const COMMAND_NAMES: readonly string[] = Object.keys(LOADED);

/** @returns null when there is none of that name */
export async function commandNamed(name: string): Promise<Command | null> {
  return Object.hasOwn(LOADED, name) ? ((await LOADED[name]?.()) ?? null) : null;
}

/** Every command, in the order of the help. */
export const allCommands = (): Promise<readonly Command[]> => Promise.all(Object.values(LOADED).map((load) => load()));
