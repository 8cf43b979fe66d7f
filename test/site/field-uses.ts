/** Which properties of the model the program reads, found by its types: TypeScript is asked what each name in the source means. */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';

/** A property of a named type of the model: `Part.evidence`. */
export type Use = string;

export interface Uses {
  /** Read by what shows, checks or reckons with it: all of src but the schemas, the readers and the compiler. */
  readonly read: ReadonlySet<Use>;
  /** Names that the compiler reads of what a schema gives it. */
  readonly compiled: ReadonlySet<string>;
  /** The properties of the model's types. */
  readonly properties: ReadonlyMap<string, ReadonlySet<string>>;
}

/** @param root the program's own folder */
export function usesIn(root: string, types: readonly string[]): Uses {
  const { program, pathOf } = programOf(root);
  const checker = program.getTypeChecker();
  const read = new Set<Use>();
  const compiled = new Set<string>();
  const wanted = new Set(types);
  const properties = propertiesOf(program, checker, pathOf, wanted);
  const named = new Set([...properties.values()].flatMap((names) => [...names]));
  for (const file of program.getSourceFiles()) {
    const path = pathOf(file.fileName);
    if (!path.startsWith('src/')) continue;
    const compiling = /^src\/journal\/(schema|read|compile|model)\//.test(path);
    const visit = (node: ts.Node): void => {
      for (const { of, name } of readsIn(node)) {
        if (path.startsWith('src/journal/compile/')) compiled.add(name);
        // What a name is read of is asked only where it could be one of those: the answer takes long.
        if (compiling || !named.has(name)) continue;
        for (const type of namesOf(checker.getTypeAtLocation(of))) if (wanted.has(type)) read.add(`${type}.${name}`);
      }
      ts.forEachChild(node, visit);
    };
    visit(file);
  }
  return { read, compiled, properties };
}

interface Read {
  readonly of: ts.Node;
  readonly name: string;
}

/** `part.evidence`, and `{ evidence }` taken apart. */
function readsIn(node: ts.Node): Read[] {
  if (ts.isPropertyAccessExpression(node)) return [{ of: node.expression, name: node.name.text }];
  if (!ts.isBindingElement(node) || !ts.isObjectBindingPattern(node.parent) || node.dotDotDotToken) return [];
  const name = node.propertyName ?? node.name;
  return ts.isIdentifier(name) || ts.isStringLiteral(name) ? [{ of: node.parent, name: name.text }] : [];
}

/** Types made of another, some of its properties left out or changed in kind. */
const MADE_OF = ['Pick', 'Omit', 'Readonly', 'Partial', 'Required', 'NonNullable'];

/** The names of a type, of those it is one of, and of what it is made of. */
function namesOf(type: ts.Type): string[] {
  const own = [type.aliasSymbol?.name, type.symbol?.name].filter((name) => name !== undefined);
  const base = MADE_OF.includes(type.aliasSymbol?.name ?? '') ? type.aliasTypeArguments?.[0] : undefined;
  const more = [...(type.isUnionOrIntersection() ? type.types : []), ...(base ? [base] : [])];
  return [...own, ...more.flatMap(namesOf)];
}

function propertiesOf(program: ts.Program, checker: ts.TypeChecker, pathOf: (file: string) => string, wanted: ReadonlySet<string>) {
  const found = new Map<string, ReadonlySet<string>>();
  for (const file of program.getSourceFiles().filter(({ fileName }) => pathOf(fileName).startsWith('src/journal/model'))) {
    ts.forEachChild(file, (node) => {
      if (!(ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) || !wanted.has(node.name.text)) return;
      const type = checker.getTypeAtLocation(node.name);
      found.set(node.name.text, new Set(type.getProperties().map(({ name }) => name)));
    });
  }
  return found;
}

/** The sources with the pages and components among them, each read as the script its frontmatter and its markup make. */
function programOf(root: string) {
  const config = ts.getParsedCommandLineOfConfigFile(
    join(root, 'tsconfig.json'),
    {},
    { ...ts.sys, onUnRecoverableConfigFileDiagnostic: () => {} },
  );
  if (!config) throw new Error('no tsconfig.json');
  const options: ts.CompilerOptions = { ...config.options, jsx: ts.JsxEmit.Preserve, noEmit: true };
  const host = ts.createCompilerHost(options);
  const scripts = config.fileNames.filter((file) => relative(root, file).startsWith('src/') && file.endsWith('.ts'));
  const pages = ts.sys.readDirectory(join(root, 'src'), ['.astro']);
  const isPage = (file: string): boolean => file.endsWith('.astro.tsx');
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (file) => fileExists(isPage(file) ? file.slice(0, -'.tsx'.length) : file);
  host.readFile = (file) => (isPage(file) ? scriptOf(readFileSync(file.slice(0, -'.tsx'.length), 'utf8')) : readFile(file));
  host.getSourceFile = (file, language, ...rest) =>
    isPage(file) ? ts.createSourceFile(file, host.readFile(file) ?? '', language, true) : getSourceFile(file, language, ...rest);
  const program = ts.createProgram([...scripts, ...pages.map((file) => `${file}.tsx`)], options, host);
  return { program, pathOf: (file: string) => relative(root, file) };
}

function scriptOf(page: string): string {
  const [, front = '', markup = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(page) ?? [];
  const props = /interface Props\b/.test(front) ? 'Props' : 'Record<string, never>';
  const fragment = markup.replaceAll(/<!doctype html>/gi, '').replaceAll(/(\s)\{(\w+)\}(?=[\s/>])/g, '$1$2={$2}');
  return `declare const Astro: { readonly props: ${props}; readonly params: { readonly [name: string]: string }; readonly [name: string]: unknown };\n${front}\nexport default () => <>${fragment}</>;\n`;
}
