/** Pages kept from one build of a journal to the next, each with what it was told when it was made. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { readKept, writeKept } from '../../disk/kept.ts';
import type { Address } from '../addresses.ts';
import type { Asked, Told } from './asking.ts';
import { type Packed, readPack, removePacksBut, writePack } from './page-packs.ts';

export interface KeptPage {
  readonly told: Told;
  /** Compressed. */
  readonly bytes: Uint8Array;
}

export interface PageStore {
  /** The shared questions of the pages in it, by number. */
  readonly shared: readonly Asked[];
  get(page: Address): KeptPage | undefined;
  /** Keeps these pages and no others. What cannot be written is not kept; that is no error. */
  save(pages: ReadonlyMap<Address, KeptPage>, shared: readonly Asked[]): void;
}

/** What is written of a page: where its bytes are, the numbers of what it asked with others, and what it asked alone. */
type Written = readonly [address: Address, pack: number, from: number, length: number, shared: readonly number[], own: readonly Asked[]];

interface Index {
  readonly packs: readonly string[];
  readonly shared: readonly Asked[];
  readonly pages: readonly Written[];
}

/** Raise the number when pages are kept otherwise. */
const WHAT = 'pages 2';
/** Of more packs than this, one is made. */
const MOST_PACKS = 12;

/**
 * @param cache the cache folder; it need not exist
 * @param of names whose pages they are: the program, the journal, the copy
 * @param edition what all of its pages are made by; another edition's are not read
 */
export function openPageStore(cache: string, of: readonly string[], edition: string): PageStore {
  const folder = join(cache, 'site-pages', digest(of.join('\0')).slice(0, 16));
  const file = join(folder, 'index.json');
  const what = `${WHAT} ${edition}`;
  const index = readKept(file, what) as Index | undefined;
  const packs = (index?.packs ?? []).map((name) => readPack(folder, name));
  const written = new Map((index?.pages ?? []).map((one) => [one[0], one]));
  const places = new Map<Uint8Array, Packed>();
  const get: PageStore['get'] = (page) => {
    const [, nth = 0, from = 0, length = 0, shared = [], own = []] = written.get(page) ?? [];
    const pack = packs[nth];
    if (!written.has(page) || !pack || from + length > pack.length) return undefined;
    const bytes = pack.subarray(from, from + length);
    places.set(bytes, { pack: index?.packs[nth] ?? '', from, length });
    return { bytes, told: { shared: new Set(undelta(shared)), own } };
  };
  const save: PageStore['save'] = (pages, shared) => {
    const kept = [...pages.values()].flatMap(({ bytes }) => places.get(bytes) ?? []);
    const used = new Set(kept.map(({ pack }) => pack));
    const live = kept.reduce((sum, { length }) => sum + length, 0);
    const held = packs.reduce((sum, pack, n) => sum + (used.has(index?.packs[n] ?? '') ? (pack?.length ?? 0) : 0), 0);
    const anew = used.size >= MOST_PACKS || live < held / 2;
    const fresh = [...pages.values()].filter(({ bytes }) => anew || !places.has(bytes));
    const packed =
      fresh.length === 0
        ? []
        : writePack(
            folder,
            fresh.map(({ bytes }) => bytes),
          );
    fresh.forEach(({ bytes }, n) => void places.set(bytes, packed[n] as Packed));
    const names = [...new Set([...pages.values()].map(({ bytes }) => places.get(bytes)?.pack ?? ''))];
    const nth = new Map(names.map((name, n) => [name, n]));
    const lines = [...pages].map(([address, { bytes, told }]): Written => {
      const { pack, from, length } = places.get(bytes) as Packed;
      return [address, nth.get(pack) ?? 0, from, length, delta(told.shared), told.own];
    });
    writeKept(file, what, { packs: names, shared, pages: lines } satisfies Index);
    removePacksBut(folder, new Set(names));
  };
  return {
    shared: index?.shared ?? [],
    get,
    save: (pages, shared) => {
      try {
        save(pages, shared);
      } catch {
        // A cache that cannot be written costs time and nothing else.
      }
    },
  };
}

/** Numbers in order as steps from one to the next, which take less room. */
function delta(numbers: ReadonlySet<number>): number[] {
  let last = 0;
  return [...numbers]
    .sort((a, b) => a - b)
    .map((n) => {
      const step = n - last;
      last = n;
      return step;
    });
}

function undelta(steps: readonly number[]): number[] {
  let last = 0;
  return steps.map((step) => {
    last += step;
    return last;
  });
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');
