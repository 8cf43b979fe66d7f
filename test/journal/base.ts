/** A small sound journal that cases break in one place. */
import { type Compiled, compileJournal } from '../../src/journal/pipeline.ts';
import type { Asset, Sources } from '../../src/journal/read/source/sources.ts';

export const TODAY = '2031-12-31';

export const JOURNAL = `title: The bakery van
vehicle: { make: Quernby, model: Ten, year: 1952 }
arrived: 2030-09-14
currency: GBP
time-zone: Europe/London
locale: en-GB
people:
  rh: { name: Ruth, rate: 0 }
  jm: { name: Jory, rate: [ { from: 2030-10-01, per-hour: 28.00 } ] }
subsystems:
  brakes: { name: Brakes, budget: { hours: 60, money: 900.00 } }
  frame: { name: Frame }
milestones:
  stripped: Stripped to the ash
  first-start: First start
stores: [shelf A1, shelf B2]
`;

export const CONSUMABLES = `brake-cleaner: { name: Brake cleaner, unit: L, hazards: [H225], opening: { amount: 2 L, value: 9.00 } }
`;

export const PARTS = `- id: drum
  name: Front brake drum
  origin: original
- id: drum-donor
  name: Spare drum
  origin: donor
  for: drum
  at: shelf B2
- id: studs
  name: Wheel studs
  origin: original
  count: 5
- id: splash-plate
  name: Splash plate
  found: missing
- id: shoe-new
  name: New shoe
  origin: new
  for: studs
  acquired: 2031-02-01
  at: shelf A1
`;

/** One note from the lines of its front matter. */
export function note(fields: string, prose = ''): string {
  return `---\ndate: 2031-03-12\ntitle: Front brakes\n${fields.trim()}\n---\n${prose}`;
}

export interface Files {
  readonly journal?: string | null;
  readonly consumables?: string;
  readonly parts?: string;
  /** Notes and other sources by path. */
  readonly more?: Readonly<Record<string, string | Uint8Array>>;
  readonly assets?: readonly string[];
}

export const NOTE = 'sessions/2031-03-12-brakes/index.md';

/** Compiles a journal made of the base and what a case puts in its place. */
export const compileFiles = (files: Files): Compiled => compileJournal(sourcesOf(files), { today: TODAY });

/** The same journal as it would lie on disk. */
export function sourcesOf(files: Files): Sources {
  const all: Record<string, string | Uint8Array> = {
    ...(files.journal === null ? {} : { 'journal.yaml': files.journal ?? JOURNAL }),
    'consumables.yaml': files.consumables ?? CONSUMABLES,
    'parts/brakes.yaml': files.parts ?? PARTS,
    ...files.more,
  };
  const encoder = new TextEncoder();
  const sources = Object.entries(all).map(([path, text]) => ({ path, bytes: typeof text === 'string' ? encoder.encode(text) : text }));
  const assets: Asset[] = (files.assets ?? []).map((path) => ({ path, size: 10 }));
  return { files: sources, assets, problems: [] };
}
