import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { FACES_FROM_DISK, ONE_STYLE, STYLES } from './styles.ts';

/** What is said to those who write them, on lines of its own: a phone need not fetch it. */
const COMMENT = /^[ \t]*\/\*[\s\S]*?\*\/[ \t]*\n/gm;

const FACE = /^@font-face \{[^}]*\}\n/gm;

/**
 * Puts one style sheet into the place of all, without their comments, and beside it one that takes the faces of the record
 * whenever they come.
 *
 * @param site a folder that has them under `css/`
 */
export function joinStyles(site: string): void {
  const fileOf = (style: string): string => join(site, 'css', `${style}.css`);
  writeFileSync(fileOf(ONE_STYLE), STYLES.map((style) => readFileSync(fileOf(style), 'utf8').replace(COMMENT, '')).join(''));
  const faces = readFileSync(fileOf('type'), 'utf8').match(FACE) ?? [];
  writeFileSync(fileOf(FACES_FROM_DISK), faces.join('').replaceAll('font-display: optional', 'font-display: swap'));
  for (const style of STYLES) rmSync(fileOf(style));
}
