/** Typst source → PDF, by the Typst compiler that comes as a package, with the fonts it carries and our own. */
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

export interface Typeset {
  readonly pdf: Uint8Array;
  /** The values of what the document notes as `#metadata(value) <cut>`, in order. */
  readonly cut: readonly unknown[];
}

export interface TypesetOptions {
  /** The folder that `/` of the source means; its pictures lie there. */
  readonly workspace?: string;
  /** As the compiler names it: `a-3a`. */
  readonly standard?: string;
}

/** The faces of the site, as print takes them. */
const FACES = new URL('./fonts', import.meta.url).pathname;

/**
 * @param source a whole Typst document
 * @throws Error with Typst's own words when the source does not compile
 */
export function typeset(source: string, { workspace, standard }: TypesetOptions = {}): Typeset {
  const compiler = NodeCompiler.create({ fontArgs: [{ fontPaths: [FACES] }], ...(workspace === undefined ? {} : { workspace }) });
  const compiled = compiler.compile({ mainFileContent: source });
  if (!compiled.result) {
    const problems = compiled.takeDiagnostics();
    const words = problems ? compiler.fetchDiagnostics(problems).map((each: { message?: string }) => each.message ?? '') : [];
    throw new Error(`it could not be typeset: ${[...new Set(words)].slice(0, 5).join('; ')}`);
  }
  return {
    pdf: compiler.pdf(compiled.result, standard === undefined ? undefined : { pdfStandard: standard }),
    cut: compiler.query(compiled.result, { selector: '<cut>', field: 'value' }) as unknown[],
  };
}
