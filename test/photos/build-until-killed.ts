/** Renders a folder of pictures in a process of its own, and says so after each, to be killed in the middle: `ROOT CACHE SITE`. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { inspectPictures } from '../../src/photos/inspect.ts';
import { planPictures } from '../../src/photos/plan-pictures.ts';
import { renderAll } from '../../src/photos/render-all.ts';

const [root = '', cache = '', site = ''] = process.argv.slice(2);
const paths = readdirSync(join(root, 'sessions/a')).map((name) => `sessions/a/${name}`);
const { facts } = await inspectPictures(paths, { root, cache, depth: 'full' });
const plan = planPictures(facts.values(), { keep: [], timeZone: 'UTC' });
await renderAll(plan, site, { root, cache, onProgress: ({ done }) => process.stdout.write(`${done}\n`) });
