/** Typst source → PDF, by the Typst compiler that comes as a package, with the fonts it carries. */
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

/**
 * @param source a whole Typst document
 * @returns the PDF
 * @throws Error with Typst's own words when the source does not compile
 */
export function typeset(source: string): Uint8Array {
  const compiler = NodeCompiler.create({});
  const compiled = compiler.compile({ mainFileContent: source });
  if (!compiled.result) {
    const problems = compiled.takeDiagnostics();
    const words = problems ? compiler.fetchDiagnostics(problems).map((each: { message?: string }) => each.message ?? '') : [];
    throw new Error(`the labels could not be set: ${words.join('; ')}`);
  }
  return compiler.pdf(compiled.result);
}
