/** The parts of the bench, in the order in which they are run. */
import { join } from 'node:path';
import type { Aim } from './aims.ts';
import { BUILD_PARTS, type BuildPart, measureBuilds } from './builds.ts';

/** How they are measured. */
export interface How {
  readonly seed: number;
  readonly sizes: readonly number[];
  readonly plainOnly: boolean;
  /** Of everything but the lengths of journals so much is measured; less than 1 to try the bench itself. */
  readonly scale: number;
  /** Twenty years in their whole size, which takes minutes. */
  readonly full: boolean;
}

type Measure = (folder: string, how: How) => Promise<Aim[]>;

interface Part {
  /** Takes long, and is run only where it is asked for by name. */
  readonly long: boolean;
  readonly measure: Measure;
}

const DEV_SESSIONS = 1000;
const DEV_AIM_SECONDS = 0.2;

const some = (count: number, { scale }: How): number => Math.max(8, Math.round(count * scale));

const PARTS: Readonly<Record<string, Part>> = {
  demo: {
    long: false,
    measure: async (folder) => {
      const { measureDemo } = await import('./demo.ts');
      return measureDemo(folder);
    },
  },
  dev: {
    long: false,
    measure: async (folder, how) => {
      const { devLatency } = await import('./dev-latency.ts');
      const sessions = some(DEV_SESSIONS, how);
      const figure = await devLatency(folder, sessions, how);
      return [{ what: `dev, ${sessions} sessions: a saved note is on its page`, figure, below: DEV_AIM_SECONDS, unit: ' s' }];
    },
  },
  pictures: {
    long: false,
    measure: async (folder, how) => {
      const { A_FEW, measurePictures } = await import('./pictures.ts');
      return measurePictures(folder, { ...A_FEW, count: some(A_FEW.count, how) });
    },
  },
  phone: {
    long: false,
    measure: async (folder, how) => {
      const { measurePhone } = await import('./phone.ts');
      return measurePhone(folder, { positions: some(2000, how), sessions: some(100, how), seed: how.seed });
    },
  },
  'twenty-years': {
    long: false,
    measure: async (folder, how) => {
      const { A_FOURTH, measureTwentyYears, TWENTY_YEARS } = await import('./twenty-years.ts');
      const run = how.full ? TWENTY_YEARS : A_FOURTH;
      const { sessions, positions, references } = run;
      return measureTwentyYears(folder, {
        ...run,
        sessions: some(sessions, how),
        positions: some(positions, how),
        references: some(references, how),
      });
    },
  },
  'handed-over': {
    long: true,
    measure: async (folder, how) => {
      const { A_LONG_ONE, measureHandedOver } = await import('./handed-over.ts');
      const { sessions, pictures } = A_LONG_ONE;
      return measureHandedOver(folder, { ...A_LONG_ONE, sessions: some(sessions, how), pictures: pictures.map((n) => n && some(n, how)) });
    },
  },
  'pictures-at-size': {
    long: true,
    measure: async (folder, how) => {
      const { AT_SIZE, measurePictures } = await import('./pictures.ts');
      return measurePictures(folder, {
        ...AT_SIZE,
        count: some(AT_SIZE.count, how),
        fewer: [...new Set(AT_SIZE.fewer.map((n) => some(n, how)))],
      });
    },
  },
  'ten-thousand': {
    long: true,
    measure: async (folder, how) => {
      const { measureTwentyYears, TEN_THOUSAND } = await import('./twenty-years.ts');
      return measureTwentyYears(folder, {
        ...TEN_THOUSAND,
        files: some(TEN_THOUSAND.files, how),
        references: some(TEN_THOUSAND.references, how),
      });
    },
  },
};

/** One start of the bench: the parts that are measured on the same builds are one. */
export interface Turn {
  readonly name: string;
  readonly parts: readonly string[];
}

/**
 * @param asked names; none stands for all that do not take long
 * @throws RangeError for a name that no part has
 */
export function turnsOf(asked: readonly string[]): Turn[] {
  const names = [...BUILD_PARTS, ...Object.keys(PARTS)];
  const unknown = asked.find((name) => !names.includes(name));
  if (unknown !== undefined) throw new RangeError(`${unknown} is no part of it; these are: ${names.join(', ')}.`);
  const wanted = names.filter((name) => (asked.length === 0 ? !PARTS[name]?.long : asked.includes(name)));
  const builds = wanted.filter((name) => PARTS[name] === undefined);
  const others = wanted.filter((name) => PARTS[name] !== undefined).map((name) => ({ name, parts: [name] }));
  return builds.length === 0 ? others : [{ name: 'builds', parts: builds }, ...others];
}

/** Measures one turn. */
export async function measureTurn({ name, parts }: Turn, folder: string, how: How): Promise<Aim[]> {
  const part = PARTS[name];
  if (part) return part.measure(join(folder, name), how);
  return measureBuilds(join(folder, name), { ...how, parts: parts as readonly BuildPart[] });
}
