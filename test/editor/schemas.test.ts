import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { jsonSchemaOf } from '../../src/editor/schemas/json-schema.ts';
import { schemaTexts } from '../../src/editor/schemas/schema-files.ts';
import { kindOfFile } from '../../src/journal/read/file-kinds.ts';
import { decisive } from '../../src/journal/schema/facts.ts';
import { fields, manyOf, maybe, oneOf, text } from '../../src/journal/schema/fields.ts';
import { loadJournal } from '../../src/load/load.ts';
import { run } from '../cli/run.ts';
import { note } from '../journal/base.ts';
import { FILES_AND_YAML } from '../journal/cases/files-and-yaml.ts';
import { MONEY } from '../journal/cases/money.ts';
import { folderWith } from '../load/folder.ts';

// JSON Schema 2020-12 by ajv, a validator of its own; YAML 1.2 by the yaml package, in its core schema and as text alone.
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
const VALIDATORS = new Map([...schemaTexts()].map(([name, written]) => [name, ajv.compile(JSON.parse(written))]));

const validator = (kind: string): ValidateFunction => {
  const found = VALIDATORS.get(`${kind}.schema.json`);
  if (!found) throw new Error(`no schema of ${kind}`);
  return found;
};

/** The YAML of a file as other programs read it, as JSON, of which a JSON Schema speaks. */
function jsonOf(written: string, path: string, schema: 'core' | 'failsafe'): unknown {
  const yaml = kindOfFile(path) === 'note' ? (/^---\n([\s\S]*?)\n---/.exec(written)?.[1] ?? '{}') : written;
  return JSON.parse(JSON.stringify(parse(yaml, { schema })));
}

function faultsOf(written: string, path: string, schema: 'core' | 'failsafe' = 'core'): string[] {
  const validate = validator(kindOfFile(path));
  return validate(jsonOf(written, path, schema))
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${path}${instancePath} ${message}`);
}

const demo = loadJournal(fileURLToPath(new URL('../../content', import.meta.url))).files.filter(
  ({ path }) => !['drawing', 'statement'].includes(kindOfFile(path)),
);

describe('every file of the demo is sound by its schema', () => {
  test.each(['core', 'failsafe'] as const)('read by the %s schema of YAML', (schema) => {
    expect(demo.flatMap(({ path, bytes }) => faultsOf(new TextDecoder().decode(bytes), path, schema))).toEqual([]);
  });
});

describe('what is written otherwise and read as meant is sound too', () => {
  test.each([
    'hours: 2h',
    'hours: { by: rh, on: brakes, time: 19:10-21:40 }',
    'parts: { part: [drum, studs], did: Sent Out, to: a plater }',
    'decisions:\n  - { part: drum, verdict: KEEP }',
    'emptied: 11',
    'sold:\n  - { what: rims, price: 12 }',
    'parts:\n  - { part: drum, as-was: yes, condition: 2 }',
  ])('%s', (written) => {
    expect(faultsOf(note(written), 'sessions/a.md')).toEqual([]);
  });
});

describe('a fault of the form is one by the schema', () => {
  const ofForm = [...FILES_AND_YAML, ...MONEY].filter(({ code, note: fields }) => ['A301', 'A304'].includes(code) && fields !== undefined);
  test('there are such cases', () => expect(ofForm.length).toBeGreaterThan(2));
  test.each(ofForm.map((each) => [`${each.code}: ${each.shows}`, note(each.note ?? '')] as const))('%s', (_, written) => {
    expect(faultsOf(written, 'sessions/a.md')).not.toEqual([]);
  });
  test.each(['date: 2031-03-12', 'title: [a, b]\ndate: 2031-03-12', 'date: 2031-03-12\ntitle: x\nparts:\n  - { did: removed }'])(
    '%s',
    (written) => {
      expect(faultsOf(`---\n${written}\n---\n`, 'sessions/a.md')).not.toEqual([]);
    },
  );
});

test('a field that is new to the format is in its schema by itself', () => {
  const schema = fields({ title: text, weather: maybe(text), tools: manyOf(oneOf(['hammer', 'file'])), 'put-away': decisive(maybe(text)) });
  const validate = ajv.compile(jsonSchemaOf(schema, 'A note'));
  expect(validate({ title: 1, weather: 'rain', tools: 'File', 'put-away': true })).toBe(true);
  expect(validate({ title: 'x', tools: ['hammer', 'saw'] })).toBe(false);
  expect(validate({ title: 'x', 'weather!': 'rain' })).toBe(false);
  expect(z.safeParse(schema, { title: '1', weather: 'rain', tools: 'File' }).success).toBe(true);
});

describe('asfound schema', () => {
  test('init writes the schemas where check does not look, and schema makes them anew', async () => {
    const cwd = folderWith({});
    expect((await run(['init', 'van'], { cwd })).exit).toBe(0);
    const folder = join(cwd, 'van', '.schemas');
    expect(readdirSync(folder).sort()).toEqual([...schemaTexts().keys()].sort());
    expect(await run(['check', '--content', 'van'], { cwd })).toMatchObject({ exit: 0, err: expect.stringContaining('no errors') });
    const written = readFileSync(join(folder, 'note.schema.json'), 'utf8');
    writeFileSync(join(folder, 'note.schema.json'), written.replace('"title"', '"titel"'));
    expect((await run(['schema', '--content', 'van'], { cwd })).exit).toBe(0);
    expect(readFileSync(join(folder, 'note.schema.json'), 'utf8')).toBe(written);
  });

  test("a file of the user's of that name is left as it is, and nothing is written", async () => {
    const cwd = folderWith({ 'there/parts.schema.json': '{}' });
    const { exit, err } = await run(['schema', '--out', 'there'], { cwd });
    expect(exit).toBe(3);
    expect(err).toContain('parts.schema.json is there already');
    expect(readdirSync(join(cwd, 'there'))).toEqual(['parts.schema.json']);
  });
});
