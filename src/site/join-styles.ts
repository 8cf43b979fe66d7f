import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ONE_STYLE, STYLES } from './styles.ts';

/** What is said to those who write them, on lines of its own: a phone need not fetch it. */
const COMMENT = /^[ \t]*\/\*[\s\S]*?\*\/[ \t]*\n/gm;

/**
 * Puts one style sheet into the place of all, without their comments.
 *
 * @param site a folder that has them under `css/`
 */
export function joinStyles(site: string): void {
  const fileOf = (style: string): string => join(site, 'css', `${style}.css`);
  writeFileSync(fileOf(ONE_STYLE), STYLES.map((style) => readFileSync(fileOf(style), 'utf8').replace(COMMENT, '')).join(''));
  for (const style of STYLES) rmSync(fileOf(style));
}
