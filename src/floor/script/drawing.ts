import type { Vec3 } from '../../geometry/vector.js';
import { element, make } from '../../page/dom.js';
import { type PanZoom, panZoom } from '../../page/pan-zoom.js';
import type { TapView } from '../../page/pocket-data.js';
import { type UnderTap, underTap } from '../../page/under-tap.js';
import { drilledSheets } from '../../query/release/drilled-sheets.js';
import type { FloorSession } from './session.js';

/** A tap on a drawing of the coach. */
export interface DrawingTap extends UnderTap {
  readonly view: TapView;
  /** In the view's plane, mm: along `right` and along `up`. */
  readonly flat: readonly [number, number];
  /** A fingertip covers so much of the coach, to either side, mm. */
  readonly spreadMm: number;
}

/** What is shown below the drawing after a tap. */
export type AfterTap = (tap: DrawingTap) => readonly HTMLElement[];

const SVG = 'http://www.w3.org/2000/svg';
/** Half of what a fingertip covers, px. Common practice, no source. */
const FINGER_PX = 8;
const LEAST_PX_PER_MM = 0.06;

/** The screen with the drawings: whoever opens it says what a tap is asked for. */
export function drawingScreen(session: FloorSession): { open(title: string, after: AfterTap): void } {
  const { data, model } = session;
  const below = element<HTMLDivElement>('pick-found');
  const sheets = drilledSheets(model);
  const pans = new Map<string, PanZoom>();
  const begun = new Set<string>();
  let ask: AfterTap = () => [];
  const view = (key: string): void => {
    for (const one of document.querySelectorAll<HTMLElement>('#pick .view')) one.classList.toggle('here', one.id === `v-${key}`);
    for (const one of document.querySelectorAll<HTMLElement>('#pick [data-view]'))
      one.setAttribute('aria-pressed', String(one.dataset.view === key));
    if (!begun.has(key)) pans.get(key)?.begin(LEAST_PX_PER_MM);
    begun.add(key);
  };
  for (const one of data.views) {
    const svg = element<HTMLElement>(`v-${one.key}`).querySelector<SVGSVGElement>('svg.plan');
    if (!svg) continue;
    const pan = panZoom(svg, ([x, y], pxPerMm) => {
      ring(svg, [x, y], 12 / pxPerMm);
      const tap: DrawingTap = {
        ...underTap(sheets, one, [x, y]),
        view: one,
        flat: [one.left + x, one.top - y],
        spreadMm: FINGER_PX / pxPerMm,
      };
      below.replaceChildren(...ask(tap));
      below.scrollIntoView({ block: 'nearest' });
    });
    pans.set(one.key, pan);
  }
  for (const button of document.querySelectorAll<HTMLElement>('#pick [data-view]'))
    button.addEventListener('click', () => view(button.dataset.view ?? ''));
  for (const button of document.querySelectorAll<HTMLElement>('#pick [data-zoom]'))
    button.addEventListener('click', () => {
      const here = document.querySelector('#pick .view.here')?.id.slice(2) ?? '';
      const times = Number(button.dataset.zoom);
      if (times === 0) pans.get(here)?.show();
      else pans.get(here)?.zoom(times);
    });
  return {
    open(title, after) {
      ask = after;
      element('pick-title').textContent = title;
      below.replaceChildren(make('p', { class: 'quiet' }, session.words('floor.tap.taphere')));
      session.show('pick');
      view(document.querySelector('#pick .view.here')?.id.slice(2) ?? data.views[0]?.key ?? '');
    },
  };
}

function ring(svg: SVGSVGElement, [x, y]: readonly [number, number], radius: number): void {
  const circle = document.createElementNS(SVG, 'circle');
  for (const [name, value] of Object.entries({ cx: x, cy: y, r: radius })) circle.setAttribute(name, String(value));
  svg.querySelector('.ring')?.replaceChildren(circle);
}

/** Where a place lies in a view's plane, mm. */
export const flatIn = ({ right, up }: TapView, at: Vec3): readonly [number, number] => [
  at[0] * right[0] + at[1] * right[1] + at[2] * right[2],
  at[0] * up[0] + at[1] * up[1] + at[2] * up[2],
];
