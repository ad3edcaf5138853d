import { element } from '../dom.js';
import type { Keep } from '../keep.js';
import type { PocketData } from '../pocket-data.js';
import type { PageWords } from '../words.js';
import type { ScreenStore } from './screen-store.js';
import { type FirstUnits, inUnits } from './unit-order.js';

/** Which units come first on the page, as its reader chose. */
export interface UnitChoice {
  now(): FirstUnits;
  /** A text of the script's own, in the order that was chosen. */
  told(text: string): string;
  onChange(act: (before: FirstUnits) => void): void;
}

/** How the script speaks: in whose words, in which units first. */
export interface Spoken {
  readonly words: PageWords;
  readonly units: UnitChoice;
}

/** Two buttons; each screen as it is made, and all that were made when another is chosen. */
export function chooseUnits(
  data: Pick<PocketData, 'units'>,
  keep: Keep,
  { eachMade }: Pick<ScreenStore, 'eachMade'>,
): UnitChoice {
  const own: FirstUnits = data.units === 'metric' ? 'metric' : 'us';
  let now: FirstUnits = keep.get('units') === 'metric' ? 'metric' : keep.get('units') === 'us' ? 'us' : own;
  const acts: ((before: FirstUnits) => void)[] = [];
  const written = new WeakMap<Text, string>();
  const screens: Element[] = [];
  const turn = (screen: Element): void => {
    for (const text of textsOf(screen)) {
      const first = written.get(text) ?? text.data;
      written.set(text, first);
      const wanted = now === own ? first : inUnits(first, now);
      if (wanted !== text.data) text.data = wanted;
    }
  };
  const buttons = [...element<HTMLElement>('units').querySelectorAll<HTMLButtonElement>('button')];
  const press = (): void => {
    for (const button of buttons) button.setAttribute('aria-pressed', String(button.dataset.units === now));
  };
  for (const button of buttons)
    button.addEventListener('click', () => {
      const before = now;
      now = button.dataset.units === 'metric' ? 'metric' : 'us';
      keep.put('units', now);
      press();
      if (now === before) return;
      for (const screen of screens) turn(screen);
      for (const act of acts) act(before);
    });
  press();
  eachMade((screen) => {
    screens.push(screen);
    if (now !== own) turn(screen);
  });
  return { now: () => now, told: (text) => inUnits(text, now), onChange: (act) => void acts.push(act) };
}

/** What a screen says; not what the script itself writes into it, which asks for the order. */
function textsOf(screen: Element): readonly Text[] {
  const texts: Text[] = [];
  const walker = document.createTreeWalker(screen, NodeFilter.SHOW_TEXT);
  for (let text = walker.nextNode(); text; text = walker.nextNode())
    if (/\d/u.test((text as Text).data) && !text.parentElement?.closest('svg, #here, #gauges, #hits, #note-list'))
      texts.push(text as Text);
  return texts;
}
