/** A place in a picture: a tap on it for a spot, a stroke over it for a box. */
import { type At, problemId, write } from './field-view.ts';
import { labelOf, make, newId } from './make.ts';
import { pictureOf } from './sending.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A stroke shorter than this, in per cent, was meant as a tap. */
const SHORTEST = 3;

export function placeField(at: At): HTMLElement {
  const { sheet, field, holder, around, way } = at;
  const file = String(around.find((group) => typeof group.file === 'string')?.file ?? '');
  const id = newId();
  const input = make('input', {
    id,
    type: 'text',
    inputmode: 'decimal',
    placeholder: '50,50',
    autocomplete: 'off',
    'aria-describedby': problemId(way),
  });
  const mark = make('span', { class: 'mark', 'aria-hidden': 'true' });
  const board = make('div', { class: 'board' }, ...(file === '' ? [] : [pictureOf(sheet, file, 'picture')]), mark);
  const show = (): void => {
    const [x = '', y = '', w = '0', h = '0'] = input.value.split(',').map((one) => one.trim());
    mark.hidden = y === '';
    for (const [name, value] of Object.entries({ left: x, top: y, width: w, height: h })) mark.style.setProperty(name, `${Number(value)}%`);
  };
  const set = (value: string): void => {
    input.value = value;
    write(at, value);
    show();
  };
  let from: Spot | null = null;
  board.addEventListener('pointerdown', (event) => {
    from = spotOf(board, event);
    board.setPointerCapture(event.pointerId);
  });
  board.addEventListener('pointerup', (event) => {
    if (from === null) return;
    set(placeBetween(from, spotOf(board, event)));
    from = null;
  });
  input.value = String(holder[field.name] ?? '');
  input.addEventListener('input', () => {
    write(at, input.value);
    show();
  });
  show();
  return make(
    'div',
    {},
    make('label', { for: id }, `${labelOf(field.name)}: touch the picture, or per cent from the left and the top`),
    input,
    board,
  );
}

function spotOf(board: HTMLElement, { clientX, clientY }: PointerEvent): Spot {
  const { left, top, width, height } = board.getBoundingClientRect();
  const within = (share: number): number => Math.min(100, Math.max(0, Math.round(share * 100)));
  return { x: within((clientX - left) / width), y: within((clientY - top) / height) };
}

function placeBetween(a: Spot, b: Spot): string {
  const [x, y, w, h] = [Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
  return w < SHORTEST || h < SHORTEST ? `${a.x},${a.y}` : `${x},${y},${w},${h}`;
}
