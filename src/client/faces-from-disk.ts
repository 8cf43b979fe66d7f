/**
 * On the web a page keeps the faces that it began in, so that nothing moves while it is read: its own where they have come by
 * then, as on every page but the first. From a disk they are always there a moment later, and are taken then.
 */
const here = document.currentScript;

if (location.protocol === 'file:' && here instanceof HTMLScriptElement) {
  const faces = document.createElement('link');
  faces.rel = 'stylesheet';
  faces.href = new URL('../css/faces-from-disk.css', here.src).href;
  document.head.append(faces);
}
