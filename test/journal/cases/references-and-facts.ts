import { CONSUMABLES, note, PARTS } from '../base.ts';
import type { Case } from './case.ts';

const earlier = (fields: string) => ({ more: { 'sessions/2031-03-01-earlier.md': note(fields).replace('2031-03-12', '2031-03-01') } });

export const REFERENCES: readonly Case[] = [
  { shows: 'an unknown part', code: 'A401', note: 'parts: [{ part: drun, did: inspected }]', at: 'drun', hint: /`drum`/ },
  { shows: 'an unknown person', code: 'A402', note: 'hours: [{ by: hr, on: brakes, time: 1h }]', at: 'hr', hint: /rh/ },
  {
    shows: 'a catalogue of an unknown subsystem',
    code: 'A403',
    file: 'parts/brake.yaml',
    files: { more: { 'parts/brake.yaml': '- { id: x, name: X }\n' } },
    hint: /`brakes`/,
  },
  { shows: 'an unknown milestone', code: 'A404', note: 'reached: [{ milestone: striped }]', at: 'striped', hint: /`stripped`/ },
  {
    shows: 'an unknown consumable',
    code: 'A405',
    note: 'used: [{ consumable: brake-cleener, amount: 1 L, on: brakes }]',
    at: 'brake-cleener',
    hint: /`brake-cleaner`/,
  },
  { shows: 'an unknown store', code: 'A406', note: 'parts: [{ part: drum, did: removed, to: shelf B3 }]', hint: /shelf B2/ },
  {
    shows: 'a candidate for a position that is none',
    code: 'A407',
    file: 'parts/brakes.yaml',
    files: { parts: `${PARTS}- { id: spare, name: Spare, for: drums }\n` },
    at: 'drums',
    hint: /`drum`/,
  },
  { shows: 'hours on nothing known', code: 'A408', note: 'hours: [{ by: rh, on: breaks, time: 1h }]', at: 'breaks', hint: /`brakes`/ },
  {
    shows: 'a correction of no session',
    code: 'A409',
    note: 'corrects: 2031-03-01-earlyer',
    files: earlier(''),
    at: '2031-03-01-earlyer',
    hint: /earlier/,
  },
  {
    shows: 'a hazard statement that does not exist',
    code: 'A411',
    file: 'consumables.yaml',
    files: { consumables: CONSUMABLES.replace('H225', 'H999') },
    at: 'H999',
  },
];

export const WHEREABOUTS: readonly Case[] = [
  {
    shows: 'a part that is on the shelf cannot come off',
    code: 'A501',
    note: 'parts: [{ part: drum-donor, did: removed }]',
    says: /shelf B2/,
  },
  { shows: 'a position that is full takes no more', code: 'A502', note: 'parts: [{ part: drum-donor, did: fitted }]', says: /drum/ },
  {
    shows: 'a part is not fitted twice',
    code: 'A503',
    note: 'parts: [{ part: drum, did: fitted }]',
    files: earlier('parts: [{ part: drum, did: removed }, { part: drum, did: fitted }]'),
  },
  { shows: 'six of five studs cannot come off', code: 'A504', note: 'parts: [{ part: studs, did: removed, count: 6 }]', says: /5/ },
  {
    shows: 'a scrapped part is not cleaned',
    code: 'A505',
    note: 'parts: [{ part: drum-donor, did: cleaned }]',
    files: earlier('parts: [{ part: drum-donor, did: gone, how: scrapped }]'),
  },
  { shows: 'a missing part is not cleaned', code: 'A506', note: 'parts: [{ part: splash-plate, did: cleaned }]', says: /missing/ },
  {
    shows: 'a part that is here is not acquired',
    code: 'A507',
    note: 'parts: [{ part: drum-donor, did: acquired, to: shelf A1 }]',
  },
  { shows: 'a part that never left is not returned', code: 'A508', note: 'parts: [{ part: drum-donor, did: returned, to: shelf A1 }]' },
  { shows: 'a part on the vehicle is not sent out', code: 'A509', note: 'parts: [{ part: drum, did: sent-out, to: the brake works }]' },
  { shows: 'a part sent out goes to somebody', code: 'A510', note: 'parts: [{ part: drum-donor, did: sent-out }]' },
  {
    shows: 'a part is not taken from where it is not',
    code: 'A511',
    note: 'parts: [{ part: drum, did: removed }, { part: drum, did: fitted, from: shelf A1 }]',
  },
  {
    shows: 'a part that the catalogue has on another day',
    code: 'A514',
    note: 'parts: [{ part: shoe-new, did: acquired, to: shelf A1 }]',
    at: '{ part: shoe-new',
    says: /2031-03-12.*2031-02-01/,
    once: true,
  },
  { shows: 'a destination without a move', code: 'A513', note: 'parts: [{ part: drum-donor, did: cleaned, to: shelf A1 }]' },
  {
    shows: 'the catalogue fits no more than there is room for',
    code: 'A512',
    file: 'parts/brakes.yaml',
    files: { parts: `${PARTS}- { id: second, name: Second drum, for: drum, found: fitted }\n` },
  },
];

export const BAGS_AND_ITEMS: readonly Case[] = [
  {
    shows: 'a bag number is used once',
    code: 'A601',
    note: 'bags: [{ bag: 3, holds: [2 bolts] }]',
    files: earlier('bags: [{ bag: 3, holds: [4 nuts] }]'),
  },
  { shows: 'a bag never filled is not emptied', code: 'A602', note: 'emptied: [9]', at: '9' },
  {
    shows: 'a bag is emptied once',
    code: 'A603',
    note: 'emptied: [3]',
    files: earlier('bags: [{ bag: 3, holds: [4 nuts] }]\nemptied: [3]'),
    at: '3',
  },
  {
    shows: 'a bag takes parts only when it is filled',
    code: 'A604',
    note: 'parts: [{ part: drum, did: removed, to: bag 3 }]',
    files: earlier('bags: [{ bag: 3, holds: [4 nuts] }]'),
  },
  {
    shows: 'a part left in an emptied bag',
    code: 'A605',
    note: 'emptied: [3]',
    files: earlier('parts: [{ part: studs, did: removed, count: 2, to: bag 3 }]\nbags: [{ bag: 3, holds: [2 studs] }]'),
    says: /studs/i,
  },
  { shows: 'a bag nobody fills', code: 'A606', note: 'parts: [{ part: drum, did: removed, to: bag 8 }]' },
  {
    shows: 'an item is opened once',
    code: 'A607',
    note: 'opens: [{ id: bleed, kind: task, what: x }]',
    files: earlier('opens: [{ id: bleed, kind: task, what: x }]'),
  },
  {
    shows: 'an item is not closed before it is opened',
    code: 'A608',
    note: 'opens: [{ id: bleed, kind: task, what: x }]',
    file: 'sessions/2031-03-01-earlier.md',
    files: earlier('closes: [{ id: bleed }]'),
  },
  {
    shows: 'an item is closed once',
    code: 'A609',
    note: 'closes: [{ id: bleed }]',
    files: earlier('opens: [{ id: bleed, kind: task, what: x }]\ncloses: [{ id: bleed }]'),
  },
  {
    shows: 'an item nobody opened',
    code: 'A610',
    note: 'closes: [{ id: blead }]\nopens: [{ id: bleed, kind: task, what: x }]',
    hint: /bleed/,
  },
  {
    shows: 'a milestone is not passed with a gate open',
    code: 'A611',
    note: 'reached: [{ milestone: stripped }]',
    files: earlier('opens: [{ id: prop, kind: temporary, what: A prop, before: stripped }]'),
    says: /prop/,
  },
  {
    shows: 'a milestone is reached once',
    code: 'A612',
    note: 'reached: [{ milestone: stripped }]',
    files: earlier('reached: [{ milestone: stripped }]'),
  },
  {
    shows: 'an admission has a reason',
    code: 'A613',
    note: 'reached: [{ milestone: stripped, with-open: [prop] }]',
    files: earlier('opens: [{ id: prop, kind: temporary, what: A prop, before: stripped }]'),
  },
  {
    shows: 'an admission of nothing open',
    code: 'A614',
    note: 'opens: [{ id: prop, kind: task, what: A prop }]\ncloses: [{ id: prop }]\nreached: [{ milestone: stripped, with-open: [prop], because: to be sure }]',
  },
  { shows: 'a temporary measure ends before a milestone', code: 'A615', note: 'opens: [{ id: prop, kind: temporary, what: A prop }]' },
  { shows: 'a milestone out of order', code: 'A616', note: 'reached: [{ milestone: first-start }]' },
];

export const DECISIONS_AND_HOURS: readonly Case[] = [
  {
    shows: 'a decision to keep what is no longer there',
    code: 'A701',
    note: 'parts: [{ part: drum, did: removed }, { part: drum-donor, did: fitted }]\ndecisions: [{ part: drum, verdict: keep, because: sound }]',
  },
  {
    shows: 'a keeping with something else',
    code: 'A702',
    note: 'decisions: [{ part: drum, verdict: keep, with: drum-donor, because: sound }]',
  },
  { shows: 'a decision on six of five', code: 'A703', note: 'decisions: [{ part: studs, verdict: replace, count: 6, because: pulled }]' },
  { shows: 'a decision without a reason', code: 'A704', note: 'decisions: [{ part: studs, verdict: keep }]' },
  {
    shows: 'a note from the future',
    code: 'A801',
    file: 'sessions/2032-01-01.md',
    files: { more: { 'sessions/2032-01-01.md': note('').replace('2031-03-12', '2032-01-01') } },
    at: '2032-01-01',
  },
  {
    shows: 'a note from before the vehicle arrived',
    code: 'A802',
    file: 'sessions/2030-09-13.md',
    files: { more: { 'sessions/2030-09-13.md': note('').replace('2031-03-12', '2030-09-13') } },
    at: '2030-09-13',
  },
  {
    shows: 'one person in two places',
    code: 'A803',
    note: 'hours:\n  - { by: rh, on: brakes, time: 19:00-21:00 }\n  - { by: rh, on: frame, time: 20:30-22:00 }',
    at: '{ by: rh, on: frame',
    first: '{ by: rh, on: brakes',
  },
  {
    shows: 'a day of more than 24 hours',
    code: 'A804',
    note: 'hours:\n  - { by: rh, on: brakes, time: 14h }\n  - { by: rh, on: frame, time: 11h }',
    at: '{ by: rh, on: frame',
  },
  {
    shows: 'more used than there is',
    code: 'A805',
    note: 'used: [{ consumable: brake-cleaner, amount: 3 L, on: brakes }]',
    says: /1 L short|short/,
  },
  {
    shows: 'a bill that does not add up',
    code: 'A806',
    note: 'bills: [{ total: 12.00, lines: [{ what: Pin, cost: 5.00 }, { what: Clip, cost: 6.00 }] }]',
    at: '12.00',
    says: /12\.00.*11\.00|11\.00.*12\.00/,
  },
  { shows: 'a split of nothing', code: 'A807', note: 'bought: [{ what: Pin, cost: 5.00, split: { brakes: 0, frame: 0 } }]' },
  { shows: 'a negative cost that is no refund', code: 'A808', note: 'bought: [{ what: Pin, cost: -5.00 }]', at: '-5.00' },
  {
    shows: 'a clock time that the clocks skip',
    code: 'A809',
    file: 'sessions/2031-03-30.md',
    files: {
      more: { 'sessions/2031-03-30.md': note('hours: [{ by: rh, on: brakes, time: 01:30-03:00 }]').replace('2031-03-12', '2031-03-30') },
    },
    at: '01:30-03:00',
  },
  {
    shows: 'work by somebody who has no rate yet',
    code: 'A810',
    file: 'sessions/2030-09-20.md',
    files: { more: { 'sessions/2030-09-20.md': note('hours: [{ by: jm, on: brakes, time: 1h }]').replace('2031-03-12', '2030-09-20') } },
    at: '{ by: jm',
  },
];

export const PICTURES_AND_PROSE: readonly Case[] = [
  {
    shows: 'a picture that is not there',
    code: 'A901',
    note: 'pictures: [{ file: drun.jpg, caption: x }]',
    files: { assets: ['sessions/2031-03-12-brakes/drum.jpg'] },
    at: 'drun.jpg',
    hint: /drum\.jpg/,
  },
  {
    shows: 'a picture that is not there, named in the prose too',
    code: 'A901',
    note: 'pictures: [{ file: drun.jpg, caption: x }]',
    prose: 'It came off.\n\n![The drum](./drun.jpg)\n',
    at: 'drun.jpg',
    first: '![The drum]',
    once: true,
  },
  { shows: 'a paper that is not there', code: 'A902', note: 'bought: [{ what: Pin, cost: 5.00, paper: bill.pdf }]', at: 'bill.pdf' },
  { shows: 'a link in the prose to nothing', code: 'A903', prose: 'See [the drum](part:drun).\n', at: '[the drum]', hint: /`drum`/ },
  {
    shows: 'a link in the prose that names nothing',
    code: 'A903',
    prose: 'See [it](part:).\n',
    at: '[it](part:)',
    hint: /after the colon/,
  },
  {
    shows: 'a picture without words',
    code: 'A904',
    note: 'pictures: [{ file: drum.jpg }]',
    files: { assets: ['sessions/2031-03-12-brakes/drum.jpg'] },
  },
  { shows: 'a clip that is not there', code: 'A905', note: 'film: [{ clip: reel.mp4 }]', at: 'reel.mp4' },
  { shows: 'a mark that is no time', code: 'A906', note: 'film: [{ clip: "https://example.org/a.mp4", shows: { "12.40": drum } }]' },
];
