import { flowList, flowMapping, type Line, scalar } from './flow-mapping.ts';

/** The lists of the front matter, in the order a note has them. */
const FIELDS = [
  'hours',
  'parts',
  'decisions',
  'methods',
  'measured',
  'bought',
  'bills',
  'sold',
  'used',
  'bags',
  'opens',
  'closes',
  'defers',
  'reached',
  'film',
] as const;
export type Field = (typeof FIELDS)[number];

/** One session's note while it is being made: entries by field, and prose. */
export class NoteDraft {
  readonly id: string;
  readonly date: string;
  readonly title: string;
  /** Bags emptied tonight. */
  readonly emptied: number[] = [];
  /** Plain sentences with their Markdown links, in order. */
  readonly sentences: string[] = [];
  /** Rows of a table of measurements. */
  readonly table: string[] = [];
  private readonly lines = new Map<Field, string[]>();

  constructor(id: string, date: string, title: string) {
    this.id = id;
    this.date = date;
    this.title = title;
  }

  /** Adds one entry to a field of the front matter. */
  add(field: Field, line: Line): void {
    this.addText(field, flowMapping(line));
  }

  /** Adds an entry already written as YAML; further lines must be indented by four spaces. */
  addText(field: Field, text: string): void {
    const lines = this.lines.get(field) ?? [];
    lines.push(text);
    this.lines.set(field, lines);
  }

  /** How many entries a field has so far. */
  countOf(field: Field): number {
    return this.lines.get(field)?.length ?? 0;
  }

  /** The front matter with its fences. */
  frontMatter(): string {
    const lists = FIELDS.flatMap((field) => {
      const lines = this.lines.get(field) ?? [];
      return lines.length === 0 ? [] : [`${field}:`, ...lines.map((line) => `  - ${line}`)];
    });
    const emptied = this.emptied.length === 0 ? [] : [`emptied: ${flowList(this.emptied.map(String))}`];
    return ['---', `date: ${this.date}`, `title: ${scalar(this.title)}`, ...lists, ...emptied, '---', ''].join('\n');
  }
}
