/**
 * The fast way through sound YAML: a tenth of the exact reader's time, the same values and places. What it
 * cannot take, or what might be a slip, is left to the exact reader, which has words for it.
 */
import {
  COLLECTION_STYLE,
  EVENT_ID,
  type Event,
  getScalarValue,
  type MappingEvent,
  parseEvents,
  SCALAR_STYLE,
  type ScalarEvent,
  type SequenceEvent,
} from 'js-yaml';
import type { SourceText } from './text.ts';
import { MOST_NESTED, type Span, type Spot, type Tree, treeOf, type Value } from './tree.ts';

/** Anchors, aliases, tags, tabs, bare marks, document marks and what looks like a hyphen: rare, and the exact reader has words for them. */
const UNUSUAL = /(?:^|[\s[{,:-])[&*!%@`]|[\t\u00a0]|^(?:---|\.\.\.)|(?:^|[\s[{,:-])[?:](?=\s|$)|^ *(?:-[A-Za-z{["']|[–—•−(])/m;

/** What may stand between the last value of a flow collection and its closing mark. */
const BEFORE_CLOSING = /[\s,]*/y;

/** @returns the tree of the YAML between two offsets, or null when the exact reader should look */
export function quickTree(source: SourceText, start: number, end: number, expects: 'fields' | 'list'): Tree | null {
  const text = source.text.slice(start, end);
  if (UNUSUAL.test(text)) return null;
  try {
    const events = parseEvents(text, { maxDepth: MOST_NESTED });
    const top = events[1];
    if (top?.type !== (expects === 'list' ? EVENT_ID.SEQUENCE : EVENT_ID.MAPPING)) return null;
    const { value, spot } = new Composer(events, text, start).whole();
    return treeOf(source, value, spot);
  } catch {
    return null;
  }
}

/** Thrown, and caught above, when there is anything to look at twice. */
class LookTwice extends Error {}

interface Read {
  readonly value: Value;
  readonly spot: Spot;
}

/** Puts the parser's events together again. */
class Composer {
  #next = 1;
  #depth = -1;
  readonly #events: readonly Event[];
  readonly #text: string;
  readonly #base: number;

  constructor(events: readonly Event[], text: string, base: number) {
    this.#events = events;
    this.#text = text;
    this.#base = base;
  }

  whole(): Read {
    const read = this.#node(null);
    // The document's own end, and nothing after it.
    if (this.#events.length !== this.#next + 1) throw new LookTwice();
    return read;
  }

  #node(key: Span | null): Read {
    const event = this.#events[this.#next++];
    if (event?.type === EVENT_ID.SCALAR) return this.#scalar(event, key);
    if (event?.type !== EVENT_ID.MAPPING && event?.type !== EVENT_ID.SEQUENCE) throw new LookTwice();
    this.#depth += 1;
    if (this.#depth >= MOST_NESTED) throw new LookTwice();
    const read = event.type === EVENT_ID.MAPPING ? this.#mapping(event, key) : this.#sequence(event, key);
    this.#depth -= 1;
    return read;
  }

  #scalar(event: ScalarEvent, key: Span | null): Read {
    const value = getScalarValue(this.#text, event);
    const [start, end] = this.#spanOf(event);
    // An empty value is a field left empty, or half of a slip.
    if (value === '') throw new LookTwice();
    return { value, spot: { start, end, key, inside: null } };
  }

  /** The parser leaves quotation marks out of a scalar's range. */
  #spanOf({ style, valueStart, valueEnd, anchorStart, tagStart }: ScalarEvent): Span {
    const quote = style === SCALAR_STYLE.SINGLE_QUOTED || style === SCALAR_STYLE.DOUBLE_QUOTED ? 1 : 0;
    const known = valueStart !== -1 && anchorStart === -1 && tagStart === -1 && (quote === 1 || style === SCALAR_STYLE.PLAIN);
    if (!known) throw new LookTwice();
    return [this.#base + valueStart - quote, this.#base + valueEnd + quote];
  }

  #mapping(event: MappingEvent, key: Span | null): Read {
    // A null prototype: a field named `__proto__` or `constructor` is then a field like any other.
    const value: { [key: string]: Value } = Object.create(null);
    const inside = new Map<string, Spot>();
    let end = this.#base + event.start + 1;
    while (this.#events[this.#next]?.type !== EVENT_ID.POP) {
      const name = this.#events[this.#next++];
      if (name?.type !== EVENT_ID.SCALAR) throw new LookTwice();
      const field = getScalarValue(this.#text, name);
      if (inside.has(field)) throw new LookTwice();
      const read = this.#node(this.#spanOf(name));
      value[field] = read.value;
      inside.set(field, read.spot);
      end = read.spot.end;
    }
    return { value, spot: this.#closed(event, end, key, inside) };
  }

  #sequence(event: SequenceEvent, key: Span | null): Read {
    const value: Value[] = [];
    const inside: Spot[] = [];
    let end = this.#base + event.start + 1;
    while (this.#events[this.#next]?.type !== EVENT_ID.POP) {
      const read = this.#node(null);
      value.push(read.value);
      inside.push(read.spot);
      end = read.spot.end;
    }
    return { value, spot: this.#closed(event, end, key, inside) };
  }

  /** The events do not say where a flow collection closes; a comment before its closing mark is left to the exact reader. */
  #closed(event: MappingEvent | SequenceEvent, lastEnd: number, key: Span | null, inside: Spot['inside']): Spot {
    this.#next += 1;
    if (event.anchorStart !== -1 || event.tagStart !== -1) throw new LookTwice();
    const start = this.#base + event.start;
    if (event.style !== COLLECTION_STYLE.FLOW) return { start, end: lastEnd, key, inside };
    BEFORE_CLOSING.lastIndex = lastEnd - this.#base;
    BEFORE_CLOSING.test(this.#text);
    const mark = this.#text[BEFORE_CLOSING.lastIndex];
    if (mark !== '}' && mark !== ']') throw new LookTwice();
    return { start, end: this.#base + BEFORE_CLOSING.lastIndex + 1, key, inside };
  }
}
