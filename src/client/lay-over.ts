/**
 * Lays the picture as left over the one as found, with a slider between them. Without this script they stand
 * beside each other, which shows the same.
 */

const AT_FIRST = 50;
const LAY_OVER = 'Lay one over the other';
const APART = 'Beside each other again';

function make<K extends keyof HTMLElementTagNameMap>(tag: K, className: string, text = ''): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  element.className = className;
  element.textContent = text;
  return element;
}

/** Adds the button that lays two pictures over each other, and the slider that it brings. */
function offer(pair: HTMLElement, number: number): void {
  const line = make('p', 'lay-over on-screen');
  const button = make('button', '', LAY_OVER);
  button.type = 'button';
  const slider = make('input', '');
  Object.assign(slider, { type: 'range', min: '0', max: '100', step: '1', value: String(AT_FIRST), id: `between-${number}` });
  const label = make('label', '', 'As found to the left, as left to the right');
  label.htmlFor = slider.id;
  label.hidden = true;
  slider.hidden = true;
  const slide = (): void => pair.style.setProperty('--between', `${slider.value}%`);
  slider.addEventListener('input', slide);
  button.addEventListener('click', () => {
    const laid = pair.classList.toggle('laid-over');
    button.textContent = laid ? APART : LAY_OVER;
    label.hidden = !laid;
    slider.hidden = !laid;
    slide();
    if (laid) slider.focus();
  });
  line.append(button, label, slider);
  pair.append(line);
}

for (const [number, pair] of document.querySelectorAll<HTMLElement>('.compared[data-one-shape]').entries()) offer(pair, number);
