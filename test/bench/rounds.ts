import { join } from 'node:path';
import { asfound, type Contender, emptySite, expectPages, freshFolder, plainSite } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { measureProcess, medianUsage, type Usage } from './measure-process.ts';
import { withTonight } from './tonight.ts';

export interface Measured {
  readonly sessions: number;
  /** With empty caches, and once more. */
  readonly check: { readonly first: Usage; readonly again: Usage } | null;
  readonly cold: { readonly ours: Usage | null; readonly plain: Usage };
  readonly second: { readonly ours: Usage | null; readonly plain: Usage } | null;
  /** After one note more. */
  readonly evening: { readonly ours: Usage | null; readonly plain: Usage };
  /** A cold build of as many pages as Asfound's site has, with nothing on them. */
  readonly empty: { readonly pages: number; readonly usage: Usage } | null;
}

type Checks = NonNullable<Measured['check']>;

interface Builds {
  readonly cold: Usage;
  readonly second: Usage | null;
  readonly evening: Usage;
  readonly pages: number;
}

/**
 * Measures one size: check, a build with empty caches, a second with nothing changed and one after one note more, for
 * Asfound and the plain site in turn; the one that goes first changes every time.
 *
 * @param folder a folder for everything that is written
 * @param how.plainOnly leave Asfound out
 * @param how.eveningOnly the build with empty caches and the one after one note more alone
 */
export async function measureSize(
  folder: string,
  sessions: number,
  how: { readonly seed: number; readonly repeat: number; readonly plainOnly: boolean; readonly eveningOnly: boolean },
): Promise<Measured> {
  const journal = join(folder, 'journal');
  await writeJournal(journal, sessions, how.seed);
  const ours = asfound(journal, join(folder, 'ours'));
  const plain = plainSite(journal, join(folder, 'plain'));
  const checks: Checks[] = [];
  const builds = new Map<Contender, Builds[]>([ours, plain].map((one) => [one, []]));
  for (let round = 0; round < how.repeat; round += 1) {
    await freshFolder(ours);
    if (!how.plainOnly && !how.eveningOnly)
      checks.push({ first: await measureProcess(ours.check, folder), again: await measureProcess(ours.check, folder) });
    for (const contender of round % 2 === 0 ? [ours, plain] : [plain, ours]) {
      if (contender === plain || !how.plainOnly)
        builds.get(contender)?.push(await buildAgain(contender, { folder, journal, sessions, eveningOnly: how.eveningOnly }));
    }
  }
  await Promise.all([ours.forget(), plain.forget()]);
  const pages = builds.get(ours)?.at(-1)?.pages ?? null;
  const empty = pages === null || how.eveningOnly ? null : { pages, usage: await buildEmpty(folder, pages) };
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

async function buildAgain(
  contender: Contender,
  { folder, journal, sessions, eveningOnly }: { folder: string; journal: string; sessions: number; eveningOnly: boolean },
): Promise<Builds> {
  await freshFolder(contender);
  const cold = await measureProcess(contender.build, folder);
  const pages = await expectPages(contender, sessions);
  const second = eveningOnly ? null : await measureProcess(contender.build, folder);
  const evening = await withTonight(journal, () => measureProcess(contender.build, folder));
  if ((await expectPages(contender, sessions)) <= pages) throw new Error(`${contender.name} made no page of the evening's note.`);
  return { cold, second, evening, pages };
}

function tally(sessions: number, checks: readonly Checks[], ours: readonly Builds[], plain: readonly Builds[]): Omit<Measured, 'empty'> {
  const middle = (builds: readonly Builds[], key: 'cold' | 'second' | 'evening'): Usage =>
    medianUsage(builds.flatMap((one) => one[key] ?? []));
  const mine = (key: 'cold' | 'second' | 'evening'): Usage | null => (ours.length === 0 ? null : middle(ours, key));
  const isWhole = plain.every(({ second }) => second !== null);
  return {
    sessions,
    check:
      checks.length === 0
        ? null
        : { first: medianUsage(checks.map((one) => one.first)), again: medianUsage(checks.map((one) => one.again)) },
    cold: { ours: mine('cold'), plain: middle(plain, 'cold') },
    second: isWhole ? { ours: mine('second'), plain: middle(plain, 'second') } : null,
    evening: { ours: mine('evening'), plain: middle(plain, 'evening') },
  };
}
