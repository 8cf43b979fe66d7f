import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

/** What each folder of src may import of the others; itself always. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  journal: [],
  disk: [],
  load: ['journal'],
  editor: ['journal', 'disk', 'load', 'site/views'],
  photos: ['journal', 'disk'],
  markdown: ['journal', 'disk', 'photos', 'site/addresses.ts'],
  exports: ['journal'],
  site: ['journal', 'disk', 'load', 'markdown', 'photos', 'exports'],
  book: ['journal', 'photos', 'exports', 'site'],
  components: ['journal', 'site', 'photos', 'layouts'],
  layouts: ['site', 'components'],
  write: ['journal', 'disk', 'load', 'photos', 'site'],
  pages: ['journal', 'site', 'components', 'layouts', 'exports'],
  client: ['site/views'],
  cli: ['journal', 'disk', 'load', 'markdown', 'photos', 'exports', 'site', 'book', 'editor', 'write'],
};

/** The layers of src/journal in their order, and what each imports of those before it, types included; itself always. */
const LAYERS: Readonly<Record<string, readonly string[]>> = {
  diagnostics: [],
  values: ['diagnostics'],
  schema: ['diagnostics', 'values'],
  model: ['diagnostics', 'values', 'schema'],
  read: ['diagnostics', 'values', 'schema', 'model'],
  mentions: ['diagnostics', 'values', 'schema', 'read'],
  compile: ['diagnostics', 'values', 'schema', 'model', 'read'],
  replay: ['diagnostics', 'values', 'model'],
  ledger: ['diagnostics', 'values', 'model'],
  check: ['diagnostics', 'values', 'model', 'replay', 'ledger'],
  registers: ['diagnostics', 'values', 'model', 'replay', 'ledger'],
  timelines: ['values', 'model', 'replay', 'registers'],
  copy: ['values', 'model', 'replay', 'ledger'],
  pipeline: ['diagnostics', 'model', 'read', 'compile', 'replay', 'ledger', 'check', 'registers'],
};

const IMPURE = /^(?:node:|astro|virtual:|sharp|fs|path|os|process|child_process|worker_threads)(?:$|[/:])|^node:/;

function sources(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:ts|mjs|astro)$/.test(path))
    .map((path) => join(folder, path));
}

/** Every module a source names: imports, re-exports and dynamic imports, of the script or of an Astro page's fence. */
function importsOf(text: string, file: string): string[] {
  const script = file.endsWith('.astro') ? (/^---\n([\s\S]*?)\n---/.exec(text)?.[1] ?? '') : text;
  return ts.preProcessFile(script, true, true).importedFiles.map((each) => each.fileName);
}

const FILES = sources(SRC).map((path) => ({ path: relative(SRC, path), text: readFileSync(path, 'utf8') }));

/** Every import from one file of src to another. */
const ARROWS = FILES.flatMap(({ path, text }) =>
  importsOf(text, path)
    .filter((name) => name.startsWith('.'))
    .map((name) => ({ from: path, to: relative(SRC, resolve(SRC, dirname(path), name)) })),
);

const folderOf = (path: string): string => path.split('/')[0] ?? '';

/** `src/journal/model.ts` and `record.ts` are the doors of the model. */
function layerOf(path: string): string {
  const first = path.split('/')[1]?.replace(/\.ts$/, '') ?? '';
  return first === 'record' ? 'model' : first;
}

const isIn = (path: string, place: string): boolean => path === place || path.startsWith(`${place}/`);

describe('arrows never run back', () => {
  test.each(Object.keys(MAY_IMPORT))('what src/%s imports lies before it', (folder) => {
    const allowed = [folder, ...(MAY_IMPORT[folder] ?? [])];
    const wrong = ARROWS.filter(({ from, to }) => folderOf(from) === folder && !allowed.some((place) => isIn(to, place)));
    expect(wrong).toEqual([]);
  });

  test.each(Object.entries(MAY_IMPORT))('whatever src/%s may import it does import', (folder, allowed) => {
    const unused = allowed.filter((place) => !ARROWS.some(({ from, to }) => folderOf(from) === folder && isIn(to, place)));
    expect(unused).toEqual([]);
  });

  test('every folder of src has its place', () => {
    const folders = new Set(FILES.map(({ path }) => folderOf(path)));
    expect([...folders].sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });
});

test('every import names a file that is there: no checker of types reads the pages', () => {
  expect(ARROWS.filter(({ to }) => !existsSync(join(SRC, to))).map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
});

describe('the layers of the core', () => {
  const inside = ARROWS.filter(({ from, to }) => folderOf(from) === 'journal' && folderOf(to) === 'journal');
  const order = Object.keys(LAYERS);

  test('every file lies in one of them', () => {
    const layers = new Set(FILES.filter(({ path }) => folderOf(path) === 'journal').map(({ path }) => layerOf(path)));
    expect([...layers].sort()).toEqual([...order].sort());
  });

  test.each(Object.entries(LAYERS))('%s imports what lies before it', (layer, allowed) => {
    expect(allowed.filter((each) => order.indexOf(each) >= order.indexOf(layer))).toEqual([]);
    const wrong = inside.filter(({ from, to }) => layerOf(from) === layer && layerOf(to) !== layer && !allowed.includes(layerOf(to)));
    expect(wrong).toEqual([]);
  });

  test.each(Object.entries(LAYERS))('whatever %s may import it does import', (layer, allowed) => {
    const unused = allowed.filter((each) => !inside.some(({ from, to }) => layerOf(from) === layer && layerOf(to) === each));
    expect(unused).toEqual([]);
  });
});

test('YAML is parsed in two places, each of which knows how deep it may be', () => {
  const readers = /\bimport\s*(?:type\s*)?\{[^}]*\b(?:parse\w*|Parser|Composer|Lexer|load\w*)\b[^}]*\}\s*from '(?:yaml|js-yaml)'/;
  const whole = /\bimport\s+(?:\* as )?\w+\s+from '(?:yaml|js-yaml)'|\bimport\('(?:yaml|js-yaml)'\)|\bexport\b[^;]*from '(?:yaml|js-yaml)'/;
  const parsing = FILES.filter(({ text }) => readers.test(text) || whole.test(text)).map(({ path }) => path);
  expect(parsing.sort()).toEqual(['journal/read/source/parsed-yaml.ts', 'journal/read/source/quick-yaml.ts']);
});

test('the core touches no disk, framework or process', () => {
  const core = FILES.filter(({ path }) => folderOf(path) === 'journal');
  expect(core.length).toBeGreaterThan(20);
  const impure = core.flatMap(({ path, text }) => {
    const names = importsOf(text, path).filter((name) => IMPURE.test(name));
    const globals = /\bprocess\.|\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(/.test(text) ? ['a clock, a die or the process'] : [];
    return [...names, ...globals].map((name) => `${path} uses ${name}`);
  });
  expect(impure).toEqual([]);
});
