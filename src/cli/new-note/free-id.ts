import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** The name of a note that is not there; a second one of the same name gets a number. */
export function freeId(folder: string, name: string): string {
  const taken = (id: string) => existsSync(join(folder, 'sessions', id)) || existsSync(join(folder, 'sessions', `${id}.md`));
  let id = name;
  for (let n = 2; taken(id); n++) id = `${name}-${n}`;
  return id;
}
