/** The files that `init` writes: small, sound, and teaching. */
import type { IsoDate } from '../journal/model.ts';
import { addDays } from '../journal/values/date.ts';

const PAPERS = ['papers/README.txt', 'Receipts, letters and build sheets go here, as PDF or pictures.\n'] as const;

/**
 * A journal without parts and evenings; its catalogues say by comments what goes into them.
 *
 * @param evening the day of an evening that is begun now, so that its first note may be of this day
 * @returns texts by path
 */
export function emptyJournal(evening: IsoDate): ReadonlyMap<string, string> {
  return new Map([
    ['journal.yaml', journal(evening)],
    ['consumables.yaml', asComments(CONSUMABLES)],
    ['parts/brakes.yaml', `${asComments(PARTS)}#\n# Take a \`# \` away before the lines of a part, and say what yours is called.\n`],
    PAPERS,
  ]);
}

/**
 * The same with three parts and two evenings, to look at.
 *
 * @param today the last of its two notes is of this day, so nothing in it is in the future
 */
export function sampleJournal(today: IsoDate): ReadonlyMap<string, string> {
  const arrived = addDays(today, -2);
  const first = addDays(today, -1);
  return new Map([
    ['journal.yaml', journal(arrived)],
    ['consumables.yaml', CONSUMABLES],
    ['parts/brakes.yaml', PARTS],
    [`sessions/${first}-looking-round/index.md`, lookingRound(first)],
    [`sessions/${today}-drum-off/index.md`, drumOff(today)],
    PAPERS,
  ]);
}

function asComments(text: string): string {
  const lines = text.trimEnd().split('\n');
  return lines.map((line) => (line.startsWith('#') ? `${line}\n` : `${`# ${line}`.trimEnd()}\n`)).join('');
}

const journal = (arrived: IsoDate) => `# The journal: the vehicle, the people, the money, and the names that notes use.
title: My restoration
vehicle: { make: Your make, model: Your model, year: 1952 }

# The as-found state is of this day; no note may be earlier.
arrived: ${arrived}

currency: GBP                 # ISO 4217
time-zone: Europe/London
locale: en-GB

people:
  me: { name: Your name, rate: 0 }        # rate: an amount per hour, 0 when nobody is paid

# Every part belongs to a subsystem; its catalogue is parts/<subsystem>.yaml.
subsystems:
  brakes: { name: Brakes, budget: { hours: 40, money: 400.00 } }

# In order. A temporary measure names the one it must be undone before.
milestones:
  first-start: First start
  road-test: Road test

stores: [shelf A1, shelf A2]

stock: fifo                   # how consumables are costed: fifo or average
`;

const CONSUMABLES = `# What is used up. Hazards are the GHS codes from the safety data sheet, section 2.
brake-cleaner: { name: Brake cleaner, unit: L, hazards: [H225, H319, H336], opening: { amount: 1 L, value: 6.00 } }
`;

const PARTS = `# Every part of the subsystem, and every part that might stand in for one.
- id: front-drum-near
  name: Front brake drum, nearside
  origin: original            # made with the vehicle, as far as you know
  condition: 1                # 0 no symptoms, 1 minor, 2 moderate, 3 major
  hazard: asbestos            # shows the usual caution wherever the part is named

- id: front-drum-spare
  name: Front brake drum, spare
  origin: donor
  for: front-drum-near        # a candidate for that position
  at: shelf A2

- id: wheel-studs-near
  name: Wheel studs, front nearside
  origin: original
  count: 5                    # a lot: notes may speak of some of it
`;

const lookingRound = (date: IsoDate) => `---
date: ${date}
title: Looking round
hours:
  - { by: me, on: brakes, time: 1h }
parts:
  - { part: front-drum-near, did: inspected, note: "Scored, by the feel of it." }
decisions:
  - { part: front-drum-near, verdict: keep, because: Sound enough to see what is under it first. }
opens:
  - { id: measure-drum, kind: task, what: Measure the drum, before: road-test, on: brakes }
---

This evening is an example. To be rid of it, delete its folder (\`sessions/${date}-looking-round\`) and the other one, and the
three parts in \`parts/brakes.yaml\`.

Only \`date\` and \`title\` are needed; a note with only prose is a good note.
A part is linked like this: [the drum](part:front-drum-near).
`;

const drumOff = (date: IsoDate) => `---
date: ${date}
title: The drum comes off
hours:
  - { by: me, on: brakes, time: 1h30m }       # or a clock range, 19:10-20:40
parts:
  - { part: front-drum-near, did: [removed, measured], to: shelf A1 }
  - { part: wheel-studs-near, did: removed, count: 2, to: bag 1 }
measured:
  - { part: front-drum-near, what: inside diameter, as: found, value: 9.043 in, limits: 9.000..9.060 in }
used:
  - { consumable: brake-cleaner, amount: 200 ml, on: brakes }
bags:
  - { bag: 1, holds: [2 studs, 2 nuts], off: wheel-studs-near, goes-back: long end inboard }
closes:
  - { id: measure-drum, how: Within its limits }
cautions: [asbestos]
---

This evening is an example; delete its folder, \`sessions/${date}-drum-off\`, when you have seen it.

It wanted two pulls. The studs are in [bag 1](bag:1). Put pictures beside this file and name them like this:
\`![What it shows](drum.jpg)\`.
`;
