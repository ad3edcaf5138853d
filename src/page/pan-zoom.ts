/** What of a drawing is shown, in the drawing's own units. */
export interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PanZoom {
  /** Shows the part of that width about a place; the whole without one. */
  show(at?: readonly [number, number], width?: number): void;
  zoom(times: number): void;
  /** Shows the whole, or its left part where that would be smaller than so many px a unit. */
  begin(leastPxPerUnit: number): void;
}

/** A finger that moved less than this tapped, px. */
const STILL_PX = 8;
const MOST_TIMES = 40;

/** The window zoomed so many times about a place that stays where it is, kept within the whole. */
export function zoomed(window: Window, whole: Window, times: number, about: readonly [number, number]): Window {
  const wanted = Math.min(1, Math.max(1 / MOST_TIMES, window.width / times / whole.width));
  const [width, height] = [whole.width * wanted, whole.height * wanted];
  const [u, v] = [(about[0] - window.x) / window.width, (about[1] - window.y) / window.height];
  return within({ x: about[0] - u * width, y: about[1] - v * height, width, height }, whole);
}

function within(window: Window, whole: Window): Window {
  const held = (low: number, size: number, from: number, all: number): number => Math.min(Math.max(low, from), from + all - size);
  return {
    ...window,
    x: held(window.x, window.width, whole.x, whole.width),
    y: held(window.y, window.height, whole.y, whole.height),
  };
}

/**
 * Pans by one finger, zooms by two, by the wheel and by `zoom`; a tap calls `tapped` with the place in the drawing. While fingers move, the
 * finished drawing is moved as it is; it is drawn anew when they rest.
 */
export function panZoom(svg: SVGSVGElement, tapped: (at: readonly [number, number], pxPerUnit: number) => void): PanZoom {
  const box = svg.viewBox.baseVal;
  const whole: Window = { x: box.x, y: box.y, width: box.width, height: box.height };
  let shown = whole;
  let moving: Window | undefined;
  const fingers = new Map<number, readonly [number, number]>();
  let start: { readonly window: Window; readonly fingers: readonly (readonly [number, number])[] } | undefined;
  let moved = 0;
  let frame = 0;
  /** The frame's own place on the screen, asked for once a movement: to ask in between would lay the page out each time. */
  let frameBox: DOMRect | undefined;
  const boxOfFrame = (): DOMRect => frameBox ?? (svg.parentElement as Element).getBoundingClientRect();

  const settle = (window: Window): void => {
    shown = window;
    moving = undefined;
    svg.style.transform = '';
    svg.setAttribute('viewBox', `${window.x} ${window.y} ${window.width} ${window.height}`);
    const scale = scaleOf(window);
    if (scale > 0) svg.style.setProperty('--unit', String(1 / scale));
  };
  const scaleOf = (window: Window): number => {
    const { width, height } = boxOfFrame();
    return Math.min(width / window.width, height / window.height);
  };
  /** From the screen to the drawing, when `window` fills the frame. */
  const placeIn = ([x, y]: readonly [number, number], window: Window): readonly [number, number] => {
    const within = boxOfFrame();
    const scale = scaleOf(window);
    const left = within.left + (within.width - window.width * scale) / 2;
    const top = within.top + (within.height - window.height * scale) / 2;
    return [window.x + (x - left) / scale, window.y + (y - top) / scale];
  };
  const paint = (): void => {
    frame = 0;
    if (!moving) return;
    const times = shown.width / moving.width;
    const scale = scaleOf(shown);
    const dx = (shown.x + shown.width / 2 - (moving.x + moving.width / 2)) * scale * times;
    const dy = (shown.y + shown.height / 2 - (moving.y + moving.height / 2)) * scale * times;
    svg.style.transform = `translate(${dx}px, ${dy}px) scale(${times})`;
  };
  const move = (window: Window): void => {
    moving = window;
    if (frame === 0) frame = requestAnimationFrame(paint);
  };
  const begin = (): void => {
    frameBox = undefined;
    frameBox = boxOfFrame();
    start = { window: moving ?? shown, fingers: [...fingers.values()] };
  };
  const follow = (): void => {
    if (!start || start.fingers.length !== fingers.size) return;
    const now = [...fingers.values()];
    const [a, b] = start.fingers as [readonly [number, number], (readonly [number, number])?];
    const [c, d] = now as [readonly [number, number], (readonly [number, number])?];
    const spread = (p: readonly [number, number], q: readonly [number, number]): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
    const middle = (p: readonly [number, number], q = p): readonly [number, number] => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
    const times = b && d ? Math.max(0.05, spread(c, d)) / Math.max(1, spread(a, b)) : 1;
    const grown = zoomed(start.window, whole, times, placeIn(middle(a, b), start.window));
    const under = placeIn(middle(c, d), grown);
    const held = placeIn(middle(a, b), start.window);
    move(within({ ...grown, x: grown.x + held[0] - under[0], y: grown.y + held[1] - under[1] }, whole));
  };

  svg.addEventListener('pointerdown', (event) => {
    svg.setPointerCapture(event.pointerId);
    if (fingers.size === 0) moved = 0;
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
    begin();
  });
  svg.addEventListener('pointermove', (event) => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    moved += Math.hypot(event.clientX - before[0], event.clientY - before[1]);
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
    if (moved >= STILL_PX) follow();
  });
  const lift = (event: PointerEvent, isTap: boolean): void => {
    if (!fingers.delete(event.pointerId)) return;
    if (fingers.size > 0) {
      moved = STILL_PX;
      begin();
      return;
    }
    start = undefined;
    frameBox = undefined;
    if (moving) settle(moving);
    else if (isTap && moved < STILL_PX) tapped(placeIn([event.clientX, event.clientY], shown), scaleOf(shown));
  };
  svg.addEventListener('pointerup', (event) => lift(event, true));
  svg.addEventListener('pointercancel', (event) => lift(event, false));
  // A tap on a link inside the drawing is a tap on the drawing.
  svg.addEventListener('click', (event) => event.preventDefault());
  svg.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      settle(zoomed(shown, whole, event.deltaY < 0 ? 1.25 : 0.8, placeIn([event.clientX, event.clientY], shown)));
    },
    { passive: false },
  );
  return {
    show(at, width = whole.width) {
      if (!at) return settle(whole);
      const times = shown.width / width;
      const window = zoomed(shown, whole, times, at);
      settle(within({ ...window, x: at[0] - window.width / 2, y: at[1] - window.height / 2 }, whole));
    },
    begin(least) {
      const scale = scaleOf(whole);
      const times = scale > 0 ? least / scale : 1;
      settle(times > 1 ? zoomed(whole, whole, times, [whole.x, whole.y + whole.height / 2]) : whole);
    },
    zoom: (times) => settle(zoomed(shown, whole, times, [shown.x + shown.width / 2, shown.y + shown.height / 2])),
  };
}
