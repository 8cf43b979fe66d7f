import { join } from 'node:path';
import { asfound, type Contender, emptySite, expectPages, freshFolder, plainSite } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { measureProcess, medianUsage, type Usage } from './measure-process.ts';

export interface Measured {
  readonly sessions: number;
  /** With empty caches, and once more. */
  readonly check: { readonly first: Usage; readonly again: Usage } | null;
  readonly cold: { readonly ours: Usage | null; readonly plain: Usage };
  readonly second: { readonly ours: Usage | null; readonly plain: Usage };
  /** A cold build of as many pages as Asfound's site has, with nothing on them. */
  readonly empty: { readonly pages: number; readonly usage: Usage } | null;
}

type Checks = NonNullable<Measured['check']>;

interface Builds {
  readonly cold: Usage;
  readonly second: Usage;
  readonly pages: number;
}

/**
 * Measures one size: check, a build with empty caches and a second with nothing changed, for Asfound
 * and the plain site in turn; the one that goes first changes every time.
 *
 * @param folder a folder for everything that is written
 * @param plainOnly leave Asfound out
 */
export async function measureSize(
  folder: string,
  sessions: number,
  how: { readonly seed: number; readonly repeat: number; readonly plainOnly: boolean },
): Promise<Measured> {
  const journal = join(folder, 'journal');
  await writeJournal(journal, sessions, how.seed);
  const ours = asfound(journal, join(folder, 'ours'));
  const plain = plainSite(journal, join(folder, 'plain'));
  const checks: Checks[] = [];
  const builds = new Map<Contender, Builds[]>([ours, plain].map((one) => [one, []]));
  for (let round = 0; round < how.repeat; round += 1) {
    await freshFolder(ours);
    if (!how.plainOnly) checks.push({ first: await measureProcess(ours.check, folder), again: await measureProcess(ours.check, folder) });
    for (const contender of round % 2 === 0 ? [ours, plain] : [plain, ours]) {
      if (contender === plain || !how.plainOnly) builds.get(contender)?.push(await buildTwice(contender, folder, sessions));
    }
  }
  await Promise.all([ours.forget(), plain.forget()]);
  const pages = builds.get(ours)?.at(-1)?.pages ?? null;
  const empty = pages === null ? null : { pages, usage: await buildEmpty(folder, pages) };
  return { ...tally(sessions, checks, builds.get(ours) ?? [], builds.get(plain) ?? []), empty };
}

async function buildEmpty(folder: string, pages: number): Promise<Usage> {
  const empty = emptySite(pages, join(folder, 'empty'));
  await freshFolder(empty);
  const usage = await measureProcess(empty.build, folder);
  await expectPages(empty, pages);
  await empty.forget();
  return usage;
}

async function buildTwice(contender: Contender, folder: string, sessions: number): Promise<Builds> {
  await freshFolder(contender);
  const cold = await measureProcess(contender.build, folder);
  const second = await measureProcess(contender.build, folder);
  return { cold, second, pages: await expectPages(contender, sessions) };
}

function tally(sessions: number, checks: readonly Checks[], ours: readonly Builds[], plain: readonly Builds[]): Omit<Measured, 'empty'> {
  const middle = (builds: readonly Builds[], key: 'cold' | 'second'): Usage => medianUsage(builds.map((one) => one[key]));
  const mine = (key: 'cold' | 'second'): Usage | null => (ours.length === 0 ? null : middle(ours, key));
  return {
    sessions,
    check:
      checks.length === 0
        ? null
        : { first: medianUsage(checks.map((one) => one.first)), again: medianUsage(checks.map((one) => one.again)) },
    cold: { ours: mine('cold'), plain: middle(plain, 'cold') },
    second: { ours: mine('second'), plain: middle(plain, 'second') },
  };
}
