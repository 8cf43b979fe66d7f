import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

/** What each folder may import of the others; itself always. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  journal: [],
  load: ['journal'],
  photos: ['journal', 'load', 'site/cache-folder.ts'],
  markdown: ['journal', 'photos', 'site/addresses.ts', 'site/cache-folder.ts'],
  exports: ['journal'],
  site: ['journal', 'load', 'markdown', 'photos', 'exports'],
  components: ['journal', 'site', 'photos', 'exports', 'layouts'],
  layouts: ['journal', 'site', 'components'],
  pages: ['journal', 'site', 'components', 'layouts', 'exports', 'photos'],
  client: ['site/addresses.ts', 'site/views'],
  cli: ['journal', 'load', 'markdown', 'photos', 'exports', 'site', 'client'],
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

function folderOf(path: string): string {
  return relative(SRC, path).split('/')[0] ?? '';
}

const FILES = sources(SRC);

describe('arrows never run back', () => {
  test.each(Object.keys(MAY_IMPORT))('what src/%s imports lies before it', (folder) => {
    const wrong = FILES.filter((file) => folderOf(file) === folder).flatMap((file) =>
      importsOf(readFileSync(file, 'utf8'), file)
        .filter((name) => name.startsWith('.'))
        .map((name) => relative(SRC, resolve(dirname(file), name)))
        .filter((target) => {
          const allowed = [folder, ...(MAY_IMPORT[folder] ?? [])];
          return !allowed.some((each) => target === each || target.startsWith(`${each}/`));
        })
        .map((target) => `${relative(SRC, file)} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  test('every folder of src has its place in the order', () => {
    const folders = new Set(FILES.map(folderOf));
    expect([...folders].filter((folder) => !(folder in MAY_IMPORT))).toEqual([]);
  });
});

test('the core touches no disk, framework or process', () => {
  const core = FILES.filter((file) => folderOf(file) === 'journal');
  expect(core.length).toBeGreaterThan(20);
  const impure = core.flatMap((file) => {
    const text = readFileSync(file, 'utf8');
    const names = importsOf(text, file).filter((name) => IMPURE.test(name));
    const globals = /\bprocess\.|\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(/.test(text) ? ['a clock, a die or the process'] : [];
    return [...names, ...globals].map((name) => `${relative(SRC, file)} uses ${name}`);
  });
  expect(impure).toEqual([]);
});
