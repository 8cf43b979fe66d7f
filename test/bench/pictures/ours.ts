/** The picture stage of a build and nothing else: `ROOT CACHE SITE`. */
import { readdirSync } from 'node:fs';
import { inspectPictures } from '../../../src/photos/inspect.ts';
import { planPictures } from '../../../src/photos/plan-pictures.ts';
import { renderAll } from '../../../src/photos/render-all.ts';

const [root = '', cache = '', site = ''] = process.argv.slice(2);
const { facts } = await inspectPictures(readdirSync(root), { root, cache, depth: 'full' });
const { rendered, reused, problems } = await renderAll(planPictures(facts.values(), { keep: ['time'], timeZone: 'UTC' }), site, {
  root,
  cache,
});
if (problems.length > 0) throw new Error(JSON.stringify(problems));
console.log(`${rendered} rendered, ${reused} reused`);
