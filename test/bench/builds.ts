/** Journals of three lengths, checked and built by Asfound and, the notes alone, by a plain Astro site with the same Markdown steps. */
import { join } from 'node:path';
import type { Aim } from './aims.ts';
import { checkAims, coldAims, eveningAims, flatness } from './report.ts';
import { type Measured, measureSize } from './rounds.ts';

export const BUILD_PARTS = ['cold', 'one-evening', 'check', 'growth'] as const;
export type BuildPart = (typeof BUILD_PARTS)[number];

export interface BuildRun {
  /** What is asked for; all of it is measured on the same builds. */
  readonly parts: readonly BuildPart[];
  /** The shortest first; it serves for what a session adds alone. */
  readonly sizes: readonly number[];
  readonly seed: number;
  readonly plainOnly: boolean;
}

/** @param folder for everything that is written */
export async function measureBuilds(folder: string, { parts, sizes, seed, plainOnly }: BuildRun): Promise<Aim[]> {
  const isAsked = (part: BuildPart): boolean => parts.includes(part);
  const growth = isAsked('growth') && !plainOnly;
  const lengths = growth ? sizes : sizes.slice(-2);
  const measured: Measured[] = [];
  for (const [n, sessions] of lengths.entries()) {
    const check = (isAsked('check') && n === lengths.length - 1) || growth;
    measured.push(await measureSize(join(folder, String(sessions)), sessions, { seed, check, floor: isAsked('cold'), plainOnly }));
  }
  const judged = measured.slice(-2);
  return [
    ...(isAsked('cold') ? judged.flatMap(coldAims) : []),
    ...(isAsked('one-evening') ? judged.flatMap(eveningAims) : []),
    ...(isAsked('check') ? judged.slice(-1).flatMap(checkAims) : []),
    ...(growth ? [...growthAims(measured), ...(await coreAims(folder, lengths))] : []),
  ];
}

function growthAims(measured: readonly Measured[]): Aim[] {
  const of = (what: string, seconds: (one: Measured) => number | undefined): Aim[] => {
    const points = measured.flatMap((one) => {
      const value = seconds(one);
      return value === undefined ? [] : [{ sessions: one.sessions, seconds: value }];
    });
    return [flatness(what, points) ?? []].flat();
  };
  return [
    ...of('check', (one) => one.check?.first.wall),
    ...of('cold build', (one) => one.cold.ours?.wall),
    ...of('after one evening', (one) => one.evening.ours?.wall),
  ];
}

async function coreAims(folder: string, lengths: readonly number[]): Promise<Aim[]> {
  const { measureViews, viewsAims } = await import('./views.ts');
  return viewsAims(measureViews(lengths.map((sessions) => [join(folder, String(sessions), 'journal'), sessions])));
}
