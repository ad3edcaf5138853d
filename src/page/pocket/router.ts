import type { ScreenStore } from './screen-store.js';

/** Shows one screen at a time, by what follows `#` in the address: links work as they do without scripts. Going back leads to where one was. */
export function route({ bring }: Pick<ScreenStore, 'bring'>, shown: (id: string) => void): void {
  const places = scrollPlaces();
  const go = (): void => {
    const asked = idIn(window.location.hash);
    const target = (asked !== '' && bring(asked)) || bring('find');
    const screen = target?.closest('.screen');
    if (!target || !screen) return;
    for (const old of document.querySelectorAll('.screen.here')) if (old !== screen) old.classList.remove('here');
    screen.classList.add('here');
    shown(target.id);
    const before = places.entered();
    if (asked === '') return;
    const heading = screen.querySelector('h1');
    heading?.setAttribute('tabindex', '-1');
    heading?.focus({ preventScroll: true });
    if (before !== undefined) window.scrollTo(0, before);
    else if (target === screen) window.scrollTo(0, 0);
    else target.scrollIntoView();
  };
  window.addEventListener('hashchange', go);
  go();
}

/** How far down each entry of the browser's history was read; nothing where the browser keeps no state. */
function scrollPlaces(): { entered(): number | undefined } {
  const read = new Map<number, number>();
  let here = 0;
  let count = 0;
  let waits = false;
  const note = (): void => {
    waits = false;
    read.set(here, window.scrollY);
  };
  window.addEventListener(
    'scroll',
    () => {
      if (!waits) requestAnimationFrame(note);
      waits = true;
    },
    { passive: true },
  );
  return {
    entered() {
      const known: unknown = window.history.state?.at;
      if (typeof known === 'number' && read.has(known)) {
        here = known;
        return read.get(known);
      }
      count += 1;
      here = count;
      try {
        window.history.scrollRestoration = 'manual';
        window.history.replaceState({ at: here }, '');
      } catch {
        // A preview that keeps no history: every screen begins at its top.
      }
      return undefined;
    },
  };
}

function idIn(hash: string): string {
  try {
    return decodeURIComponent(hash.slice(1));
  } catch {
    return hash.slice(1);
  }
}
