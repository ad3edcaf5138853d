/** The element of that id. Throws where the page lacks it: the page and its script are made together. */
export function element<T extends Element>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`no #${id} in this page`);
  return found as unknown as T;
}

export const ifThere = <T extends Element>(id: string): T | undefined =>
  (document.getElementById(id) as unknown as T | null) ?? undefined;

type Child = Node | string;

/** An element with text or elements in it; text stays text, whatever it says. */
export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children);
  return made;
}

/** Data that the page carries for its script. */
export const dataOf = <T>(id: string): T => JSON.parse(element<HTMLScriptElement>(id).textContent ?? 'null') as T;
