/** The demo: a journal of the usual length, with everything that a journal may have. */
import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import type { Aim } from './aims.ts';
import { asfound, freshFolder } from './contenders.ts';
import { measureProcess } from './measure-process.ts';
import { withTonight } from './tonight.ts';

const DEMO = join(import.meta.dirname, '../../content');

export async function measureDemo(folder: string): Promise<Aim[]> {
  const journal = join(folder, 'journal');
  await cp(DEMO, journal, { recursive: true });
  const ours = asfound(journal, join(folder, 'ours'));
  await freshFolder(ours);
  const cold = await measureProcess(ours.build, folder);
  const evening = await withTonight(journal, () => measureProcess(ours.build, folder));
  const told = { below: null, unit: ' s' } as const;
  return [
    { what: 'the demo: first build, its pictures included', figure: cold.wall, ...told },
    { what: 'the demo: after one evening', figure: evening.wall, ...told },
  ];
}
