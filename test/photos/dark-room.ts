/** A journal folder, a cache and a site in a temporary place, for one test. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Inspection, inspectPictures } from '../../src/photos/inspect.ts';
import type { PicturePlan } from '../../src/photos/plan.ts';
import { type PlanOptions, planPictures } from '../../src/photos/plan-pictures.ts';
import { type Rendered, type RenderOptions, renderAll } from '../../src/photos/render-all.ts';

export interface DarkRoom {
  readonly root: string;
  readonly cache: string;
  readonly site: string;
  /** Writes a file of the journal, dated a minute back so that the index trusts it. */
  add(path: string, bytes: Uint8Array | string): void;
  inspect(depth?: 'header' | 'full'): Promise<Inspection>;
  plan(keep?: PlanOptions['keep']): Promise<PicturePlan>;
  build(more?: Partial<RenderOptions>): Promise<Rendered>;
  /** Where a file of the site lies. */
  at(file: string): string;
  names(folder: string): string[];
  [Symbol.dispose](): void;
}

export function darkRoom(): DarkRoom {
  const home = mkdtempSync(join(tmpdir(), 'asfound-pictures-'));
  const [root, cache, site] = [join(home, 'journal'), join(home, 'cache'), join(home, 'site')];
  for (const folder of [root, cache, site]) mkdirSync(folder);
  const room: DarkRoom = {
    root,
    cache,
    site,
    add(path, bytes) {
      const file = join(root, path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, bytes);
      utimesSync(file, Date.now() / 1000 - 60, Date.now() / 1000 - 60);
    },
    inspect: (depth = 'full') => inspectPictures(filesUnder(root), { root, cache, depth }),
    async plan(keep = ['time', 'camera']) {
      return planPictures((await room.inspect()).facts.values(), { keep, timeZone: 'Europe/London' });
    },
    build: async (more = {}) => renderAll(await room.plan(), site, { root, cache, ...more }),
    at: (file) => join(site, file),
    names: (folder) => filesUnder(join(home, folder)),
    [Symbol.dispose]: () => rmSync(home, { recursive: true, force: true }),
  };
  return room;
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name).slice(folder.length + 1))
    .sort();
}
