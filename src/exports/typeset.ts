/** Typst source → PDF, by the Typst compiler that comes as a package, with the fonts it carries. */
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

export interface Typeset {
  readonly pdf: Uint8Array;
  /** The values of what the document notes as `#metadata(value) <cut>`, in order. */
  readonly cut: readonly unknown[];
}

/**
 * @param source a whole Typst document
 * @throws Error with Typst's own words when the source does not compile
 */
export function typeset(source: string): Typeset {
  const compiler = NodeCompiler.create({});
  const compiled = compiler.compile({ mainFileContent: source });
  if (!compiled.result) {
    const problems = compiled.takeDiagnostics();
    const words = problems ? compiler.fetchDiagnostics(problems).map((each: { message?: string }) => each.message ?? '') : [];
    throw new Error(`the labels could not be set: ${words.join('; ')}`);
  }
  return { pdf: compiler.pdf(compiled.result), cut: compiler.query(compiled.result, { selector: '<cut>', field: 'value' }) as unknown[] };
}
