/** A journal of one part and one note, whose dates are before the day of the tests. */
export const JOURNAL: Readonly<Record<string, string>> = {
  'van/journal.yaml': `title: The van
vehicle: { make: A make, model: A model, year: 1952 }
arrived: 2031-03-01
currency: GBP
time-zone: Europe/London
locale: en-GB
people:
  me: { name: Somebody, rate: 0 }
subsystems:
  brakes: { name: Brakes }
milestones:
  first-start: First start
  road-test: Road test
stores: [shelf A1]
`,
  'van/parts/brakes.yaml': `- { id: drum, name: Front drum, origin: original }
- { id: pipe, name: Rear pipe, origin: original }
`,
  'van/sessions/2031-03-02-drum.md': `---
date: 2031-03-02
title: The drum
parts:
  - { part: drum, did: removed, to: bag 1 }
bags:
  - { bag: 1, holds: [drum], off: drum, goes-back: as it was }
opens:
  - { id: pipe-capped, kind: temporary, what: Rear pipe capped, before: first-start, on: brakes }
  - { id: buy-fluid, kind: buy, what: Buy fluid, before: first-start, on: brakes }
  - { id: polish, kind: task, what: Polish it, before: road-test, on: brakes }
---

Off it came.
`,
};
