/** The element of an id, which the page has. */
export function byId<Kind extends HTMLElement>(id: string, kind: new () => Kind): Kind {
  const found = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new Error(`the page has no ${kind.name} called ${id}`);
}

/** An element with text in it. */
export function textElement(name: string, text: string): HTMLElement {
  const element = document.createElement(name);
  element.textContent = text;
  return element;
}

/** Puts text where it is not yet, so that nothing is announced twice. */
export function say(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Shows a picture, which is SVG of our own making and holds no script. */
export function showSvg(element: HTMLElement, svg: string): void {
  element.innerHTML = svg;
}
