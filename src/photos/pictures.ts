/**
 * Pictures and papers from end to end. `checkPictures` looks at headers only and serves a check;
 * `preparePictures` plans, `buildPictures` renders the plan into a site; `picturesAsKnown` is for pages that are served without.
 */

import { openEntryCache } from '../disk/entry-cache.ts';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { Journal } from '../journal/model.ts';
import { checkClips } from './clips.ts';
import type { PictureFacts } from './facts.ts';
import { inspectPictures } from './inspect.ts';
import {
  neverDrawn,
  notPictures,
  picturesOf,
  picturesOfOtherDays,
  sealedPapers,
  undrawnPapers,
  unusablePictures,
} from './picture-diagnostics.ts';
import type { PicturePlan } from './plan.ts';
import { planPictures } from './plan-pictures.ts';
import { type RenderOptions, renderAll } from './render-all.ts';
import { namesOf } from './render-picture.ts';

export interface PicturePlaces {
  /** The journal folder. */
  readonly root: string;
  /** The cache folder, see `cacheFolder`. */
  readonly cache: string;
}

export interface BuiltPictures {
  /** The plan to make pages from: with mean colours, and without what could not be rendered. */
  readonly plan: PicturePlan;
  readonly diagnostics: readonly Diagnostic[];
  readonly rendered: number;
  readonly reused: number;
}

export type PreparedPictures = Pick<BuiltPictures, 'plan' | 'diagnostics'>;

/**
 * @param journal null when it cannot be understood
 * @param paths every file of the journal that is not a note or catalogue; what is no picture by its name is passed over
 * @returns A907 to A912, for pictures that nobody mentions too
 */
export async function checkPictures(journal: Journal | null, paths: readonly string[], places: PicturePlaces): Promise<Diagnostic[]> {
  const { facts, problems } = await inspectPictures(paths, { ...places, depth: 'header' });
  const unusable = unusablePictures(problems, journal);
  return journal ? [...unusable, ...saidOf(journal, facts), ...checkClips(journal, places.root)] : unusable;
}

/**
 * The plan of everything that a journal shows, and of nothing else in its folder, to be rendered. Nothing is rendered yet, and
 * no mean colour is known.
 *
 * @returns the plan, and A907 to A910 and A917
 */
export async function preparePictures(journal: Journal, places: PicturePlaces): Promise<PreparedPictures> {
  const { facts, problems } = await inspectPictures(picturesOf(journal), { ...places, depth: 'full' });
  return { plan: planned(journal, facts), diagnostics: [...unusablePictures(problems, journal), ...saidOf(journal, facts)] };
}

/** The plan for pages that are made without rendering: it has the mean colours of what was rendered before. */
export async function picturesAsKnown(journal: Journal, places: PicturePlaces): Promise<PicturePlan> {
  const { facts } = await inspectPictures(picturesOf(journal), { ...places, depth: 'full' });
  return planned(journal, facts, knownColours(planned(journal, facts), places.cache));
}

type Facts = ReadonlyMap<string, PictureFacts>;

function planned({ settings }: Journal, facts: Facts, colours: ReadonlyMap<string, string> = new Map()): PicturePlan {
  return planPictures(facts.values(), { keep: settings.keepPictureFacts, timeZone: settings.timeZone, colours });
}

function saidOf(journal: Journal, facts: Facts): Diagnostic[] {
  const undrawn = undrawnPapers(journal, neverDrawn(facts));
  return [...notPictures(journal), ...picturesOfOtherDays(journal, facts), ...sealedPapers(journal, facts), ...undrawn];
}

/** Renders a plan into a site; see `renderAll`. */
export async function buildPictures(journal: Journal, plan: PicturePlan, site: string, options: RenderOptions): Promise<BuiltPictures> {
  const result = await renderAll(plan, site, options);
  return { ...result, diagnostics: [...unusablePictures(result.problems, journal), ...undrawnPapers(journal, result.undrawn)] };
}

function knownColours(plan: PicturePlan, cache: string): Map<string, string> {
  const entries = openEntryCache(cache, 'pictures');
  const colours = new Map<string, string>();
  for (const rendition of plan.data.renditions) {
    const entry = entries.find(rendition.key, namesOf(rendition));
    if (entry) colours.set(rendition.key, entry.colour);
  }
  return colours;
}
