/** What a check does with pictures: headers only, `ROOT CACHE`. */
import { readdirSync } from 'node:fs';
import { inspectPictures } from '../../../src/photos/inspect.ts';

const [root = '', cache = ''] = process.argv.slice(2);
const { problems } = await inspectPictures(readdirSync(root), { root, cache, depth: 'header' });
if (problems.length > 0) throw new Error(JSON.stringify(problems));
