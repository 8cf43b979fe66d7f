/**
 * The record as linked data: JSON-LD 1.1 in the terms of the CIDOC Conceptual Reference Model 7.1.2. A small profile:
 * the vehicle and its parts, what was added, removed, modified, judged and moved, by whom and when.
 */
import type { ActionWord, IsoDate, Journal, PartId, SessionId, Whereabouts } from '../journal/model.ts';
import type { Deed, JournalRecord } from '../journal/record.ts';
import { goesAlong, keepings } from '../journal/registers/keepers.ts';
import { observationsOf } from '../journal/registers/observations.ts';
import { originAt } from '../journal/registers/origins.ts';
import { offVehicleAt } from '../journal/registers/stores.ts';
import { once } from '../journal/values/once.ts';
import type { Json } from './record-json.ts';

type Node = { readonly [name: string]: Json };

/** Terms of the profile; every other name in the document is one of these. */
const CONTEXT: Node = {
  '@version': 1.1,
  crm: 'http://www.cidoc-crm.org/cidoc-crm/',
  xsd: 'http://www.w3.org/2001/XMLSchema#',
  rdfs: 'http://www.w3.org/2000/01/rdf-schema#',
  id: '@id',
  type: '@type',
  label: 'rdfs:label',
  note: 'crm:P3_has_note',
  kind: 'crm:P2_has_type',
  identifiedBy: 'crm:P1_is_identified_by',
  composedOf: { '@id': 'crm:P46_is_composed_of', '@type': '@id' },
  timeSpan: 'crm:P4_has_time-span',
  began: { '@id': 'crm:P82a_begin_of_the_begin', '@type': 'xsd:date' },
  ended: { '@id': 'crm:P82b_end_of_the_end', '@type': 'xsd:date' },
  carriedOutBy: { '@id': 'crm:P14_carried_out_by', '@type': '@id' },
  partOf: { '@id': 'crm:P9i_forms_part_of', '@type': '@id' },
  augmented: { '@id': 'crm:P110_augmented', '@type': '@id' },
  added: { '@id': 'crm:P111_added', '@type': '@id' },
  diminished: { '@id': 'crm:P112_diminished', '@type': '@id' },
  removed: { '@id': 'crm:P113_removed', '@type': '@id' },
  modified: { '@id': 'crm:P31_has_modified', '@type': '@id' },
  employed: { '@id': 'crm:P126_employed', '@type': '@id' },
  moved: { '@id': 'crm:P25_moved', '@type': '@id' },
  movedFrom: { '@id': 'crm:P27_moved_from', '@type': '@id' },
  movedTo: { '@id': 'crm:P26_moved_to', '@type': '@id' },
  concerned: { '@id': 'crm:P34_concerned', '@type': '@id' },
  identified: { '@id': 'crm:P35_has_identified', '@type': '@id' },
  custodyOf: { '@id': 'crm:P30_transferred_custody_of', '@type': '@id' },
  surrenderedBy: { '@id': 'crm:P28_custody_surrendered_by', '@type': '@id' },
  receivedBy: { '@id': 'crm:P29_custody_received_by', '@type': '@id' },
};

const VEHICLE = '#vehicle';
const WORK: ReadonlySet<ActionWord> = new Set([
  'cleaned',
  'conserved',
  'repaired',
  'machined',
  'refinished',
  'adjusted',
  'lubricated',
  'marked',
  'made',
]);

/** @returns a JSON-LD document; ids are fragments of wherever it lies */
export function linkedData(record: JournalRecord): { readonly [name: string]: Json } {
  const { journal, history } = record;
  const named = namesAnybody(record);
  const used = new Map<SessionId, Set<string>>();
  for (const { id, methods, used: stuff } of journal.sessions) {
    used.set(id, new Set([...methods.flatMap((method) => method.with), ...stuff.map(({ consumable }) => consumable)]));
  }
  return {
    '@context': CONTEXT,
    '@graph': [
      vehicleNode(record),
      ...(named ? [...journal.people.values()] : []).map(({ id, name }) => ({ id: person(id), type: 'crm:E21_Person', label: name })),
      ...unnamedKeepers(record),
      ...journal.stores.map((name) => ({ id: store(name), type: 'crm:E53_Place', label: name })),
      ...[...journal.consumables.values()].map(({ id, name }) => ({ id: material(id), type: 'crm:E57_Material', label: name })),
      ...[...journal.parts.keys()].map((id) => partNode(record, id)),
      ...journal.sessions.map((session) => ({
        id: sitting(session.id),
        type: 'crm:E7_Activity',
        label: session.title,
        timeSpan: span(session.date),
        ...some('carriedOutBy', named ? [...new Set(session.hours.map(({ by }) => person(by)))] : []),
      })),
      ...history.deeds.flatMap((deed, n) => deedNodes(deed, n, [...(used.get(deed.session) ?? [])], named)),
      ...handOverNodes(record),
      ...[...journal.parts.keys()].flatMap((id) => assessments(record, id)),
    ],
  };
}

function vehicleNode({ journal }: JournalRecord): Node {
  const { title, vehicle } = journal.settings;
  return {
    id: VEHICLE,
    type: 'crm:E22_Human-Made_Object',
    label: title,
    note: [vehicle.year, vehicle.make, vehicle.model].filter((one) => one !== null).join(' '),
    ...some(
      'identifiedBy',
      vehicle.marks.map(({ what, mark }) => ({ type: 'crm:E42_Identifier', label: mark, kind: what })),
    ),
    composedOf: [...journal.positions.keys()].filter((id) => journal.parts.get(id)?.inside === null).map(thing),
  };
}

/** The positions in each part, by it. */
const insideParts = once(({ positions, parts }: Journal) =>
  Map.groupBy(positions.keys(), (position) => parts.get(position)?.inside ?? null),
);

function partNode(record: JournalRecord, id: PartId): Node {
  const { journal, day } = record;
  const origin = originAt(record, id, day);
  const part = journal.parts.get(id);
  const inside = insideParts(journal).get(id) ?? [];
  return {
    id: thing(id),
    type: 'crm:E22_Human-Made_Object',
    label: part?.name ?? id,
    ...(origin === null ? {} : { kind: origin }),
    ...(part?.marks == null ? {} : { identifiedBy: { type: 'crm:E42_Identifier', label: part.marks } }),
    ...(inside.length === 0 ? {} : { composedOf: inside.map(thing) }),
  };
}

function deedNodes(deed: Deed, n: number, materials: readonly string[], named: boolean): Node[] {
  const common = {
    id: `#deed-${n + 1}`,
    timeSpan: span(deed.date),
    partOf: sitting(deed.session),
    ...(deed.entry.note === null ? {} : { note: deed.entry.note }),
  };
  const part = thing(deed.part);
  if (deed.did === 'fitted') return [{ ...common, type: 'crm:E79_Part_Addition', augmented: VEHICLE, added: part }];
  if (deed.did === 'removed') return [{ ...common, type: 'crm:E80_Part_Removal', diminished: VEHICLE, removed: part }];
  if (deed.did === 'sent-out' && deed.to.at === 'out')
    return [{ ...common, type: 'crm:E10_Transfer_of_Custody', custodyOf: part, ...(named ? { receivedBy: firm(deed.to.firm) } : {}) }];
  if (deed.did === 'returned' && deed.from.at === 'out')
    return [{ ...common, type: 'crm:E10_Transfer_of_Custody', custodyOf: part, ...(named ? { surrenderedBy: firm(deed.from.firm) } : {}) }];
  if (deed.did === 'stored')
    return [{ ...common, type: 'crm:E9_Move', moved: part, ...placed('movedFrom', deed.from), ...placed('movedTo', deed.to) }];
  if (WORK.has(deed.did)) {
    return [
      {
        ...common,
        type: 'crm:E11_Modification',
        kind: deed.did,
        modified: part,
        ...(materials.length === 0 ? {} : { employed: materials.map(material) }),
      },
    ];
  }
  return [];
}

/** In a copy without names all who worked are as one, and so are all firms: who did what is not said there, as nobody did all of it. */
const namesAnybody = ({ copy }: Pick<JournalRecord, 'copy'>): boolean => !copy.leavesOut.includes('people');

/** What there is some of; of nothing nothing is said. */
const some = (name: string, all: readonly Json[]): Node => (all.length === 0 ? {} : { [name]: all });

/** Keepers of a copy without names are told apart by number. */
function unnamedKeepers(record: JournalRecord): Node[] {
  const ids = new Set(keepings(record).flatMap(({ keeper }) => (keeper === null || record.journal.people.has(keeper) ? [] : [keeper])));
  return [...ids].map((id) => ({ id: person(id), type: 'crm:E21_Person', label: id.replaceAll('-', ' ') }));
}

/** Custody of the whole vehicle, and of what off it went along. */
function handOverNodes(record: JournalRecord): Node[] {
  return keepings(record).flatMap(({ keeper, by }, n) => {
    if (by === null) return [];
    const along = offVehicleAt(record, by.session.date).filter(({ part, where }) =>
      where.at === 'stores' || where.at === 'bag' ? goesAlong(record, part, by) : false,
    );
    return [
      {
        id: `#hand-over-${n}`,
        type: 'crm:E10_Transfer_of_Custody',
        kind: by.entry.how,
        timeSpan: span(by.session.date),
        partOf: sitting(by.session.id),
        custodyOf: [VEHICLE, ...new Set(along.map(({ part }) => thing(part)))],
        ...(by.from === null ? {} : { surrenderedBy: person(by.from) }),
        ...(keeper === null ? {} : { receivedBy: person(keeper) }),
        ...(by.entry.note === null ? {} : { note: by.entry.note }),
      },
    ];
  });
}

function placed(name: 'movedFrom' | 'movedTo', where: Whereabouts): Node {
  return where.at === 'stores' && where.store !== null ? { [name]: store(where.store) } : {};
}

/** Condition classes as they were given: EN 16096, by analogy. */
function assessments(record: JournalRecord, id: PartId): Node[] {
  return observationsOf(record, id).flatMap((seen, n) => {
    if (seen.entry.condition === null) return [];
    return [
      {
        id: `#condition-${id}-${n + 1}`,
        type: 'crm:E14_Condition_Assessment',
        timeSpan: span(seen.date),
        concerned: thing(id),
        identified: `#condition-class-${seen.entry.condition}`,
      },
    ];
  });
}

const span = (date: IsoDate): Node => ({ type: 'crm:E52_Time-Span', began: date, ended: date });
const named = (kind: string) => (id: string) => `#${kind}-${encodeURIComponent(id)}`;
const [thing, person, store, material, sitting, firm] = ['part', 'person', 'store', 'material', 'session', 'firm'].map(named) as [
  (id: string) => string,
  (id: string) => string,
  (id: string) => string,
  (id: string) => string,
  (id: string) => string,
  (id: string) => string,
];
