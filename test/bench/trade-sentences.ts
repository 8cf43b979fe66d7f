/**
 * Sentences the notes are made of. `{part}` stands for a linked name, `{store}`, `{bag}`, `{firm}` for
 * where it went. They are long and short, plain and stressed, as evenings are.
 */
export const OPENINGS = [
  'Cold in the shed tonight, but two good hours.',
  'Started late because the lamp had to be rewired first.',
  'A short evening with a clear aim, and for once it was kept to.',
  'Rain on the roof all night and nothing to do but get on.',
  'Two of us on it, which made the lifting *almost* pleasant.',
  'Bench cleared, tea made, and then straight to it.',
  'Picked up where the last evening stopped.',
];

export const REMOVED = [
  '{part} came away after an hour of heat and patience; it went to {store}.',
  '{part} is off. Every fixing was tight, **one has a left-hand thread**, and all of it lies in {store}.',
  'Took {part} off and laid it in {store} the way round it sat.',
  '{part} lifted out once the paint round the edge was cut through. Now in {store}.',
];

export const BAGGED = [
  '{part} came off and went straight into {bag} with its washers on the same sides.',
  'Put {part} in {bag}; the label says which way round they go back.',
];

export const WORKED = [
  '{part} cleaned up better than it looked: sound metal under the dirt.',
  'Spent most of the evening on {part}. The wear is even and the marks are *still legible*.',
  'Under the later paint {part} shows the works finish, so nothing there was rubbed down.',
  '{part} had a crack no longer than a thumbnail, stopped at both ends and closed.',
  'Went over {part} with a stiff brush and spirit, then a second time by daylight lamp.',
];

export const IN_PLACE = [
  'Left {part} where it is and only looked it over; it does not ask for more.',
  '{part} freed, moved through its travel and set again.',
  'A drop of oil for {part}, and a note to look again in a year.',
];

export const FITTED = [
  '{part} went back on, same place, same way round, with its own fixings.',
  'Offered up {part} dry, marked it, then fitted it for good.',
  '{part} is home again. It took three tries and no force.',
];

export const REPLACED = [
  '{part} goes on in its stead, and the old one is kept where anybody may look at it.',
  'Fitted {part} after comparing it with the old one hole by hole.',
];

export const SENT = ['{part} is packed and gone to {firm}.', 'Handed {part} to {firm} with a drawing of what not to touch.'];
export const RETURNED = ['{part} is back from {firm} and looks right.', '{part} returned; {firm} kept to the drawing.'];
export const STORED = ['Moved {part} to {store}, out of the way.', '{part} now lies in {store} with a tag on it.'];

export const BULLETS = [
  'thread chaser through every tapped hole',
  'old grease scraped out and kept in a jar for colour',
  'edges sealed before anything else goes near them',
  'joint faces flat within a sheet of paper',
  'no filler found where filler was expected',
  '~~new washers~~ the old washers, flattened',
  'chalk marks copied on to the tag',
  'a pencil number on the back face, `47` or `41`',
];

export const CLOSINGS = [
  'Swept up, lamp off at a sensible hour.',
  'Next time: the other side, which will know all the tricks of this one.',
  'Nothing bent, nothing lost, nobody hurt.',
  'Left everything under a sheet.',
];

export const REASONS = {
  keep: ['Sound, and it is the one it was built with.', 'Wear is within what the next ten years need.'],
  conserve: ['The old finish is the evidence; it is waxed and left.', 'Surface is stable once it is clean and dry.'],
  repair: ['The damage is local and the rest is good.', 'A patch of like material costs less history than a new piece.'],
  refinish: ['Nothing of the old finish was left to save.', 'Rust was lifting the coat from the edges.'],
  replace: ['Cracked through at the root, beyond mending.', 'Too thin to carry load after cleaning.', 'Bore pitted past honing.'],
  omit: ['A later addition that hides the works finish.'],
  defer: ['Waits until the neighbouring parts are off.', 'Not known yet whether it is the first pattern.'],
} as const;

export const GOES_BACK = ['heads inboard', 'short ones to the front', 'plain washer under the head, spring washer under the nut'];
export const HOLDS = ['2 bolts 5/16 UNF', '2 spring washers', '4 plain washers', '3 slotted nuts', '6 woodscrews no. 10', '1 split pin'];

export const METHODS = [
  'Citric acid bath overnight, then oiled while warm',
  'Dry scraping with a blunt blade',
  'Heat from behind and a drift of soft brass',
  'Steam over a wet cloth until the joint let go',
  'Wire wool and spirit, with the grain',
];

export const ITEMS = {
  task: ['Bleed the circuit again', 'Seal the end grain', 'Set the clearance when warm', 'Copy the lettering before it is covered'],
  question: ['Is the second row of holes from the works?', 'Which way did the clip face?'],
  buy: ['A matched pair of springs', 'Half a square metre of ply', 'A thread insert to suit'],
  temporary: ['Pipe end capped', 'Held by a clamp instead of its bolts', 'Wired round the switch'],
} as const;

export const MEASURES = [
  { what: 'inside diameter', unit: 'in', low: 9000 },
  { what: 'thickness', unit: 'in', low: 180 },
  { what: 'free length', unit: 'in', low: 4250 },
  { what: 'end float', unit: 'mm', low: 120 },
  { what: 'outside diameter', unit: 'mm', low: 28400 },
] as const;
