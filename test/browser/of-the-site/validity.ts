/** HTML against an outside validator: html-validate, its standard rules. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate, type ResolvedConfig, StaticConfigLoader } from 'html-validate';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

/** Rules that are the same for every page are set up for the first of them only. */
class SameRules extends StaticConfigLoader {
  #known: ResolvedConfig | Promise<ResolvedConfig> | undefined;

  override getConfigFor(...asked: Parameters<StaticConfigLoader['getConfigFor']>): ResolvedConfig | Promise<ResolvedConfig> {
    this.#known ??= super.getConfigFor(...asked);
    return this.#known;
  }
}

export function validity(bench: Bench): void {
  describe('HTML', () => {
    it('every page is valid', async () => {
      const rules = new SameRules({
        extends: ['html-validate:standard'],
        rules: {
          // A matter of taste, not of the standard: how void elements and the doctype are written, trailing blanks.
          'void-style': 'off',
          'doctype-style': 'off',
          'no-trailing-whitespace': 'off',
          'attr-quotes': 'off',
          'long-title': 'off',
          // The policy stands in a meta element and needs no integrity for the site's own files.
          'require-sri': 'off',
        },
      });
      const validator = new HtmlValidate(rules);
      const problems: string[] = [];
      for (const page of bench.site.pages) {
        const report = await validator.validateString(readFileSync(join(bench.site.folder, page), 'utf8'));
        const found = report.results.flatMap(({ messages }) =>
          messages.map(({ ruleId, message, line, column }) => `${ruleId}: ${message} (${line}:${column})`),
        );
        problems.push(...new Set(found.map((text) => `${page}: ${text}`)));
      }
      expect(problems.slice(0, 40)).toEqual([]);
    });
  });
}
