import { lazy } from '../../compute/lazy-value.js';

/**
 * Screens that the page carries as text where scripts run: an element is made of each when it is first asked for, since tens of thousands
 * of elements would keep a phone busy before anything can be touched.
 */
export interface ScreenStore {
  /** The element with that id, its screen made where it is not yet; undefined where no screen has it. */
  bring(id: string): Element | undefined;
  /** Calls `act` with each screen that is there, and with every other as it is made. */
  eachMade(act: (screen: Element) => void): void;
  /** The words of a screen's first list. */
  listText(id: string): string;
}

/** Where a screen begins. */
const START = /<(?:article|section) class="screen[^"]*" id="([^"]+)"/gu;

export function screenStore(): ScreenStore {
  const held = [...document.querySelectorAll('script.held')];
  // Not while the page opens: a long one keeps a phone busy with this alone.
  const all = lazy(() => {
    const text = held.map(textOf).join('');
    return { text, stretches: stretchesOf(text) };
  });
  const acts: ((screen: Element) => void)[] = [];

  const make = ([from, to]: Stretch): void => {
    const template = document.createElement('template');
    template.innerHTML = all().text.slice(from, to);
    const screen = template.content.firstElementChild;
    if (!screen) return;
    held[0]?.before(screen);
    for (const act of acts) act(screen);
  };
  return {
    bring(id) {
      const there = document.getElementById(id);
      if (there) return there;
      const { text, stretches } = all();
      const stretch = stretches.get(id) ?? holding(text, id, stretches);
      if (stretch) make(stretch);
      return document.getElementById(id) ?? undefined;
    },
    eachMade(act) {
      acts.push(act);
      for (const screen of document.querySelectorAll('.screen')) act(screen);
    },
    listText(id) {
      const { text, stretches } = all();
      const [from, to] = stretches.get(id) ?? [0, 0];
      if (to === 0) return [...(document.getElementById(id)?.querySelector('dl')?.children ?? [])].map(textOf).join(' ');
      const start = text.indexOf('<dl>', from);
      return start < 0 || start >= to ? '' : spoken(text.slice(start, text.indexOf('</dl>', start)));
    },
  };
}

const textOf = (one: Element): string => one.textContent ?? '';

type Stretch = readonly [from: number, to: number];

/** Where each screen stands in the text, by its id. */
function stretchesOf(text: string): ReadonlyMap<string, Stretch> {
  const starts = [...text.matchAll(START)].map((match) => [match[1] as string, match.index] as const);
  return new Map(starts.map(([id, from], i) => [id, [from, starts[i + 1]?.[1] ?? text.length]] as const));
}

/** The screen within which something has that id. */
function holding(text: string, id: string, stretches: ReadonlyMap<string, Stretch>): Stretch | undefined {
  const at = /^[\w.-]+$/u.test(id) ? text.indexOf(` id="${id}"`) : -1;
  if (at < 0) return undefined;
  for (const [from, to] of stretches.values()) if (at > from && at < to) return [from, to];
  return undefined;
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#x27': "'",
  '#x60': '`',
  '#x3D': '=',
};

/** What markup says, without its tags. */
export const spoken = (markup: string): string =>
  markup.replace(/<[^>]*>/gu, ' ').replace(/&([a-z]+|#x[\dA-F]+);/gu, (whole, name: string) => ENTITIES[name] ?? whole);
