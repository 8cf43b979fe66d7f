/** Linked data read by a JSON-LD processor that did not write it (jsonld), against CIDOC CRM 7.1.2: the classes and properties named in the test. */
import jsonld from 'jsonld';
import { describe, expect, test } from 'vitest';
import { linkedData } from '../../src/exports/linked-data.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';

const CRM = 'http://www.cidoc-crm.org/cidoc-crm/';
const RECORD = compileFiles({
  more: {
    [NOTE]: note(`hours: [{ by: rh, on: brakes, time: 1h }]
parts:
  - { part: drum, did: [removed, cleaned, inspected], to: shelf B2, condition: 2, note: Scored. }
  - { part: drum-donor, did: fitted }
  - { part: drum, did: sent-out, to: a turner }
used: [{ consumable: brake-cleaner, amount: 100 ml, on: brakes }]`),
  },
}).record as JournalRecord;

/** Triples as `subject predicate object`, names of the model without their address. */
async function triplesOf(record: JournalRecord): Promise<string[]> {
  const nquads = String(
    await jsonld.toRDF(linkedData(record) as object, { base: 'https://example.org/van.jsonld', format: 'application/n-quads' }),
  );
  return nquads
    .trim()
    .split('\n')
    .map((line) => line.replaceAll(`<${CRM}`, '<').replaceAll('https://example.org/van.jsonld', '').replace(/ \.$/, ''));
}

describe('the record as linked data', () => {
  test('says by the classes of the model what was added, removed, modified, judged and handed over, when and by whom', async () => {
    const triples = (await triplesOf(RECORD)).join('\n');
    const types = [...triples.matchAll(/22-rdf-syntax-ns#type> <(E\d+)_/g)].map(([, type]) => type);
    expect([...new Set(types)].sort()).toEqual(
      expect.arrayContaining(['E10', 'E11', 'E14', 'E21', 'E22', 'E52', 'E53', 'E57', 'E7', 'E79', 'E80']),
    );
    expect(triples).toMatch(/<P113_removed> <#part-drum>/);
    expect(triples).toMatch(/<P111_added> <#part-drum-donor>/);
    expect(triples).toMatch(/<P110_augmented> <#vehicle>/);
    expect(triples).toMatch(/<P31_has_modified> <#part-drum>/);
    expect(triples).toMatch(/<P126_employed> <#material-brake-cleaner>/);
    expect(triples).toMatch(/<P35_has_identified> <#condition-class-2>/);
    expect(triples).toMatch(/<P29_custody_received_by> <#firm-a%20turner>/);
    expect(triples).toMatch(/<P14_carried_out_by> <#person-rh>/);
    expect(triples).toMatch(/<P82a_begin_of_the_begin> "2031-03-12"\^\^<http:\/\/www.w3.org\/2001\/XMLSchema#date>/);
  });

  test('says of a part what is believed of its origin by the record’s day, not what the catalogue once said', async () => {
    const later = compileFiles({
      more: { [NOTE]: note('attributed: [{ part: drum, origin: earlier-replacement, because: Cast in 1960. }]') },
    }).record as JournalRecord;
    const triples = (await triplesOf(later)).filter((triple) => triple.startsWith('<#part-drum> <P2_has_type>'));
    expect(triples.join()).toContain('earlier-replacement');
    expect(triples.join()).not.toContain('original');
  });

  test('of a copy without names nobody is said to have done all of it, and no firm to have had all that went out', async () => {
    const triples = (await triplesOf(copyOf(RECORD, 'public'))).join('\n');
    expect(triples).not.toMatch(/P14_carried_out_by|P29_custody_received_by|E21_Person|somebody|a%20firm|The workshop/);
    expect(triples).toMatch(/E10_Transfer_of_Custody/);
  });

  test('no name in it is lost: every one is a term of the profile', async () => {
    const document = linkedData(RECORD) as { '@context': object; '@graph': object[] };
    const terms = new Set(Object.keys(document['@context']));
    const names = new Set<string>();
    JSON.stringify(document['@graph'], (name, value) => {
      if (name !== '' && !/^\d+$/.test(name)) names.add(name);
      return value;
    });
    expect([...names].filter((name) => !terms.has(name))).toEqual([]);
  });

  test('a copy without people, marks and stores names none of them', async () => {
    const journal = {
      ...RECORD.journal,
      settings: {
        ...RECORD.journal.settings,
        copies: new Map([['bare', { leaveOut: ['people', 'marks', 'stores'] as const, maySay: [] }]]),
      },
    };
    const said = JSON.stringify(linkedData(copyOf({ ...RECORD, journal }, 'bare')));
    expect(said).not.toMatch(/Ruth|shelf B2|a turner/);
  });
});
