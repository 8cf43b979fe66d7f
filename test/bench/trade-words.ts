/** The nouns, names and prices of the made-up journal. Nothing here is a real maker, seller or person. */

export interface SubsystemWords {
  readonly id: string;
  readonly name: string;
  readonly nouns: readonly string[];
}

const words = (text: string): readonly string[] => text.split(', ');

export const SUBSYSTEMS: readonly SubsystemWords[] = [
  {
    id: 'frame',
    name: 'Frame and body timber',
    nouns: words(
      'sill, post, cant rail, cross bearer, floor board, bulkhead panel, wheel arch rib, roof hoop, door stile, door rail, corner plate, tie rod, gusset, batten, tread plate, hinge block, lock block, drip moulding, kick board, tail board, partition rail, seat riser, step bracket, body mount, outrigger, knee, packing piece, capping',
    ),
  },
  {
    id: 'brakes',
    name: 'Brakes',
    nouns: words(
      'brake drum, brake shoe, wheel cylinder, splash plate, adjuster, return spring, anchor pin, flexible pipe, pipe clip, tee piece, balance lever, brake rod, clevis, pedal bush, master cylinder, reservoir, hand brake cable, cable guide, quadrant, pawl, equaliser, bleed screw, dust cover, steady post, shoe lining, stop switch, lever return, brake pipe',
    ),
  },
  {
    id: 'electrics',
    name: 'Electrics',
    nouns: words(
      'lamp body, lamp rim, bulb holder, reflector, lamp bracket, junction box, fuse holder, relay, dynamo bracket, brush holder, starter switch, dip switch, horn, horn bracket, ammeter, trafficator, wiper motor, wiper arm, harness clip, grommet, earth strap, battery clamp, battery tray, terminal cover, ignition coil, tail lamp, number plate lamp, panel lamp',
    ),
  },
  {
    id: 'fuel',
    name: 'Fuel',
    nouns: words(
      'fuel tank, tank strap, filler neck, filler cap, fuel pipe, banjo union, fuel tap, sediment bowl, bowl clip, lift pump, pump diaphragm, carburettor body, float, needle valve, main jet, choke lever, throttle spindle, throttle link, manifold, air cleaner, breather, gauge unit, tank drain plug, pipe olive, heat shield, gasket flange, control rod, priming lever',
    ),
  },
  {
    id: 'running-gear',
    name: 'Running gear',
    nouns: words(
      'spring leaf, spring shackle, shackle pin, spring hanger, bump stop, damper, damper link, hub, hub cap, wheel bearing, oil seal, stub axle, king pin, thrust washer, half shaft, axle tube, wheel rim, wheel disc, tyre, valve cover, check strap, rebound plate, U bolt plate, saddle, centre bolt, torque arm, axle stop, grease cup',
    ),
  },
  {
    id: 'steering',
    name: 'Steering',
    nouns: words(
      'drop arm, drag link, track rod, track rod end, steering box, rocker shaft, worm, column tube, column bush, steering wheel, horn push, ball pin, ball cup, dust boot, steering arm, box cover, end plate, shim, lock stop, column clamp, spacer, felt ring, side cover, filler plug, arm key, link spring, joint plug, relay lever',
    ),
  },
  {
    id: 'engine',
    name: 'Engine and gearbox',
    nouns: words(
      'cylinder head, valve, valve spring, valve guide, tappet, push rod, rocker, camshaft, timing wheel, timing cover, piston, gudgeon pin, connecting rod, big end bearing, main bearing, oil pump, sump, oil filter body, flywheel, clutch plate, release fork, gear lever, selector rod, layshaft, speedometer drive, water elbow, exhaust branch, engine mount',
    ),
  },
  {
    id: 'paint',
    name: 'Paint and signwriting',
    nouns: words(
      'side panel, upper panel, lower panel, bonnet top, bonnet side, wing, wing stay, valance, scuttle, door skin, waist moulding, name board, lettered panel, lined panel, roof skin, rain gutter, number plate, grille shell, grille slat, running board, step plate, splash apron, louvre panel, catch plate, bead, finisher, cover strip, cowl',
    ),
  },
  {
    id: 'trim',
    name: 'Trim and fittings',
    nouns: words(
      'seat base, squab, seat frame, floor mat, door card, door handle, window lift, window channel, glass, glass seal, draught strip, check strap, lock, striker, escutcheon, hinge, bread tray, tray runner, tray stop, coat hook, grab handle, visor, mirror, parcel shelf, roof lining, lining batten, kick plate, ash tray',
    ),
  },
];

export const PLACES: readonly { readonly id: string; readonly says: string }[] = [
  { id: 'front-near', says: 'front nearside' },
  { id: 'front-off', says: 'front offside' },
  { id: 'rear-near', says: 'rear nearside' },
  { id: 'rear-off', says: 'rear offside' },
  { id: 'upper', says: 'upper' },
  { id: 'lower', says: 'lower' },
  { id: 'inner', says: 'inner' },
  { id: 'outer', says: 'outer' },
];

export const FASTENERS = words('bolts, studs, nuts, woodscrews, clips, split pins, rivets, washers');
export const STORES = words('shelf A1, shelf A2, shelf B1, shelf B2, loft, under the bench, timber rack, tin box');
export const FIRMS = words('the brake works, the plater, the spring smith, the machine shop, the trimmer, the radiator man');
export const SELLERS = words('a breaker, an autojumble, a small advertisement, the ironmonger, a stockist, a friend');
export const FINISHES = words('bare iron, black enamel, cream over grey primer, galvanised, varnish, dull nickel, brush-painted green');
export const PEOPLE = ['rh', 'jm', 'tw'] as const;

export const MILESTONES: readonly { readonly id: string; readonly name: string }[] = [
  { id: 'stripped', name: 'Stripped to the frame' },
  { id: 'frame-sound', name: 'Frame sound again' },
  { id: 'first-start', name: 'First start' },
  { id: 'first-movement', name: 'First movement' },
  { id: 'road-test', name: 'Road test' },
  { id: 'hand-over', name: 'Hand-over' },
];

export interface ConsumableWords {
  readonly id: string;
  readonly name: string;
  /** The unit of its stock, and the smaller one the notes use it in; `perUnit` of the smaller make one. */
  readonly unit: 'L' | 'kg' | 'm';
  readonly small: 'ml' | 'g' | 'cm';
  readonly perUnit: 1000 | 100;
  readonly hazards: readonly string[];
  /** Minor units of money for one unit. */
  readonly price: number;
}

const liquid = { unit: 'L', small: 'ml', perUnit: 1000 } as const;
const solid = { unit: 'kg', small: 'g', perUnit: 1000 } as const;
const strip = { unit: 'm', small: 'cm', perUnit: 100 } as const;

export const CONSUMABLES: readonly ConsumableWords[] = [
  { id: 'white-spirit', name: 'White spirit', ...liquid, hazards: ['H226', 'H304'], price: 350 },
  { id: 'brake-cleaner', name: 'Brake cleaner', ...liquid, hazards: ['H225', 'H319', 'H336'], price: 480 },
  { id: 'penetrating-oil', name: 'Penetrating oil', ...liquid, hazards: ['H304'], price: 1290 },
  { id: 'engine-oil', name: 'Engine oil', ...liquid, hazards: [], price: 620 },
  { id: 'linseed-oil', name: 'Boiled linseed oil', ...liquid, hazards: [], price: 840 },
  { id: 'primer', name: 'Red oxide primer', ...liquid, hazards: ['H226'], price: 1650 },
  { id: 'enamel', name: 'Coach enamel', ...liquid, hazards: ['H226', 'H336'], price: 2840 },
  { id: 'citric-acid', name: 'Citric acid', ...solid, hazards: ['H319'], price: 560 },
  { id: 'grease', name: 'Lithium grease', ...solid, hazards: [], price: 890 },
  { id: 'wax', name: 'Microcrystalline wax', ...solid, hazards: [], price: 4310 },
  { id: 'filler', name: 'Stopping', ...solid, hazards: ['H319'], price: 1175 },
  { id: 'abrasive', name: 'Abrasive cloth', ...strip, hazards: [], price: 265 },
  { id: 'masking', name: 'Masking tape', ...strip, hazards: [], price: 12 },
  { id: 'welt', name: 'Waxed welt', ...strip, hazards: [], price: 310 },
];
