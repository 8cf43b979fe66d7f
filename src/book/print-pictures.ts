/**
 * The pictures of a book as its typesetter takes them. It unpacks every picture that it is given and keeps all of them till
 * the end, some four megabytes for each; one that a drawing links to it hands on as it is. So each stands in a drawing.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { PicturePlan, PlanData, Rendition } from '../photos/plan.ts';
import { sharp } from '../photos/uncached-sharp.ts';

/** What stands for the file of a picture in the source of a book. */
export function printFile({ fallback }: Rendition): string {
  return `${fallback.file}.svg`;
}

/** So many are printed as the pages have them, two hundred dots to the inch where they are as wide as an A4 page. */
const AS_RENDERED = 600;
/** Of more than that each is smaller, down to some hundred and thirty dots: the file stays one that can be opened. */
const FEWEST = 800;
const QUALITY = 78;

/** How many pictures each of a record is printed smaller for; null where all are printed as they were rendered. */
export function printedSmaller({ data }: PicturePlan, most = AS_RENDERED): number | null {
  const count = filesOf(data).size;
  return count > most ? count : null;
}

/** Every picture once, by its file. */
function filesOf({ renditions, papers }: PlanData): ReadonlyMap<string, Rendition> {
  const firstPages = papers.flatMap(({ firstPage }) => firstPage ?? []);
  return new Map([...renditions, ...firstPages].map((one) => [one.fallback.file, one]));
}

/**
 * @param workspace the folder that the rendered pictures lie in, which may be those of a cache: nothing is written over them
 * @param most so many are printed as they were rendered
 * @param progress is told how many are laid, of how many
 */
export async function layForPrint(
  { data }: PicturePlan,
  workspace: string,
  most = AS_RENDERED,
  progress: (done: number, total: number) => void = () => undefined,
): Promise<void> {
  const all = filesOf(data);
  const share = Math.sqrt(most / Math.max(all.size, most));
  for (const [n, one] of [...all.values()].entries()) {
    progress(n + 1, all.size);
    const { file, width, height } = one.fallback;
    const longest = Math.max(width, height);
    const wanted = Math.max(FEWEST, Math.round(longest * share));
    const shown = wanted < longest ? await makeSmaller(workspace, file, wanted) : file;
    const box = `width="${width}" height="${height}"`;
    const drawing = `<svg xmlns="http://www.w3.org/2000/svg" ${box} viewBox="0 0 ${width} ${height}"><image ${box} href="${basename(shown)}"/></svg>`;
    writeFileSync(join(workspace, printFile(one)), drawing);
  }
}

/** @returns the name of the smaller file */
async function makeSmaller(workspace: string, file: string, longest: number): Promise<string> {
  const made = await sharp(readFileSync(join(workspace, file)))
    .resize({ width: longest, height: longest, fit: 'inside' })
    .jpeg({ quality: QUALITY })
    .toBuffer();
  const smaller = `${file}.print.jpg`;
  writeFileSync(join(workspace, smaller), made);
  return smaller;
}
