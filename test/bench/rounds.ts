import { join } from 'node:path';
import { asfound, type Contender, emptySite, expectPages, freshFolder, plainSite } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { measureProcess, type Usage } from './measure-process.ts';
import { withTonight } from './tonight.ts';

export interface Measured {
  readonly sessions: number;
  /** With empty caches, and once more. */
  readonly check: { readonly first: Usage; readonly again: Usage } | null;
  /** With empty caches. */
  readonly cold: { readonly ours: Usage | null; readonly plain: Usage };
  /** Ours with nothing changed. */
  readonly second: Usage | null;
  /** After one note more. */
  readonly evening: { readonly ours: Usage | null; readonly plain: Usage };
  /** A cold build of as many pages as Asfound's site has, with nothing on them. */
  readonly empty: { readonly pages: number; readonly usage: Usage } | null;
}

/** What is wanted of a length. */
export interface Wanted {
  readonly seed: number;
  readonly check: boolean;
  /** The ground under every Astro site of that size, ours among them. */
  readonly floor: boolean;
  /** The plain site alone. */
  readonly plainOnly: boolean;
}

interface Builds {
  readonly cold: Usage;
  readonly second: Usage;
  readonly evening: Usage;
  readonly pages: number;
}

/**
 * Measures one length: check, a build with empty caches, one with nothing changed and one after one note more, for Asfound
 * and for the plain site, in this run.
 *
 * @param folder a folder for everything that is written
 */
export async function measureSize(folder: string, sessions: number, wanted: Wanted): Promise<Measured> {
  const journal = join(folder, 'journal');
  await writeJournal(journal, sessions, wanted.seed);
  const ours = asfound(journal, join(folder, 'ours'));
  const plain = plainSite(journal, join(folder, 'plain'));
  const check = wanted.check && !wanted.plainOnly ? await checks(ours, folder) : null;
  const of = (contender: Contender): Promise<Builds> => buildAgain(contender, { folder, journal, sessions });
  const mine = wanted.plainOnly ? null : await of(ours);
  const theirs = await of(plain);
  await Promise.all([ours.forget(), plain.forget()]);
  const empty = mine === null || !wanted.floor ? null : { pages: mine.pages, usage: await buildEmpty(folder, mine.pages) };
  return {
    sessions,
    check,
    cold: { ours: mine?.cold ?? null, plain: theirs.cold },
    second: mine?.second ?? null,
    evening: { ours: mine?.evening ?? null, plain: theirs.evening },
    empty,
  };
}

async function checks(ours: ReturnType<typeof asfound>, folder: string): Promise<NonNullable<Measured['check']>> {
  await freshFolder(ours);
  return { first: await measureProcess(ours.check, folder), again: await measureProcess(ours.check, folder) };
}

async function buildEmpty(folder: string, pages: number): Promise<Usage> {
  const empty = emptySite(pages, join(folder, 'empty'));
  await freshFolder(empty);
  const usage = await measureProcess(empty.build, folder);
  await expectPages(empty, pages);
  await empty.forget();
  return usage;
}

async function buildAgain(
  contender: Contender,
  { folder, journal, sessions }: { readonly folder: string; readonly journal: string; readonly sessions: number },
): Promise<Builds> {
  await freshFolder(contender);
  const cold = await measureProcess(contender.build, folder);
  const pages = await expectPages(contender, sessions);
  // What the plain site does with nothing changed is no aim of ours.
  const second = contender.name === 'plain' ? cold : await measureProcess(contender.build, folder);
  const evening = await withTonight(journal, () => measureProcess(contender.build, folder));
  if ((await expectPages(contender, sessions)) <= pages) throw new Error(`${contender.name} made no page of the evening's note.`);
  return { cold, second, evening, pages };
}
