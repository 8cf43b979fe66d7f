import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ONE_STYLE, STYLES } from './styles.ts';

/**
 * Puts one style sheet into the place of all.
 *
 * @param site a folder that has them under `css/`
 */
export function joinStyles(site: string): void {
  const fileOf = (style: string): string => join(site, 'css', `${style}.css`);
  writeFileSync(fileOf(ONE_STYLE), STYLES.map((style) => readFileSync(fileOf(style), 'utf8')).join(''));
  for (const style of STYLES) rmSync(fileOf(style));
}
