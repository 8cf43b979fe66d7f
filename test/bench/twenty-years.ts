/** A journal of a working life with its pictures: a build, a build after one note more, and what each page weighs. */
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Aim } from './aims.ts';
import { asfound, freshFolder } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { measureProcess } from './measure-process.ts';
import { remarked } from './pictures/remarked.ts';
import { withTonight } from './tonight.ts';

export interface LongRun {
  readonly name: string;
  readonly sessions: number;
  readonly positions: number;
  readonly days: number;
  /** Pictures named by notes, all in all. */
  readonly references: number;
  /** Files that they are of. */
  readonly files: number;
  readonly seed: number;
}

export const TWENTY_YEARS: LongRun = {
  name: 'twenty years',
  sessions: 5000,
  positions: 3000,
  days: 7300,
  references: 20_000,
  files: 500,
  seed: 1952,
};
/** As many years, with an evening, a position and a picture in four: what is waited for with all the other parts. */
export const A_FOURTH: LongRun = {
  ...TWENTY_YEARS,
  name: 'twenty years, a fourth of the evenings',
  sessions: 1250,
  positions: 750,
  references: 5000,
  files: 125,
};
export const TEN_THOUSAND: LongRun = {
  name: '10,000 pictures',
  sessions: 1000,
  positions: 400,
  days: 2600,
  references: 10_000,
  files: 10_000,
  seed: 1952,
};

const AIM_OF_PAGE_KB = 300;
const AIM_OF_EVENING = 0.25;
/** Small ones: what is measured is how many there are. */
const MEGAPIXELS = 0.09;
const TAKEN = 24;

export async function measureTwentyYears(folder: string, run: LongRun): Promise<Aim[]> {
  const journal = join(folder, 'journal');
  await writeJournal(journal, run.sessions, run.seed, { positions: run.positions, days: run.days });
  await layPictures(journal, folder, run);
  const ours = asfound(journal, join(folder, 'ours'));
  await freshFolder(ours);
  const cold = await measureProcess(ours.build, folder);
  const pages = await weights(ours.site);
  const evening = await withTonight(journal, () => measureProcess(ours.build, folder));
  const heaviest = pages.slice(0, 10).map(([page, bytes]) => `${Math.round(bytes / 1000)} kB ${page}`);
  console.log(heaviest.join('\n'));
  const told = (what: string, figure: number, unit: Aim['unit'], below: number | null = null): Aim => ({
    what: `${run.name}: ${what}`,
    figure,
    below,
    unit,
  });
  const [first = ['no page', 0]] = pages;
  const over = pages.filter(([, bytes]) => bytes > AIM_OF_PAGE_KB * 1000).length;
  return [
    told(`build of ${pages.length} pages of ${run.sessions} sessions`, cold.wall, ' s'),
    told('peak of memory', cold.peak / 1e6, ' MB'),
    told('after one evening, to the build', evening.wall / cold.wall, '', AIM_OF_EVENING),
    told(`heaviest page, ${first[0]}${over > 1 ? `, and ${over - 1} more over the aim` : ''}`, first[1] / 1000, ' kB', AIM_OF_PAGE_KB),
  ];
}

/** Bytes of the HTML of each page, the heaviest first. */
async function weights(site: string): Promise<(readonly [page: string, bytes: number])[]> {
  const files = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html'));
  const sizes: (readonly [string, number])[] = [];
  for (const file of files) sizes.push([file, (await stat(join(site, file))).size]);
  return sizes.sort((a, b) => b[1] - a[1]);
}

/** Every note names as many, and the files are named in turn. */
async function layPictures(journal: string, folder: string, { references, files, seed }: LongRun): Promise<void> {
  const taken = await takePictures(join(folder, 'taken'), seed);
  const sessions = join(journal, 'sessions');
  await mkdir(join(sessions, 'pictures'));
  for (let n = 0; n < files; n += 1) {
    await writeFile(join(sessions, 'pictures', `${n}.jpg`), remarked(taken[n % taken.length] as Buffer, String(n)));
  }
  const notes = (await readdir(sessions)).filter((name) => name.endsWith('.md')).sort();
  const each = Math.ceil(references / notes.length);
  let next = 0;
  for (const name of notes) {
    const entries = Array.from({ length: each }, (_, n) => {
      next += 1;
      return `  - { file: pictures/${next % files}.jpg, caption: "Picture ${n + 1} of ${basename(name, '.md')}." }\n`;
    });
    const note = await readFile(join(sessions, name), 'utf8');
    await writeFile(join(sessions, name), note.replace(/^---\n/, `---\npictures:\n${entries.join('')}`));
  }
}

async function takePictures(folder: string, seed: number): Promise<readonly Buffer[]> {
  const camera = join(import.meta.dirname, 'pictures/camera.ts');
  await mkdir(folder, { recursive: true });
  await measureProcess({ argv: [camera, folder, String(TAKEN), String(MEGAPIXELS), String(seed)], env: {} }, folder);
  const names = (await readdir(folder)).filter((name) => name.endsWith('.jpg')).sort();
  return Promise.all(names.map((name) => readFile(join(folder, name))));
}
