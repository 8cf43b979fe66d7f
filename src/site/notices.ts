/** The notices that licences ask for, of libraries that are published as part of a script. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package's folder at the end of a module's way to it; the innermost where packages lie in packages. */
const PACKAGE = /^(.*\/node_modules\/((?:@[^/]+\/)?[^/]+))\//;

/**
 * @param modules absolute paths of the modules of a script
 * @returns a comment with the licence of every package among them, or with what it declares of it; empty where there is none
 * @throws where a package brings no licence: it may not be published so
 */
export function noticesOf(modules: readonly string[]): string {
  const packages = new Map(
    modules.flatMap((module) => {
      const [, folder, name] = PACKAGE.exec(module.replaceAll('\\', '/')) ?? [];
      return folder === undefined || name === undefined ? [] : [[name, folder] as const];
    }),
  );
  return [...packages]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, folder]) => `/*! ${name}\n\n${licenceIn(folder, name)}\n*/\n`)
    .join('');
}

function licenceIn(folder: string, name: string): string {
  const file = existsSync(folder) ? readdirSync(folder).find((each) => /^licen[cs]e/i.test(each)) : undefined;
  const words = file === undefined ? declaredIn(folder) : readFileSync(join(folder, file), 'utf8').trim();
  if (words === null) throw new Error(`${name} brings no licence`);
  return words.replaceAll('*/', '* /');
}

/** Of a package without a file of its licence: the licence that it declares, and whose work it says it is; null without either. */
function declaredIn(folder: string): string | null {
  const file = join(folder, 'package.json');
  if (!existsSync(file)) return null;
  const { license, author } = JSON.parse(readFileSync(file, 'utf8')) as { license?: unknown; author?: string | { name?: string } };
  const holder = typeof author === 'string' ? author : author?.name;
  return typeof license === 'string' && holder !== undefined ? `Copyright ${holder}. Licence: ${license}` : null;
}
