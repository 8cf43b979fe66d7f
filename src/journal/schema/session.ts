/** The front matter of a note. Whatever depends on the journal (money, references) stays text here. */
import * as z from 'zod';
import { readPicturePlace } from '../values/picture-place.ts';
import { readHours } from '../values/time.ts';
import { decisive, having, naming } from './facts.ts';
import {
  amountIn,
  bagNumber,
  condition,
  count,
  date,
  entries,
  fields,
  listOf,
  manyOf,
  maybe,
  newId,
  oneOf,
  prose,
  quantity,
  read,
  text,
  yes,
} from './fields.ts';
import {
  chargeName,
  comesFrom,
  consumableName,
  goesTo,
  itemName,
  milestoneName,
  partName,
  personName,
  positionName,
  sessionName,
} from './names.ts';
import { numberInLot } from './number-in-lot.ts';
import {
  SAID_FOR_ACTIONS,
  SAID_FOR_HAZARDS,
  SAID_FOR_HOW,
  SAID_FOR_KINDS,
  SAID_FOR_ORIGINS,
  SAID_FOR_PASSED,
  SAID_FOR_RESULTS,
  SAID_FOR_VERDICTS,
} from './said-for.ts';
import { bill, bought, counted, paperFile, received, sold, used, valued } from './trade.ts';
import { ACTIONS, HAZARDS, HOW, ITEM_KINDS, ORIGINS, PASSED_HOW, RESULTS, VERDICTS } from './words.ts';

const pictureFile = having(text, { writtenAs: 'picture-file' });

const hours = having(
  fields({
    /** Without it, the only person there is; several worked the same time. */
    by: maybe(having(personName, { several: true })),
    /** Without it, what counts under no subsystem. */
    on: maybe(chargeName),
    time: having(text, { writtenAs: 'clock' }),
    /** Why it is not charged. */
    unpaid: maybe(prose),
  }),
  { alone: 'time' },
);

const touched = fields({
  part: having(partName, { several: true }),
  did: decisive(manyOf(oneOf(ACTIONS, SAID_FOR_ACTIONS))),
  to: maybe(goesTo),
  at: maybe(positionName),
  /** Where it was taken from; for what is acquired, who had it; for what is made, the parts it was made from. */
  from: manyOf(comesFrom),
  /** Without it, all that are in the state the action needs. */
  count: decisive(maybe(count)),
  /** Which of a numbered lot. */
  which: decisive(manyOf(numberInLot)),
  /** What it was fitted into, or made into. */
  into: manyOf(partName),
  /** How it went, that it is out on loan, or that what was dangerous in it is dangerous no longer. */
  how: decisive(maybe(oneOf(HOW, SAID_FOR_HOW))),
  /** The part that it was made after. */
  pattern: maybe(partName),
  'goes-back': maybe(prose),
  /** What lies on it in order, from the outside in. */
  stack: manyOf(prose),
  /** Whether it went back the same way as it came off. */
  'as-was': maybe(yes),
  /** What a firm is to do, by when, and for how much. */
  work: maybe(prose),
  due: maybe(date),
  quoted: maybe(text),
  condition: maybe(condition),
  marks: maybe(prose),
  finish: maybe(prose),
  /** What it was tightened to. */
  torque: maybe(amountIn('N.m')),
  note: maybe(prose),
});

const decision = fields({
  part: having(partName, { several: true }),
  verdict: oneOf(VERDICTS, SAID_FOR_VERDICTS),
  with: maybe(partName),
  count: decisive(maybe(count)),
  which: decisive(manyOf(numberInLot)),
  because: maybe(prose),
});

const method = fields({
  on: listOf(partName),
  how: prose,
  with: manyOf(consumableName),
  material: maybe(prose),
  result: maybe(oneOf(RESULTS, SAID_FOR_RESULTS)),
  note: maybe(prose),
});

const measurement = fields({
  part: partName,
  what: prose,
  as: maybe(oneOf(['found', 'left'])),
  value: quantity,
  limits: maybe(text),
  note: maybe(prose),
});

/** The vehicle passes to another keeper. */
const handOver = fields({
  to: decisive(personName),
  how: decisive(oneOf(PASSED_HOW, SAID_FOR_PASSED)),
  /** Of the vehicle itself; it is in no cost of the work. */
  price: maybe(text),
  /** What goes along and is no part: keys, papers. */
  with: manyOf(prose),
  /** Parts off the vehicle that go along though they are no originals, and originals that stay. */
  goes: manyOf(partName),
  stays: manyOf(partName),
  note: maybe(prose),
});

const bag = fields({
  bag: bagNumber,
  holds: listOf(text),
  off: maybe(partName),
  'goes-back': maybe(prose),
  picture: maybe(pictureFile),
});

const attribution = fields({
  part: partName,
  origin: oneOf(ORIGINS, SAID_FOR_ORIGINS),
  by: maybe(personName),
  because: prose,
  paper: maybe(paperFile),
});

const opening = fields({
  id: naming(newId, ['item']),
  kind: oneOf(ITEM_KINDS, SAID_FOR_KINDS),
  what: prose,
  /** Whom it waits for, and the day it was promised. */
  from: maybe(having(text, { offers: 'firms' })),
  due: maybe(date),
  before: maybe(milestoneName),
  on: maybe(chargeName),
  price: maybe(text),
  /** What it is likely to take, in minutes. */
  hours: maybe(read(readHours)),
});

/** A place in a picture, and what is there. */
const point = fields({ at: having(read(readPicturePlace, '50,50'), { writtenAs: 'place' }), shows: maybe(partName), note: maybe(prose) });

const picture = fields({
  file: pictureFile,
  shows: manyOf(partName),
  view: maybe(text),
  caption: maybe(prose),
  alt: maybe(prose),
  points: z.array(point).default([]),
});

const film = fields({
  clip: text,
  title: maybe(prose),
  shows: z.record(z.string(), listOf(partName)).default({}),
});

const paper = fields({
  paper: paperFile,
  kind: oneOf(['receipt', 'letter', 'photograph', 'build-sheet', 'other']),
  what: maybe(prose),
  date: maybe(date),
  shows: manyOf(partName),
});

export const sessionSchema = fields({
  date,
  title: prose,
  hours: having(entries(hours), { everyEvening: true }),
  parts: having(entries(touched), { everyEvening: true }),
  decisions: entries(decision),
  attributed: entries(attribution),
  methods: entries(method),
  measured: entries(measurement),
  bought: having(entries(bought), { stock: true }),
  bills: having(entries(bill), { stock: true }),
  sold: entries(sold),
  received: entries(received),
  valued: entries(valued),
  used: entries(used),
  counted: having(entries(counted), { stock: true }),
  bags: having(entries(bag), { brings: 'bag' }),
  emptied: manyOf(bagNumber),
  opens: having(entries(opening), { brings: 'item' }),
  closes: entries(having(fields({ id: itemName, how: maybe(prose) }), { alone: 'id' })),
  defers: entries(fields({ id: itemName, to: milestoneName, because: prose })),
  reached: entries(
    having(fields({ milestone: milestoneName, 'with-open': manyOf(itemName), because: maybe(prose) }), { alone: 'milestone' }),
  ),
  'handed-over': entries(handOver),
  pictures: entries(picture),
  film: entries(film),
  papers: entries(paper),
  cautions: manyOf(oneOf(HAZARDS, SAID_FOR_HAZARDS)),
  private: maybe(prose),
  corrects: maybe(sessionName),
});

export type SessionSource = z.output<typeof sessionSchema>;

/** What an entry of a list says. */
export type EntryOf<Field extends keyof SessionSource> = SessionSource[Field] extends readonly (infer Item)[] ? Item : never;
