/** What an evening says of money and of what is used up: bought, billed, sold, used, counted, received, valued. */
import * as z from 'zod';
import { decisive, having, naming } from './facts.ts';
import { count, fields, manyOf, maybe, newId, oneOf, prose, quantity, text } from './fields.ts';
import { chargeName, consumableName, lyingPlace, partName, positionName, sessionName } from './names.ts';
import { SAID_FOR_BOUGHT, SAID_FOR_ORIGINS } from './said-for.ts';
import { BOUGHT_AS, ORIGINS } from './words.ts';

/** A paper by its name. */
export const paperFile = having(text, { writtenAs: 'paper-file' });

/** Whom something is bought of. */
const seller = having(prose, { offers: 'firms' });

/** A part that a purchase brings. */
const brought = fields({
  id: naming(newId, ['part']),
  name: prose,
  origin: oneOf(ORIGINS, SAID_FOR_ORIGINS),
  for: positionName,
  count: count.default(1),
  /** Where it was put. */
  at: maybe(lyingPlace),
});

/** A line of a bill: a thing or a service. What it costs is read with the journal's currency. */
const lineShape = {
  what: maybe(prose),
  as: maybe(oneOf(BOUGHT_AS, SAID_FOR_BOUGHT)),
  for: decisive(maybe(chargeName)),
  consumable: maybe(consumableName),
  amount: decisive(maybe(quantity)),
  /** Without it only where the journal has no money. */
  cost: decisive(maybe(text)),
  tax: maybe(text),
  split: decisive(
    maybe(
      having(z.record(z.string(), text), { keys: ['part', 'subsystem'], form: 'a share for each, as `{ drum-near: 2, drum-off: 1 }`' }),
    ),
  ),
  /** Parts that it brings: candidates for a position, catalogued and acquired by this entry. A set is one entry that brings several. */
  makes: having(manyOf(brought), { decisive: true, brings: 'part' }),
  /** Why money came back. */
  refund: maybe(prose),
  /** The note that tells of the purchase, by its id or date. */
  'refund-of': maybe(sessionName),
  /** Why the client is not charged for it. */
  'not-charged': maybe(prose),
  /** Whether a tax return may deduct it; else as journal.yaml says of its kind. */
  deductible: maybe(oneOf(['yes', 'no'])),
};

export const bought = fields({ ...lineShape, from: maybe(seller), paper: maybe(paperFile) });

export const bill = fields({
  from: maybe(seller),
  paper: maybe(paperFile),
  currency: maybe(text),
  total: maybe(text),
  discount: maybe(text),
  carriage: maybe(text),
  /** Of the amount to be paid, as the paper has it. */
  rounding: maybe(text),
  tax: maybe(text),
  lines: z.array(fields(lineShape)),
});

export const sold = fields({
  part: maybe(partName),
  what: maybe(prose),
  on: maybe(chargeName),
  count: decisive(maybe(count)),
  price: text,
  tax: maybe(text),
  to: maybe(prose),
});

export const used = fields({ consumable: consumableName, amount: quantity, on: maybe(chargeName), 'not-charged': maybe(prose) });
/** `value` is what was found beyond the books is worth; `on` is what on the vehicle had what is missing. */
export const counted = fields({ consumable: consumableName, amount: quantity, on: maybe(chargeName), because: prose, value: maybe(text) });

/** Money from the client. */
export const received = fields({ from: prose, amount: text, for: maybe(prose), paper: maybe(paperFile) });

/** What the vehicle, or a part, is held to be worth. */
export const valued = fields({
  of: having(partName.default('vehicle'), { everyday: true }),
  value: text,
  basis: prose,
  by: maybe(prose),
  paper: maybe(paperFile),
});
