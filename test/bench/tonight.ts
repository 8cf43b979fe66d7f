import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { flowMapping } from './flow-mapping.ts';
import { LAST_DAY } from './generate.ts';

/** The evening after the last of a generated journal. */
export const TONIGHT = new Date(Date.parse(LAST_DAY) + 86_400_000).toISOString().slice(0, 10);

/**
 * Writes one more note into a generated journal, runs something over it, and takes the note away again.
 *
 * @param journal its folder
 */
export async function withTonight<T>(journal: string, run: () => Promise<T>): Promise<T> {
  const file = join(journal, 'sessions', `${TONIGHT}-tonight.md`);
  await writeFile(file, await noteOfTonight(journal));
  try {
    return await run();
  } finally {
    await rm(file);
  }
}

/** Hours on a part, and an item that is opened: what any journal takes, however its parts stand. */
async function noteOfTonight(journal: string): Promise<string> {
  const [catalogue = ''] = (await readdir(join(journal, 'parts'))).sort();
  const part = /id: ([a-z0-9-]+)/.exec(await readFile(join(journal, 'parts', catalogue), 'utf8'))?.[1];
  if (part === undefined) throw new Error(`${catalogue} catalogues no part.`);
  const hours = flowMapping({ by: 'rh', on: part, time: '2h10m' });
  const opens = flowMapping({ id: 'tonight', kind: 'task', what: 'Look at it by daylight', before: null, on: part });
  const facts = [`date: ${TONIGHT}`, 'title: One evening more', `hours: [${hours}]`, `opens: [${opens}]`];
  return `---\n${facts.join('\n')}\n---\n\nTwo hours on [this](part:${part}), and *not* done with it.\n`;
}
