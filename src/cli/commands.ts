import type { Command } from './command.ts';
import { archive } from './commands/archive.ts';
import { book } from './commands/book.ts';
import { build } from './commands/build.ts';
import { check } from './commands/check.ts';
import { dev } from './commands/dev.ts';
import { find } from './commands/find.ts';
import { init } from './commands/init.ts';
import { intake } from './commands/intake.ts';
import { labels } from './commands/labels.ts';
import { languageServer } from './commands/language-server.ts';
import { move } from './commands/move.ts';
import { newNote } from './commands/new.ts';
import { rename } from './commands/rename.ts';
import { schema } from './commands/schema.ts';
import { sheet } from './commands/sheet.ts';
import { split } from './commands/split.ts';
import { statement } from './commands/statement.ts';
import { verify } from './commands/verify.ts';
import { workOrder } from './commands/work-order.ts';
import { write } from './commands/write.ts';

/** Every command, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  init,
  newNote,
  intake,
  write,
  find,
  check,
  rename,
  move,
  split,
  dev,
  build,
  book,
  sheet,
  workOrder,
  labels,
  statement,
  archive,
  verify,
  schema,
  languageServer,
];
