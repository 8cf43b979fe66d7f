/** Accidents that befall a file: bits, cuts, doublings, pieces of another, and marks that mean something to whoever reads it. */
import type { Random } from '../bench/random.ts';

/** Pieces that steer YAML, Markdown, HTML, SVG and PDF, or stand at the edge of a type. */
const PIECES: readonly string[] = [
  ...[
    '\n---\n',
    '- ',
    ': ',
    '{',
    '}',
    '[',
    ']',
    '"',
    "'",
    '#',
    '&a ',
    '*a ',
    '!!js ',
    '| ',
    '>\n',
    '\t',
    '\r',
    '\ufeff',
    '\0',
    '\u001b[31m',
    '\u202e',
  ],
  ...[
    '~~~',
    '```',
    '<!--',
    '-->',
    '<script>',
    '</',
    '[x](',
    '![',
    '](part:',
    '[^1]: ',
    '> ',
    '1. ',
    '|a|\n|-|\n',
    '&#0;',
    '&#x1b;',
    '<?',
    '<![CDATA[',
  ],
  ...[
    '__proto__',
    'constructor',
    'toString',
    '../../../../etc/passwd',
    '%2f..%2f',
    'file:///',
    '//x',
    'NaN',
    '1e999',
    '-0',
    '0x10',
    '.inf',
  ],
  ...[
    '99999999999999999999',
    '0.000000000000000001',
    '2031-02-30',
    '0000-00-00',
    '25:61',
    '24:00',
    '-1',
    '\u00bd',
    '\u0661',
    'e\u0301',
    '\ud83d\ude00',
  ],
  ...[
    '<svg',
    'xlink:href="data:',
    '<!ENTITY a "',
    'stream\n',
    'endobj',
    '/Filter /FlateDecode',
    '%%EOF',
    '\xff\xd8\xff',
    '\xff\xe1\xff\xff',
    'moov',
    'free',
  ],
];

const ACCIDENTS: readonly ((bytes: Buffer, random: Random, other: Buffer) => Buffer)[] = [
  (bytes, random) => flipped(bytes, random),
  (bytes, random) => bytes.subarray(0, random.below(bytes.length + 1)),
  (bytes, random) => without(bytes, random),
  (bytes, random) => put(bytes, random, Buffer.from(random.pick(PIECES))),
  (bytes, random) => put(bytes, random, Buffer.from(random.pick(PIECES).repeat(1 + random.below(3000)))),
  (bytes, random) => put(bytes, random, stretch(bytes, random)),
  (bytes, random, other) => put(bytes, random, stretch(other, random)),
  (bytes, random) => linesSwapped(bytes, random),
  (bytes, random) => put(bytes, random, Buffer.from(Array.from({ length: 1 + random.below(64) }, () => random.below(256)))),
];

/** From one to four accidents, one after the other. */
export function mutated(bytes: Buffer, random: Random, other: Buffer): Buffer {
  let all = bytes;
  for (let n = 1 + random.below(4); n > 0; n -= 1) all = random.pick(ACCIDENTS)(all, random, other);
  return all;
}

function flipped(bytes: Buffer, random: Random): Buffer {
  const all = Buffer.from(bytes);
  for (let n = 1 + random.below(8); n > 0 && all.length > 0; n -= 1) {
    const at = random.below(all.length);
    all[at] = (all[at] ?? 0) ^ (1 << random.below(8));
  }
  return all;
}

function stretch(bytes: Buffer, random: Random): Buffer {
  const from = random.below(bytes.length + 1);
  return bytes.subarray(from, from + random.below(Math.min(400, bytes.length - from) + 1));
}

function without(bytes: Buffer, random: Random): Buffer {
  const from = random.below(bytes.length + 1);
  return Buffer.concat([bytes.subarray(0, from), bytes.subarray(from + random.below(200))]);
}

function put(bytes: Buffer, random: Random, piece: Buffer): Buffer {
  const at = random.below(bytes.length + 1);
  return Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at)]);
}

function linesSwapped(bytes: Buffer, random: Random): Buffer {
  const lines = bytes.toString('latin1').split('\n');
  const [a, b] = [random.below(lines.length), random.below(lines.length)];
  [lines[a], lines[b]] = [lines[b] ?? '', lines[a] ?? ''];
  return Buffer.from(lines.join('\n'), 'latin1');
}
