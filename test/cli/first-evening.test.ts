/** The first evening as README has it, typed as it stands there. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { run } from './run.ts';

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const section = /## The first evening\n(.*?)\n## /s.exec(README)?.[1] ?? '';
const block = (begins: string): string => new RegExp(`\`\`\`\\w+\\n(${begins}.*?)\`\`\``, 's').exec(section)?.[1] ?? '';

test('the first evening of README is sound as it is typed', async () => {
  const cwd = folderWith({});
  expect((await run(['init', 'dray'], { cwd })).exit).toBe(0);
  const path = join(cwd, 'dray/journal.yaml');
  const written = readFileSync(path, 'utf8');
  writeFileSync(path, written.replace(/brakes: \{ name: Brakes/, 'wheels: { name: Wheels').replace(/stores: \[.*\]/, 'stores: [trestles]'));
  put(cwd, 'dray/parts/wheels.yaml', block('# parts/wheels.yaml'));
  const { out } = await run(['new', '--content', 'dray', '--title', 'Wheel off'], { cwd });
  expect(out).toBe('dray/sessions/2031-03-12-wheel-off/index.md\n');
  put(cwd, out.trim(), block('---\n'));
  expect(await run(['check', '--content', 'dray'], { cwd })).toMatchObject({ exit: 0, err: 'no errors, no warnings in 1 note\n' });
  expect((await run(['find', 'cap', '--content', 'dray'], { cwd })).out).toContain('1 of 4 in bag 1');
});
