/** A small journal in a folder of its own, served to be written to. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { FormField } from '../../src/write/form.ts';
import { type Serving, serveWriting } from '../../src/write/serve.ts';

const FILES: Readonly<Record<string, string>> = {
  'journal.yaml': `title: The van
arrived: 2031-01-01
currency: GBP
people: { rh: { name: Ruth } }
subsystems: { brakes: { name: Brakes } }
milestones: { road-test: Road test }
stores: [shelf A1, shelf B2, loft]
`,
  'consumables.yaml': 'brake-cleaner: { name: Brake cleaner, unit: L, opening: { amount: 2 L, value: 9.00 } }\n',
  'parts/brakes.yaml': `- { id: front-drum-near, name: "Front brake drum, nearside", origin: original }
- { id: front-drum-off, name: "Front brake drum, offside", origin: original }
- { id: wheel-cylinder-near, name: "Wheel cylinder, nearside", origin: original }
- { id: wheel-cylinder-new, name: "Wheel cylinder, new", origin: new, for: wheel-cylinder-near }
- { id: wheel-studs-near, name: "Wheel studs, nearside", origin: original, count: 5 }
- { id: splash-plate-near, name: "Splash plate, nearside", origin: original }
- { id: brake-shoes-near, name: "Brake shoes, nearside", origin: original, count: 2 }
- { id: hub-cap-near, name: "Hub cap, nearside", origin: original }
`,
  'sessions/2031-03-10-first-look.md': `---
# The first evening on the brakes.
date: 2031-03-10
title: First look          # nothing came off
hours:
  - { by: rh, on: brakes, time: 19:10-20:40 }   # tea included
parts:
  - { part: front-drum-near, did: inspected, condition: 2, note: "Scored, but sound." }   # see the picture
  # the studs another day
  - { part: wheel-studs-near, did: inspected, condition: 1 }
---

Looked at it   all, with a lamp.
`,
};

export interface WritingStand {
  readonly folder: string;
  readonly cache: string;
  serving: Serving;
  /** Faults of the server. */
  readonly told: string[];
  /** Ends the server, and starts another one at the same port. */
  restart(): Promise<void>;
  remove(): Promise<void>;
}

export interface StandOptions {
  readonly files?: Readonly<Record<string, string>>;
  readonly form?: readonly FormField[];
  /** The day of an evening that is begun now, where that is not today. */
  readonly evening?: string;
}

export async function standForWriting({ files = {}, form, evening }: StandOptions = {}): Promise<WritingStand> {
  const home = mkdtempSync(join(tmpdir(), 'asfound-write-'));
  const [folder, cache] = [join(home, 'journal'), join(home, 'cache')];
  for (const [path, text] of Object.entries({ ...FILES, ...files })) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const told: string[] = [];
  const tell = (text: string): void => void told.push(text);
  const serve = (port: number): Promise<Serving> =>
    serveWriting({
      folder,
      cache,
      today: () => '2031-03-12',
      evening: () => evening ?? '2031-03-12',
      host: '127.0.0.1',
      port,
      tell,
      ...(form ? { form } : {}),
    });
  const stand: WritingStand = {
    folder,
    cache,
    told,
    serving: await serve(0),
    async restart() {
      await stand.serving.close();
      stand.serving = await serve(Number(new URL(stand.serving.address).port));
    },
    async remove() {
      await stand.serving.close();
      rmSync(home, { recursive: true, force: true });
    },
  };
  return stand;
}
