/** A PDF as it is published: cleaned of metadata, once, into the cache. */
import { constants } from 'node:fs';
import { chmod, copyFile, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { EntryCache, EntryFacts } from '../disk/entry-cache.ts';
import { LARGEST_PDF } from './clean-pdf.ts';
import type { Decoder } from './decoder.ts';
import { digestOf } from './inspect-file.ts';
import type { PaperFile } from './plan.ts';
import { paperKeyOf } from './plan-pictures.ts';
import { CannotRender } from './render-picture.ts';

const NAME = 'paper.pdf';
/** Entries of the cache have a mean colour; nobody asks for that of a paper. */
const FACTS: EntryFacts = { colour: '#ffffff' };

/**
 * @param root the journal folder
 * @returns the path of the cleaned file in the cache
 * @throws `CannotRender` when its bytes are not those of the plan, or when cleaning it takes too long
 */
export async function cleanedPaper(paper: PaperFile, root: string, cache: EntryCache, decoder: Decoder): Promise<string> {
  const entry = cache.find(paper.key, [NAME]) ?? (await cache.make(paper.key, (folder) => fill(paper, root, folder, decoder)));
  return join(entry.folder, NAME);
}

async function fill(paper: PaperFile, root: string, folder: string, decoder: Decoder): Promise<EntryFacts> {
  const [from, to] = [join(root, paper.path), join(folder, NAME)];
  // One that is too large to be taken into memory is not cleaned, and a warning says so.
  const large = (await stat(from)).size > LARGEST_PDF;
  if (large) await copyFile(from, to, constants.COPYFILE_FICLONE);
  else await writeFile(to, await readFile(from));
  if (paperKeyOf(await digestOf(to)) !== paper.key) {
    throw new CannotRender('changed while the site was being made', 'Make the site again.');
  }
  if (!large) await writeFile(to, await cleaned(await readFile(to), decoder));
  await chmod(to, 0o644);
  return FACTS;
}

async function cleaned(bytes: Uint8Array, decoder: Decoder): Promise<Uint8Array> {
  try {
    return await decoder.cleanPdf(bytes);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new CannotRender(
      `cannot be cleaned of what it tells of its makers: ${why}`,
      'Print it to a PDF anew, and keep that in its place.',
    );
  }
}
