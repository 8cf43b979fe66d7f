/** Words that people try first, and what to write for them. What stands between backticks is right as typed. */
import type { ACTIONS, BOUGHT_AS, GONE_HOW, HAZARDS, ITEM_KINDS, ORIGINS, PASSED_HOW, RESULTS, VERDICTS } from './words.ts';

/** By word in small letters, words of two with a hyphen. */
export type SaidFor = ReadonlyMap<string, string>;

/** Rows of what to write, and the words that are said for it. */
function saidFor<Word extends string>(rows: readonly (readonly [meant: `\`${Word}\`${string}`, said: string])[]): SaidFor {
  return new Map(rows.flatMap(([meant, said]) => said.split(' ').map((word) => [word, meant] as const)));
}

export const SAID_FOR_ACTIONS = saidFor<(typeof ACTIONS)[number]>([
  ['`removed`', 'off taken-off dismantled dismounted stripped unbolted undone out'],
  ['`fitted`', 'on refitted refit installed mounted assembled put-back bolted reassembled'],
  ['`stored`', 'shelved put-away laid-up kept'],
  ['`sent-out`', 'sent sent-away posted'],
  ['`returned`', 'back came-back'],
  ['`acquired`', 'bought received delivered arrived found'],
  ['`made`', 'fabricated built copied'],
  ['`gone` with `how: scrapped`', 'binned scrapped dumped thrown-away thrown-out discarded'],
  ['`gone` with `how: sold`', 'sold'],
  ['`gone` with `how: given`', 'given given-away donated'],
  ['`gone` with `how: lost`', 'lost mislaid'],
  ['`inspected`', 'checked examined looked-at looked photographed assessed'],
  ['`inspected`, and what was found under `note`', 'broken cracked worn rusted rusty seized bent damaged perished sound good'],
  ['`cleaned`', 'washed degreased blasted bead-blasted derusted brushed scraped'],
  ['`conserved`', 'waxed stabilised stabilized preserved'],
  ['`repaired`', 'mended fixed welded soldered brazed straightened rebuilt overhauled patched'],
  ['`machined`', 'skimmed turned bored honed ground drilled tapped faced'],
  [
    '`refinished`',
    'plated replated chromed nickelled galvanised painted repainted primed sprayed powder-coated lacquered varnished polished',
  ],
  ['`adjusted`', 'set set-up aligned timed shimmed tightened'],
  ['`lubricated`', 'greased oiled packed'],
  ['`tested`', 'tried pressure-tested proved run'],
  ['`marked`', 'labelled tagged stamped numbered'],
  ['`removed` for the old part and `fitted` for the new one, an entry each', 'replaced swapped changed renewed exchanged'],
]);

export const SAID_FOR_ORIGINS = saidFor<(typeof ORIGINS)[number]>([
  ['`original`', 'genuine factory first works'],
  ['`earlier-replacement`', 'replacement replaced old-replacement'],
  ['`donor`', 'spare used secondhand second-hand salvaged scrapyard'],
  ['`new-old-stock`', 'nos old-stock'],
  ['`reproduction`', 'repro replica pattern copy aftermarket remade'],
  ['`new`', 'modern bought fresh'],
  ['`made`', 'fabricated homemade home-made self-made'],
]);

/** On a part of the catalogue, where what is no origin is how it was found. */
export const SAID_FOR_PART_ORIGINS: SaidFor = new Map([
  ...SAID_FOR_ORIGINS,
  ...['missing', 'absent', 'gone', 'lost', 'none'].map(
    (word) => [word, '`found: missing` in place of it: what was not there has no origin'] as const,
  ),
  ...['loose', 'off'].map((word) => [word, '`found: loose` in place of it, or an origin beside that'] as const),
]);

export const SAID_FOR_VERDICTS = saidFor<(typeof VERDICTS)[number]>([
  ['`keep`', 'reuse re-use retain leave refit kept'],
  ['`conserve`', 'preserve stabilise stabilize clean wax conserved'],
  ['`repair`', 'mend fix weld rebuild overhaul straighten repaired'],
  ['`refinish`', 'paint repaint plate replate polish lacquer painted plated refinished'],
  ['`replace`', 'renew swap change bin scrap replaced binned broken'],
  ['`omit`', 'leave-off delete drop omitted'],
  ['`defer`', 'wait later undecided pending deferred'],
]);

export const SAID_FOR_KINDS = saidFor<(typeof ITEM_KINDS)[number]>([
  ['`task`', 'todo to-do job do work'],
  ['`question`', 'ask query find-out unknown research'],
  ['`buy`', 'order purchase need shopping'],
  ['`temporary`', 'temp bodge lash-up bodged'],
]);

export const SAID_FOR_HOW = saidFor<(typeof GONE_HOW)[number]>([
  ['`scrapped`', 'binned dumped thrown-away discarded broken'],
  ['`given`', 'gift donated given-away'],
  ['`returned`', 'back given-back handed-back sent-back refunded'],
  ['`lost`', 'mislaid missing'],
  ['`stolen`', 'theft robbed taken nicked'],
]);

export const SAID_FOR_PASSED = saidFor<(typeof PASSED_HOW)[number]>([
  ['`sold`', 'bought sale purchase'],
  ['`given`', 'gift donated bequeathed inherited left'],
  ['`returned`', 'back delivered handed-back'],
  ['`lent`', 'loan loaned borrowed'],
]);

export const SAID_FOR_RESULTS = saidFor<(typeof RESULTS)[number]>([
  ['`good`', 'fine worked great well excellent'],
  ['`fair`', 'ok okay so-so middling partly'],
  ['`poor`', 'bad failed nothing'],
]);

export const SAID_FOR_BOUGHT = saidFor<(typeof BOUGHT_AS)[number]>([
  ['`outside-work`', 'labour service work plating machining'],
  ['`carriage`', 'postage shipping delivery post'],
  ['`fee`', 'entry licence'],
]);

export const SAID_FOR_HAZARDS = saidFor<(typeof HAZARDS)[number]>([
  ['`lead-paint`', 'lead paint'],
  ['`fuel-vapour`', 'petrol fuel gasoline'],
  ['`hot-work`', 'welding grinding soldering fire'],
  ['`stored-energy`', 'spring springs'],
  ['`lifting`', 'jack jacking stands hoist'],
  ['`battery`', 'acid batteries'],
  ['`oily-rags`', 'rags linseed'],
  ['`exhaust-gas`', 'exhaust fumes'],
]);
