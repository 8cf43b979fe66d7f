/** A journal of few words in which something of nearly everything stands, a closed statement too: cheap to compile, so that very many mutants can be. */
import { frozenStatement } from '../../src/exports/frozen-statement.ts';
import { asSent, statementOf } from '../../src/journal/ledger/statement.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { LoadedSources } from '../../src/load/load.ts';

const SOURCES: Readonly<Record<string, string>> = {
  'journal.yaml': `title: The van
vehicle: { make: A make, model: A model, year: 1952, marks: { chassis: C 1, engine: E 1 } }
arrived: 2031-03-01
currency: GBP
time-zone: Europe/London
locale: en-GB
address: https://example.org/van/
people:
  me: { name: Somebody, rate: [{ from: 2031-03-01, per-hour: 28.00 }, { from: 2031-04-06, per-hour: 30.00 }] }
subsystems:
  brakes: { name: Brakes, budget: { hours: 60, money: 900.00 } }
milestones: { stripped: Stripped, first-start: First start, road-test: Road test }
threads: { drums: { title: Two drums, parts: [drum, drum-donor] } }
stores: [shelf A1, shelf B2]
stock: fifo
workshop: { name: The workshop, tax-number: GB 000, tax: 20% }
client: { name: The owner }
mark-up: { part: 10% }
statement: { shows: [costs, mark-up, not-charged] }
`,
  'consumables.yaml': `cleaner: { name: Brake cleaner, unit: L, hazards: [H225, H319, H336], opening: { amount: 2 L, value: 9.00 } }
`,
  'parts/brakes.yaml': `- { id: drum, name: "Front drum, nearside", origin: original, marks: C 4417, condition: 2 }
- { id: drum-donor, name: "Front drum, spare", origin: donor, for: drum, acquired: 2031-03-02, at: shelf B2 }
- { id: studs, name: Wheel studs, origin: original, count: 5, in: drum }
- { id: pipes, name: Pipes, origin: original, count: 3, numbered: "I to III, front to back" }
- { id: plate, name: Splash plate, origin: unknown, found: missing }
- { id: cylinder, name: Cylinder, origin: earlier-replacement, hazard: brake-fluid, private: from a friend }
`,
  'drawings/elevation.svg': `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50"><title>Near side</title>
<g fill="none" stroke="#000"><path id="drum" d="M1 1H20V20z"/><circle id="pipes" cx="50" cy="20" r="5"/></g></svg>
`,
  'identity/points.yaml': `title: Points
source: A paper of the club
standing: not asked
vehicles: vans
needed: 8
lines:
  - { id: drums, words: The drums, points: 5, asks: [drum, { what: The pipes, of: [pipes, hub] }], origins: [original, donor] }
  - { id: rest, words: The rest, points: 3, asks: [rest], unmodified: yes }
`,
  'sessions/2031-03-02-drum/index.md': `---
date: 2031-03-02
title: The drum
hours:
  - { by: me, on: brakes, time: 19:10-21:40 }
parts:
  - { part: drum, did: [removed, inspected], to: bag 1, condition: 2, note: "Scored, but sound." }
  - { part: pipes, did: removed, which: [1, 3], to: shelf A1 }
decisions:
  - { part: drum, verdict: replace, with: drum-donor, because: Bore too large. }
methods:
  - { on: [drum], how: Citric acid overnight, with: [cleaner], result: good }
measured:
  - { part: drum, what: inside diameter, as: found, value: 9.043 in, limits: 9.000..9.060 in }
used:
  - { consumable: cleaner, amount: 300 ml, on: brakes }
bags:
  - { bag: 1, holds: [drum, 2 bolts 5/16 UNF], off: drum, goes-back: "heads inboard" }
opens:
  - { id: pipe-capped, kind: temporary, what: Rear pipe capped, before: road-test, on: brakes }
  - { id: rim, kind: waiting, what: Rim, from: a plater, due: 2031-04-20, before: road-test }
pictures:
  - { file: drum.jpg, shows: [drum], view: as-found, caption: As it came off. }
film:
  - { clip: reel.mp4, title: Strip, shows: { "0:12": drum } }
cautions: [asbestos]
---
[The drum](part:drum) went into [bag one](bag:1); ![its face](drum.jpg "Scored") shows why.

| what | value |
|---|---|
| bore | 9.043 in |

> [^1] and \`code\`, <b>bold</b>, ~~struck~~ and *leaning*.

1. [the pipe](item:pipe-capped)
   - [that evening](session:2031-03-02-drum)

[^1]: A footnote, [cleaner](consumable:cleaner).
`,
  'sessions/2031-03-05-pin.md': `---
date: 2031-03-05
title: A pin
hours: [{ by: me, on: brakes, time: 2h }]
bought:
  - { what: Pin, as: part, for: drum, cost: 60.00, tax: 20%, paper: bill.pdf }
  - { consumable: cleaner, amount: 5 L, cost: 21.90, tax: 20% }
  - { what: Skimmed, as: outside-work, for: drum, cost: 42.00 EUR at 0.8571, split: { drum: 1, pipes: 1 } }
received: [{ from: The owner, amount: 50.00, for: deposit }]
parts:
  - { part: drum-donor, did: fitted, at: drum, as-was: yes }
  - { part: drum, did: sent-out, from: bag 1, to: a works, work: Skim it, due: 2031-04-01, quoted: 40.00 }
emptied: [1]
attributed: [{ part: cylinder, origin: original, by: me, because: "Stamped 1951." }]
closes: [{ id: rim, how: came back }]
valued: [{ of: vehicle, value: 14000.00, basis: agreed, by: a valuer }]
---
A pin.
`,
  'sessions/2031-03-09-prose.md': '2031-03-09 Prose alone\n\nA note with only prose is a good note. See [the drum](part:drum).\n',
};

const ASSETS = ['papers/bill.pdf', 'sessions/2031-03-02-drum/drum.jpg', 'sessions/2031-03-02-drum/reel.mp4'];

/** @returns its sources, as if they lay in a folder */
export function smallJournal(): LoadedSources {
  const open = sourcesOf(SOURCES);
  const { record, diagnostics } = compileJournal(open, { today: '2099-12-31' });
  const fault = diagnostics.find(({ severity }) => severity === 'error');
  if (record === null || fault)
    throw new Error(`the small journal has an error: ${fault?.code} ${fault?.place.file}:${fault?.place.line} ${fault?.message}`);
  const sent = asSent(statementOf(record, '2031-03-01', '2031-03-05'), 1, record);
  const statement = frozenStatement(sent, record.journal.settings);
  return { ...open, files: [...open.files, fileOf('statements/0001.yaml', statement)].sort((a, b) => (a.path < b.path ? -1 : 1)) };
}

function sourcesOf(texts: Readonly<Record<string, string>>): LoadedSources {
  const files = Object.entries(texts).map(([path, text]) => fileOf(path, text));
  const assets = ASSETS.map((path) => ({ path, size: 1000, mtimeMs: 0 }));
  return { folder: '/', files: files.sort((a, b) => (a.path < b.path ? -1 : 1)), assets, problems: [] };
}

function fileOf(path: string, text: string): LoadedSources['files'][number] {
  const bytes = Buffer.from(text);
  return { path, bytes, size: bytes.length, mtimeMs: 0 };
}
