/**
 * The one way to the parser of YAML. What is nested without end takes it longer than its length and would fill its stack: it
 * stops at the first mark that goes too deep, and nothing of the document is read.
 */
import { Composer, type Document, type DocumentOptions, Lexer, type ParseOptions, Parser, type SchemaOptions, YAMLParseError } from 'yaml';
import { MOST_NESTED } from './tree.ts';

/** Places in the text. */
export type ParsedYaml = Document.Parsed;
type CstToken = Parser['stack'][number];

/** The only error of a document without contents. */
class TooDeep extends YAMLParseError {
  constructor(at: number) {
    super([at, at + 1], 'RESOURCE_EXHAUSTION', `Nested more than ${MOST_NESTED} deep`);
  }
}

/** @returns where the text goes too deep, for which it was not read; null where it was */
export function tooDeepAt({ errors }: ParsedYaml): number | null {
  const [first] = errors;
  return first instanceof TooDeep ? first.pos[0] : null;
}

/** @returns the first document of a text, with the parser's errors, which tell no line; one without contents where it goes too deep */
export function parsedYaml(text: string, options: ParseOptions & DocumentOptions & SchemaOptions): ParsedYaml {
  const composer = new Composer({ ...options, prettyErrors: false });
  const tokens = tokensOf(text);
  if (typeof tokens === 'number') return tooDeep(composer, tokens);
  const [document, second] = composer.compose(tokens, true, text.length);
  if (document === undefined) throw new Error('the composer gave no document');
  if (second !== undefined && options.logLevel !== 'silent') {
    const [start, end] = second.range;
    document.errors.push(new YAMLParseError([start, end], 'MULTIPLE_DOCS', 'Source contains multiple documents'));
  }
  return document;
}

function tooDeep(composer: Composer, at: number): ParsedYaml {
  const [empty] = composer.compose([], true, 0);
  if (empty === undefined) throw new Error('the composer gave no document');
  empty.errors = [new TooDeep(at)];
  return empty as ParsedYaml;
}

/** What the composer makes a document of, or the offset at which it would go too deep. */
function tokensOf(text: string): CstToken[] | number {
  const parser = new Parser();
  const tokens: CstToken[] = [];
  for (const lexeme of new Lexer().lex(text)) {
    const at = parser.offset;
    tokens.push(...parser.next(lexeme));
    if (parser.stack.length > MOST_NESTED && parser.stack.filter(isCollection).length > MOST_NESTED) return at;
  }
  tokens.push(...parser.end());
  return tokens;
}

function isCollection({ type }: CstToken): boolean {
  return type === 'block-map' || type === 'block-seq' || type === 'flow-collection';
}
