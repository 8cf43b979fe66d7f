/** A PDF as it is published: cleaned of metadata, once, into the cache. */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { EntryCache, EntryFacts } from '../disk/entry-cache.ts';
import { cleanPdf } from './clean-pdf.ts';
import type { PaperFile } from './plan.ts';
import { paperKeyOf } from './plan-pictures.ts';
import { CannotRender } from './render-picture.ts';

const NAME = 'paper.pdf';
/** Entries of the cache have a mean colour; nobody asks for that of a paper. */
const FACTS: EntryFacts = { colour: '#ffffff' };

/**
 * @param root the journal folder
 * @returns the path of the cleaned file in the cache
 * @throws `CannotRender` when its bytes are not those of the plan
 */
export async function cleanedPaper(paper: PaperFile, root: string, cache: EntryCache): Promise<string> {
  const entry = cache.find(paper.key, [NAME]) ?? (await cache.make(paper.key, (folder) => fill(paper, root, folder)));
  return join(entry.folder, NAME);
}

async function fill(paper: PaperFile, root: string, folder: string): Promise<EntryFacts> {
  const bytes = await readFile(join(root, paper.path));
  if (paperKeyOf(createHash('sha256').update(bytes).digest('hex')) !== paper.key) {
    throw new CannotRender('changed while the site was being made', 'Make the site again.');
  }
  await writeFile(join(folder, NAME), await cleanPdf(bytes));
  return FACTS;
}
