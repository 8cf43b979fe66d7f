import type { Element, ElementContent, Root } from 'hast';
import { SKIP, visit } from 'unist-util-visit';
import { inside, isAway } from '../journal/compile/paths.ts';
import { decoded } from '../journal/values/link.ts';
import type { NoteContext, NotePicture } from './note-context.ts';
import { contextOf, type NoteFile } from './note-file.ts';
import { pointMarks, pointsKey } from './points.ts';

/**
 * Pictures of the journal get their renderings; alone in a paragraph, they become figures. Amid a sentence they stay
 * where they are, with their caption under the paragraph.
 *
 *     ![The drum](drum.jpg "As it came off.")
 *
 *     <figure class="picture"><a href="../pictures/drum-1f-2048.webp"><picture>
 *       <source type="image/webp" srcset="../pictures/drum-1f-480.webp 480w, …" sizes="…">
 *       <img src="../pictures/drum-1f-1280.jpg" alt="The drum" width="2048" height="1536" loading="lazy" decoding="async"
 *         data-colour="#7a6a58">
 *     </picture></a><figcaption>As it came off. <span class="taken">20:15</span></figcaption></figure>
 *
 * A picture on another site would be a request that leaves this one: it becomes a link. A picture that
 * is not known stays a plain image.
 */
export function pictures(): (tree: Root, file: NoteFile) => void {
  return (tree, file) => {
    const context = contextOf(file);
    visit(tree, 'element', (node, index, parent) => {
      if (node.tagName === 'img') becomeInline(node, context);
      const figures = node.tagName === 'p' ? figuresOf(node, context) : null;
      if (index === undefined || !parent) return true;
      if (figures === null) {
        if (node.tagName === 'p') parent.children.splice(index + 1, 0, ...captionsAmid(node, context));
        return true;
      }
      parent.children.splice(index, 1, ...figures);
      return [SKIP, index + figures.length];
    });
  };
}

/** The figures of a paragraph that holds known pictures and nothing else; null for any other. */
function figuresOf(paragraph: Element, context: NoteContext): Element[] | null {
  const figures: Element[] = [];
  for (const child of paragraph.children) {
    if (child.type === 'text' && child.value.trim() === '') continue;
    if (child.type === 'element' && child.tagName === 'br') continue;
    const picture = child.type === 'element' && child.tagName === 'img' ? pictureOf(child, context) : null;
    if (picture === null) return null;
    figures.push(figure(picture));
  }
  return figures.length > 0 ? figures : null;
}

/** A picture amid a sentence stays there; what its caption says more than its text is read under the paragraph. */
function captionsAmid(paragraph: Element, context: NoteContext): Element[] {
  const captions: Element[] = [];
  visit(paragraph, 'element', (node) => {
    const caption = node.tagName === 'img' ? (pictureOf(node, context)?.caption ?? null) : null;
    if (caption === null || caption === node.properties.alt) return;
    captions.push(element('p', { className: ['picture-words'] }, [text(caption)]));
  });
  return captions;
}

function pictureOf(image: Element, context: NoteContext): NotePicture | null {
  const { src } = image.properties;
  if (typeof src !== 'string' || isAway(src)) return null;
  const path = inside(context.folder, decoded(src));
  return path === null ? null : (context.pictures.get(path) ?? null);
}

function becomeInline(image: Element, context: NoteContext): void {
  const picture = pictureOf(image, context);
  const { src, alt } = image.properties;
  if (picture) Object.assign(image, imageWith(picture), { tagName: 'img' });
  else if (typeof src === 'string' && isAway(src)) {
    Object.assign(image, element('a', { href: src, className: ['to-picture'] }, [text(alt ? String(alt) : src)]));
  }
}

function figure(picture: NotePicture): Element {
  const sources = picture.sources.map(({ type, srcset }) => element('source', { type, srcSet: srcset, sizes: picture.widths }, []));
  const { points, width, height, ofBag } = picture;
  const marks = points.length === 0 ? [] : [pointMarks(points, width, height)];
  const link = element('a', { href: picture.full }, [element('picture', {}, [...sources, imageWith(picture)]), ...marks]);
  const className = ['picture', ...(marks.length === 0 ? [] : ['pointing']), ...(ofBag ? ['of-bag'] : [])];
  return element('figure', { className }, [link, ...captionOf(picture)]);
}

/** What is written under a picture, with the key of its marks: nothing of a figure may follow its caption. */
function captionOf({ caption, taken, points }: NotePicture): Element[] {
  const words = caption === null ? [] : [text(caption)];
  const when = taken === '' ? [] : [element('span', { className: ['taken'] }, [text(taken)])];
  const space = words.length + when.length > 1 ? [text(' ')] : [];
  const key = points.length === 0 ? [] : [pointsKey(points)];
  const under = [...words, ...space, ...when, ...key];
  return under.length === 0 ? [] : [element('figcaption', {}, under)];
}

function imageWith({ src, alt, width, height, colour }: NotePicture): Element {
  const before = colour === null ? {} : { dataColour: colour };
  return element('img', { src, alt, width, height, loading: 'lazy', decoding: 'async', ...before }, []);
}

function element(tagName: string, properties: Element['properties'], children: ElementContent[]): Element {
  return { type: 'element', tagName, properties, children };
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
