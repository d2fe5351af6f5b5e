/** An element of an XML document. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Text directly inside, without what surrounds it. */
  readonly text: string;
}

/** The first child of a name. */
export function child(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((each) => each.name === name);
}

/** The children of a name. */
export function childrenOf(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.filter((each) => each.name === name);
}

/** Text of the first child of a name; empty without one. */
export function childText(element: XmlElement | undefined, name: string): string {
  return child(element, name)?.text ?? '';
}

/** Number of the first child of a name, or `undefined`. */
export function childNumber(element: XmlElement | undefined, name: string): number | undefined {
  const text = childText(element, name);
  const number = Number(text);
  return text === '' || !Number.isFinite(number) ? undefined : number;
}
