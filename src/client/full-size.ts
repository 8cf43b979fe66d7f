/**
 * Opens a picture over the page at its full size, and steps through the pictures of the page: arrow keys, swipes
 * or buttons; Escape, a tap beside it or the way back closes it. Without this script the same link opens the file.
 */

/** A finger that went so far sideways, and further than up or down, has swiped; in pixels of the page. */
const SWIPE = 40;

interface Shown {
  readonly link: HTMLAnchorElement;
  readonly image: HTMLImageElement;
  readonly source: HTMLSourceElement | null;
  readonly caption: Element | null;
}

const links = [...document.querySelectorAll<HTMLAnchorElement>('main a:has(img)')];
/** Each picture once, where it first stands. */
const pictures: Shown[] = links
  .filter((link, n) => links.findIndex(({ href }) => href === link.href) === n)
  .flatMap((link) => {
    const image = link.querySelector('img');
    const words = link.closest('figure')?.querySelector('figcaption') ?? null;
    return image === null ? [] : [{ link, image, source: link.querySelector('source'), caption: words }];
  });

const dialog = document.createElement('dialog');
const stage = document.createElement('div');
const caption = document.createElement('div');
const count = document.createElement('p');
let at = 0;
let openedBy: HTMLElement | null = null;

function button(text: string, act: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = text;
  made.addEventListener('click', act);
  return made;
}

const before = button('Previous', () => show(at - 1));
const after = button('Next', () => show(at + 1));
const whole = document.createElement('a');

function build(): void {
  dialog.className = 'full-size';
  dialog.tabIndex = -1;
  dialog.autofocus = true;
  dialog.setAttribute('aria-label', 'Picture at its full size');
  stage.className = 'stage';
  caption.className = 'caption';
  whole.textContent = 'The file itself';
  const controls = document.createElement('div');
  controls.className = 'controls';
  controls.append(before, count, after, whole, button('Close', close));
  count.setAttribute('role', 'status');
  dialog.append(stage, caption, controls);
  document.body.append(dialog);
}

/** Shows one of the page's pictures; past either end nothing happens. */
function show(number: number): void {
  const one = pictures[number];
  if (!one) return;
  at = number;
  const picture = document.createElement('picture');
  if (one.source) {
    const source = one.source.cloneNode() as HTMLSourceElement;
    source.sizes = '100vw';
    picture.append(source);
  }
  const image = one.image.cloneNode() as HTMLImageElement;
  image.loading = 'eager';
  picture.append(image);
  stage.replaceChildren(picture);
  caption.replaceChildren(...[...(one.caption?.childNodes ?? [])].map((node) => node.cloneNode(true)));
  count.textContent = `${number + 1} of ${pictures.length}`;
  before.disabled = number === 0;
  after.disabled = number === pictures.length - 1;
  whole.href = one.link.href;
  // What had the focus may be gone or disabled now, and would hear no key.
  const focused = document.activeElement;
  if (dialog.open && (!dialog.contains(focused) || focused?.matches(':disabled'))) dialog.focus();
}

function open(link: HTMLAnchorElement): void {
  if (dialog.parentNode === null) build();
  openedBy = link;
  show(pictures.findIndex((one) => one.link.href === link.href));
  dialog.showModal();
  // So that the way back, the gesture of a telephone too, leads to the page and not away from it.
  history.pushState({ fullSize: true }, '');
}

function close(): void {
  dialog.close();
}

dialog.addEventListener('close', () => {
  if ((history.state as { fullSize?: boolean } | null)?.fullSize) history.back();
  stage.replaceChildren();
  openedBy?.focus({ preventScroll: true });
});
window.addEventListener('popstate', () => {
  if (dialog.open) dialog.close();
});
dialog.addEventListener('keydown', ({ key }) => {
  const steps: Record<string, number> = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: pictures.length - 1 };
  const to = steps[key];
  if (to !== undefined) show(to);
});
dialog.addEventListener('click', ({ target }) => {
  if (target === stage || target === dialog) close();
});

let finger: Touch | null = null;
stage.addEventListener('touchstart', ({ touches }) => {
  finger = touches.length === 1 ? (touches[0] ?? null) : null;
});
stage.addEventListener('touchend', ({ changedTouches }) => {
  const [lifted] = changedTouches;
  // A picture that has been made larger with two fingers is moved about, not left.
  if (!finger || !lifted || (window.visualViewport?.scale ?? 1) > 1.05) return;
  const [across, down] = [lifted.clientX - finger.clientX, lifted.clientY - finger.clientY];
  finger = null;
  if (Math.abs(across) > Math.max(SWIPE, Math.abs(down))) show(across < 0 ? at + 1 : at - 1);
});

for (const link of links) {
  link.addEventListener('click', (event) => {
    // Held down, these keys ask the browser for a new tab, a new window or a copy.
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    open(link);
  });
}
