/** One document: `WORKSPACE STANDARD FILE.pdf`, from `FILE.pdf.typ`; what is cut goes to `FILE.pdf.json`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { typeset } from './typeset.ts';

const [workspace = '', standard = '', pdf = ''] = process.argv.slice(2);
try {
  const set = typeset(readFileSync(`${pdf}.typ`, 'utf8'), { workspace, standard });
  writeFileSync(pdf, set.pdf);
  writeFileSync(`${pdf}.json`, JSON.stringify(set.cut));
} catch (error) {
  process.stderr.write(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
