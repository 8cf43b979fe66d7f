/** The pictures of a record as files that a book is set from. */
import type { JournalRecord } from '../journal/record.ts';
import { buildPictures, preparePictures } from '../photos/pictures.ts';
import type { SiteRecord } from '../site/record.ts';
import { layForPrint } from './print-pictures.ts';

export interface RenderForBook {
  /** The journal folder. */
  readonly folder: string;
  readonly cache: string;
  /** An empty folder: the pictures are put there as the plan names them. */
  readonly workspace: string;
  progress(text: string): void;
}

/** Renders, or takes from the cache, every picture of a journal. @returns the record with the plan of them */
export async function renderForBook(record: JournalRecord, { folder, cache, workspace, progress }: RenderForBook): Promise<SiteRecord> {
  const places = { root: folder, cache };
  progress('Reading the pictures');
  const prepared = await preparePictures(record.journal, places);
  const { plan } = await buildPictures(record.journal, prepared.plan, workspace, {
    ...places,
    onProgress: ({ done, total }) => progress(`Pictures: ${done} of ${total}`),
  });
  await layForPrint(plan, workspace, undefined, (done, total) => progress(`Pictures for print: ${done} of ${total}`));
  return { ...record, pictures: plan, warnings: [], noteHtml: async () => '' };
}
