import { describe, expect, test } from 'vitest';
import { htmlOf } from './context.ts';

describe('a link of ours', () => {
  test('leads to the page of what it names, and says which kind that is', () => {
    expect(htmlOf('See [the drum](part:drum).')).toBe('<p>See <a href="../parts/drum.html#drum" class="to-part">the drum</a>.</p>');
  });

  test('without words is called by the name of what it leads to', () => {
    expect(htmlOf('In [](bag:14).')).toBe('<p>In <a href="../bags.html#bag-14" class="to-bag">bag 14</a>.</p>');
  });

  test('without words has a capital where it begins a sentence', () => {
    expect(htmlOf('[](bag:14) has it. [](bag:14) too, and [](bag:14).').replaceAll(/<[^>]*>/g, '')).toBe(
      'Bag 14 has it. Bag 14 too, and bag 14.',
    );
    expect(htmlOf('*So* [](bag:14).').replaceAll(/<[^>]*>/g, '')).toBe('So bag 14.');
  });

  test('may stand in a reference definition, in emphasis and in a heading', () => {
    expect(htmlOf('*[drum][d]*\n\n[d]: part:drum')).toContain('<em><a href="../parts/drum.html#drum"');
    expect(htmlOf('# The [drum](part:drum)')).toContain('<h2>The <a href="../parts/drum.html#drum"');
  });

  test('that leads nowhere keeps its words and loses its address', () => {
    expect(htmlOf('[the hub](part:hub)')).toBe('<p><a>the hub</a></p>');
  });

  test('to a paper beside the note leads to the published paper', () => {
    expect(htmlOf('[bill](receipt.pdf)')).toBe('<p><a href="../papers/receipt-0f.pdf" class="to-file">bill</a></p>');
  });

  test.each(['10:30', 'ratio 50:1', 'part:drum', '(bag:14)', '12:40:05', 'about ~5 mm and ~6 mm', '5 * 3 * 2', ':note', '::x', 'a_b_c'])(
    'is not seen in plain text: %s',
    (text) => {
      expect(htmlOf(text)).toBe(`<p>${text}</p>`);
    },
  );
});

describe('a picture', () => {
  test('alone in its paragraph is a figure with its renderings, its caption and its size', () => {
    expect(htmlOf('![The drum](drum.jpg)')).toBe(
      '<figure class="picture"><a href="../pictures/drum-2048.webp"><picture>' +
        '<source type="image/webp" srcset="../pictures/drum-480.webp 480w" sizes="(min-width: 60rem) 46rem, 100vw">' +
        '<img src="../pictures/drum-1280.jpg" alt="alt of drum" width="2048" height="1536" loading="lazy" decoding="async" data-colour="#7a6a58">' +
        '</picture></a><figcaption>As it came off. <span class="taken">20:15</span></figcaption></figure>',
    );
  });

  test('is found by every way of writing its path', () => {
    for (const url of ['./drum.jpg', '../2031-03-12-brakes/drum.jpg', '<shoe one.jpg>', 'shoe%20one.jpg']) {
      expect(htmlOf(`![x](${url})`), url).toContain('<figure');
    }
  });

  test('of several in one paragraph is one figure of several', () => {
    const html = htmlOf('![a](drum.jpg)\n![b](<shoe one.jpg>)\n\ntext');
    expect(html.match(/<figure/g)).toHaveLength(2);
    expect(html).not.toMatch(/<p>\s*<figure/);
    expect(html).toContain('<p>text</p>');
  });

  test('among words stays among them, and its caption is read under the paragraph', () => {
    expect(htmlOf('Here ![x](drum.jpg) it is.')).toMatch(
      /^<p>Here <img src="..\/pictures\/drum-1280.jpg"[^>]*> it is.<\/p><p class="picture-words">As it came off.<\/p>$/,
    );
    expect(htmlOf('Here ![As it came off.](drum.jpg) it is.')).toMatch(/ it is.<\/p>$/);
    expect(htmlOf('Here ![x](<shoe one.jpg>) it is.')).toMatch(/ it is.<\/p>$/);
  });

  test('in a link stays in it', () => {
    expect(htmlOf('[![x](drum.jpg)](part:drum)')).toMatch(/^<p><a href="..\/parts\/drum.html#drum" class="to-part"><img /);
  });

  test('of another site is a link, for no request may leave this one', () => {
    expect(htmlOf('![the works](https://example.org/a.jpg)')).toBe(
      '<p><a href="https://example.org/a.jpg" class="to-picture">the works</a></p>',
    );
    expect(htmlOf('![x](//example.org/a.jpg)')).not.toContain('<img');
  });
});

describe('a table', () => {
  test('scrolls inside itself, by keyboard too, and aligns by class', () => {
    const html = htmlOf('| Stud | Torque |\n| :- | -: |\n| 1 | 60 |');
    expect(html).toMatch(/^<div class="scroll" role="region" aria-label="Table: Stud, Torque" tabindex="0"><table>/);
    expect(html).toContain('<td class="right">60</td>');
    expect(html).not.toContain('align=');
    expect(html.match(/role="region"/g)).toHaveLength(1);
  });

  test('has no heading that says nothing: an empty corner is a cell', () => {
    const html = htmlOf('| | Torque |\n| -: | -: |\n| 1 | 60 |');
    expect(html).toContain('<td class="right"></td>');
    expect(html.match(/<th/g)).toEqual(['<th', '<th']);
    expect(html.match(/<th[ >]/g)).toHaveLength(1);
  });
});

describe('a heading', () => {
  test.each([
    ['# A\n\n## B', 'h2 h3'],
    ['### A\n\n#### B\n\n### C', 'h2 h3 h2'],
    ['# A\n\n###### B', 'h2 h6'],
    ['<h1>A</h1>\n\n## B', 'h2 h3'],
  ])('%j comes under the title of its page', (markdown, levels) => {
    expect([...htmlOf(markdown).matchAll(/<(h\d)/g)].map((match) => match[1]).join(' ')).toBe(levels);
  });
});

describe('what else GitHub knows', () => {
  test('a pair of tildes strikes through, a single one does not', () => {
    expect(htmlOf('~~gone~~, but H~2~O')).toBe('<p><del>gone</del>, but H~2~O</p>');
  });

  test('a ticked box is words, not a control', () => {
    const html = htmlOf('- [x] drained\n- [ ] bled');
    expect(html).toContain('<span class="box" role="img" aria-label="done">[x]</span> drained');
    expect(html).toContain('aria-label="not done"');
    expect(html).not.toContain('<input');
  });

  test('a footnote and its mark find each other', () => {
    const html = htmlOf('text[^a]\n\n[^a]: why');
    const ids = new Set([...html.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]));
    const links = [...html.matchAll(/href="#([^"]+)"/g)].map((match) => match[1]);
    expect(links).toHaveLength(2);
    for (const link of links) expect(ids).toContain(link);
    expect(ids).toContain(/aria-describedby="([^"]+)"/.exec(html)?.[1]);
  });
});

describe('raw HTML is cleaned', () => {
  test.each([
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    '<a href="javascript:alert(1)">x</a>',
    '[x](javascript:alert(1))',
    '[x](JaVaScRiPt:alert(1))',
    '[x](data:text/html;base64,PHNjcmlwdD4=)',
    '<p style="position:fixed" onclick="x()">x</p>',
    '<style>*{display:none}</style>',
    '<svg><script>alert(1)</script></svg>',
    '<iframe src="https://example.org"></iframe>',
    '<form action="https://example.org"><button>x</button></form>',
    '<meta http-equiv="refresh" content="0;url=https://example.org">',
    '<base href="https://example.org/">',
    '<div class="to-part" data-kind="x">x</div>',
    '<math><mtext><img src=x onerror=alert(1)></mtext></math>',
    '<!-- <script> -->',
    '<a id="main" name="x">x</a>',
    '<img srcset="https://example.org/a.jpg 1x" src="drum.jpg">',
  ])('%s', (markdown) => {
    const html = htmlOf(markdown);
    expect(html).not.toMatch(/<(script|style|svg|iframe|form|button|meta|base|math|!--)/i);
    expect(html).not.toMatch(/\s(on\w+|style|name)=|javascript:|data:|srcset="https|id="main"|data-kind|alert\(1\)<\/a><script/i);
    expect(html).not.toMatch(/class="to-part"/);
  });

  test('and what carries prose is kept', () => {
    const html = htmlOf('H<sub>2</sub>O, <kbd>19 mm</kbd>\n\n<details><summary>More</summary>\n\nwell *said*\n\n</details>');
    expect(html).toContain('H<sub>2</sub>O, <kbd>19 mm</kbd>');
    expect(html).toContain('<details><summary>More</summary>');
    expect(html).toContain('<em>said</em>');
  });

  test('and may hold links and pictures of ours', () => {
    expect(htmlOf('<a href="part:drum">x</a> y')).toContain('href="../parts/drum.html#drum"');
    expect(htmlOf('<p><img src="drum.jpg"></p>')).toContain('<figure class="picture">');
  });
});
