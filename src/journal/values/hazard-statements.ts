/**
 * Hazard statements by code, and their words.
 *
 * Sources: UN GHS, tenth revised edition (2023), annex 3, section 1, in its own spelling; for suffixed codes, EUH
 * statements and the spelling of the European Union and the United Kingdom, Regulation (EC) No 1272/2008 (CLP), annexes
 * III and VI, with Delegated Regulation (EU) 2023/707. The GHS list was read in a copy; the words of CLP are from memory, checked against copies.
 */

/** An edition that the words of a statement are of. */
export const STATEMENT_EDITIONS =
  'GHS, tenth revised edition (2023), annex 3; suffixed and EUH statements: Regulation (EC) No 1272/2008 (CLP), annexes III and VI, as amended in 2023';

const PHYSICAL: readonly (readonly [string, string])[] = [
  ['H200', 'Unstable explosive'],
  ['H201', 'Explosive; mass explosion hazard'],
  ['H202', 'Explosive; severe projection hazard'],
  ['H203', 'Explosive; fire, blast or projection hazard'],
  ['H204', 'Fire or projection hazard'],
  ['H205', 'May mass explode in fire'],
  ['H206', 'Fire, blast or projection hazard; increased risk of explosion if desensitizing agent is reduced'],
  ['H207', 'Fire or projection hazard; increased risk of explosion if desensitizing agent is reduced'],
  ['H208', 'Fire hazard; increased risk of explosion if desensitizing agent is reduced'],
  ['H209', 'Explosive'],
  ['H210', 'Very sensitive'],
  ['H211', 'May be sensitive'],
  ['H220', 'Extremely flammable gas'],
  ['H221', 'Flammable gas'],
  ['H222', 'Extremely flammable aerosol'],
  ['H223', 'Flammable aerosol'],
  ['H224', 'Extremely flammable liquid and vapour'],
  ['H225', 'Highly flammable liquid and vapour'],
  ['H226', 'Flammable liquid and vapour'],
  ['H227', 'Combustible liquid'],
  ['H228', 'Flammable solid'],
  ['H229', 'Pressurized container: may burst if heated'],
  ['H230', 'May react explosively even in the absence of air'],
  ['H231', 'May react explosively even in the absence of air at elevated pressure and/or temperature'],
  ['H232', 'May ignite spontaneously if exposed to air'],
  ['H240', 'Heating may cause an explosion'],
  ['H241', 'Heating may cause a fire or explosion'],
  ['H242', 'Heating may cause a fire'],
  ['H250', 'Catches fire spontaneously if exposed to air'],
  ['H251', 'Self-heating: may catch fire'],
  ['H252', 'Self-heating in large quantities: may catch fire'],
  ['H260', 'In contact with water releases flammable gases which may ignite spontaneously'],
  ['H261', 'In contact with water releases flammable gas'],
  ['H270', 'May cause or intensify fire; oxidizer'],
  ['H271', 'May cause fire or explosion; strong oxidizer'],
  ['H272', 'May intensify fire; oxidizer'],
  ['H280', 'Contains gas under pressure; may explode if heated'],
  ['H281', 'Contains refrigerated gas; may cause cryogenic burns or injury'],
  ['H282', 'Extremely flammable chemical under pressure: may explode if heated'],
  ['H283', 'Flammable chemical under pressure: may explode if heated'],
  ['H284', 'Chemical under pressure: may explode if heated'],
  ['H290', 'May be corrosive to metals'],
];

const HEALTH: readonly (readonly [string, string])[] = [
  ['H304', 'May be fatal if swallowed and enters airways'],
  ['H305', 'May be harmful if swallowed and enters airways'],
  ['H314', 'Causes severe skin burns and eye damage'],
  ['H315', 'Causes skin irritation'],
  ['H315+H320', 'Causes skin and eye irritation'],
  ['H316', 'Causes mild skin irritation'],
  ['H317', 'May cause an allergic skin reaction'],
  ['H318', 'Causes serious eye damage'],
  ['H319', 'Causes serious eye irritation'],
  ['H320', 'Causes eye irritation'],
  ['H334', 'May cause allergy or asthma symptoms or breathing difficulties if inhaled'],
  ['H335', 'May cause respiratory irritation'],
  ['H336', 'May cause drowsiness or dizziness'],
  ['H340', 'May cause genetic defects'],
  ['H341', 'Suspected of causing genetic defects'],
  ['H350', 'May cause cancer'],
  ['H350i', 'May cause cancer by inhalation'],
  ['H351', 'Suspected of causing cancer'],
  ['H360', 'May damage fertility or the unborn child'],
  ['H360F', 'May damage fertility'],
  ['H360D', 'May damage the unborn child'],
  ['H360FD', 'May damage fertility. May damage the unborn child'],
  ['H360Fd', 'May damage fertility. Suspected of damaging the unborn child'],
  ['H360Df', 'May damage the unborn child. Suspected of damaging fertility'],
  ['H361', 'Suspected of damaging fertility or the unborn child'],
  ['H361f', 'Suspected of damaging fertility'],
  ['H361d', 'Suspected of damaging the unborn child'],
  ['H361fd', 'Suspected of damaging fertility. Suspected of damaging the unborn child'],
  ['H362', 'May cause harm to breast-fed children'],
  ['H370', 'Causes damage to organs'],
  ['H371', 'May cause damage to organs'],
  ['H372', 'Causes damage to organs through prolonged or repeated exposure'],
  ['H373', 'May cause damage to organs through prolonged or repeated exposure'],
];

const ENVIRONMENT: readonly (readonly [string, string])[] = [
  ['H400', 'Very toxic to aquatic life'],
  ['H401', 'Toxic to aquatic life'],
  ['H402', 'Harmful to aquatic life'],
  ['H410', 'Very toxic to aquatic life with long lasting effects'],
  ['H411', 'Toxic to aquatic life with long lasting effects'],
  ['H412', 'Harmful to aquatic life with long lasting effects'],
  ['H413', 'May cause long lasting harmful effects to aquatic life'],
  ['H420', 'Harms public health and the environment by destroying ozone in the upper atmosphere'],
];

/** Of the European Union only. Those of the last rows of old labels (EUH001, 006, 059) are no longer given to new ones. */
const EUH: readonly (readonly [string, string])[] = [
  ['EUH001', 'Explosive when dry'],
  ['EUH006', 'Explosive with or without contact with air'],
  ['EUH014', 'Reacts violently with water'],
  ['EUH018', 'In use may form flammable/explosive vapour-air mixture'],
  ['EUH019', 'May form explosive peroxides'],
  ['EUH029', 'Contact with water liberates toxic gas'],
  ['EUH031', 'Contact with acids liberates toxic gas'],
  ['EUH032', 'Contact with acids liberates very toxic gas'],
  ['EUH044', 'Risk of explosion if heated under confinement'],
  ['EUH059', 'Hazardous to the ozone layer'],
  ['EUH066', 'Repeated exposure may cause skin dryness or cracking'],
  ['EUH070', 'Toxic by eye contact'],
  ['EUH071', 'Corrosive to the respiratory tract'],
  ['EUH201', 'Contains lead. Should not be used on surfaces liable to be chewed or sucked by children'],
  ['EUH201A', 'Warning! Contains lead'],
  ['EUH202', 'Cyanoacrylate. Danger. Bonds skin and eyes in seconds. Keep out of the reach of children'],
  ['EUH203', 'Contains chromium (VI). May produce an allergic reaction'],
  ['EUH204', 'Contains isocyanates. May produce an allergic reaction'],
  ['EUH205', 'Contains epoxy constituents. May produce an allergic reaction'],
  ['EUH206', 'Warning! Do not use together with other products. May release dangerous gases (chlorine)'],
  [
    'EUH207',
    'Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions',
  ],
  ['EUH208', 'Contains a sensitising substance, named on the label. May produce an allergic reaction'],
  ['EUH209', 'Can become highly flammable in use'],
  ['EUH209A', 'Can become flammable in use'],
  ['EUH210', 'Safety data sheet available on request'],
  ['EUH211', 'Warning! Hazardous respirable droplets may be formed when sprayed. Do not breathe spray or mist'],
  ['EUH212', 'Warning! Hazardous respirable dust may be formed when used. Do not breathe dust'],
  ['EUH380', 'May cause endocrine disruption in humans'],
  ['EUH381', 'Suspected of causing endocrine disruption in humans'],
  ['EUH401', 'To avoid risks to human health and the environment, comply with the instructions for use'],
  ['EUH430', 'May cause endocrine disruption in the environment'],
  ['EUH431', 'Suspected of causing endocrine disruption in the environment'],
  ['EUH440', 'Accumulates in the environment and living organisms including in humans'],
  ['EUH441', 'Strongly accumulates in the environment and living organisms including in humans'],
  ['EUH450', 'Can cause long-lasting and diffuse contamination of water resources'],
  ['EUH451', 'Can cause very long-lasting and diffuse contamination of water resources'],
];

/** Acute toxicity: how bad, and the last digit of its three codes. Statements of one row are combined by way into the body. */
const ACUTE: readonly (readonly [string, number])[] = [
  ['Fatal', 0],
  ['Toxic', 1],
  ['Harmful', 2],
  ['May be harmful', 3],
];

function acuteToxicity(): (readonly [string, string])[] {
  return ACUTE.flatMap(([how, digit]) => {
    const [mouth, skin, lungs] = [`H30${digit}`, `H31${digit}`, `H33${digit}`];
    return [
      [mouth, `${how} if swallowed`],
      [skin, `${how} in contact with skin`],
      [lungs, `${how} if inhaled`],
      [`${mouth}+${skin}`, `${how} if swallowed or in contact with skin`],
      [`${mouth}+${lungs}`, `${how} if swallowed or if inhaled`],
      [`${skin}+${lungs}`, `${how} in contact with skin or if inhaled`],
      [`${mouth}+${skin}+${lungs}`, `${how} if swallowed, in contact with skin or if inhaled`],
    ] as const;
  });
}

/** Every code with its words, combined ones too. */
export const HAZARD_STATEMENTS: ReadonlyMap<string, string> = new Map([...PHYSICAL, ...HEALTH, ...acuteToxicity(), ...ENVIRONMENT, ...EUH]);

/** What the CLP Regulation spells or words otherwise than the GHS. */
const CLP_WORDS: ReadonlyMap<string, string> = new Map([
  ['H206', 'Fire, blast or projection hazard; increased risk of explosion if desensitising agent is reduced'],
  ['H207', 'Fire or projection hazard; increased risk of explosion if desensitising agent is reduced'],
  ['H208', 'Fire hazard; increased risk of explosion if desensitising agent is reduced'],
  ['H229', 'Pressurised container: May burst if heated'],
  ['H261', 'In contact with water releases flammable gases'],
  ['H270', 'May cause or intensify fire; oxidiser'],
  ['H271', 'May cause fire or explosion; strong oxidiser'],
  ['H272', 'May intensify fire; oxidiser'],
]);

/** A code as it is listed: without spaces, its parts in order of number. Letters stay as they are: H360FD and H360Fd are two. */
export function statementCode(written: string): string {
  return written.replace(/\s+/g, '').split('+').sort().join('+');
}

/**
 * The words of a statement, with those of the CLP Regulation where they are others.
 *
 * @param code as `statementCode` gives it; a combination that is not listed has the words of its parts
 * @returns null for a code that is not known
 */
export function statementWords(code: string): { readonly words: string; readonly clp: string | null } | null {
  const listed = HAZARD_STATEMENTS.get(code);
  if (listed !== undefined) return { words: listed, clp: CLP_WORDS.get(code) ?? null };
  const parts = code.split('+').map((part) => HAZARD_STATEMENTS.get(part));
  return parts.length > 1 && parts.every((part) => part !== undefined) ? { words: parts.join('. '), clp: null } : null;
}
