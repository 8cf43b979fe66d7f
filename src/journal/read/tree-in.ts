import type * as z from 'zod';
import { fieldNames, groupsOf, isListOfTexts } from './schema-at.ts';
import { quickTree } from './source/quick-yaml.ts';
import type { SourceText } from './source/text.ts';
import { readYaml } from './source/yaml.ts';

/**
 * The YAML of a file as it is written, before a schema understands it. Sound YAML goes the fast way; with the first
 * doubt it is read by the exact reader, which has words for every slip.
 */
export function treeIn(
  source: SourceText,
  { start, end }: { readonly start: number; readonly end: number },
  schema: z.ZodType,
  top: 'fields' | 'list',
): ReturnType<typeof readYaml> {
  const quick = quickTree(source, start, end, top);
  if (quick) return { tree: quick, diagnostics: [], mended: [], repairs: [] };
  return readYaml(source, start, end, top, {
    all: fieldNames(schema, ({ everyday }) => everyday !== true),
    prose: fieldNames(schema, ({ prose }) => prose === true),
    lists: fieldNames(schema, (_, kind) => isListOfTexts(kind)),
    groups: groupsOf(schema),
  });
}
