import { lazy } from '../../compute/lazy-value.js';
import type { Vec3 } from '../../geometry/vector.js';
import { anchor } from '../../model/anchor.js';
import { length, lengthDown, positionWords } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import type { ScrewAt } from '../../query/lookup/screw.js';
import { SCREW_LOOK_MM } from '../../query/release/screw-obstacles.js';
import { element, ifThere, make } from '../dom.js';
import { type PanZoom, panZoom } from '../pan-zoom.js';
import { type NearData, type PocketData, searchEntries, type TapView } from '../pocket-data.js';
import { type NearHere, nearHere } from './near-here.js';
import { underFinger } from './under-finger.js';
import type { Spoken } from './units.js';

/** How far about a tap is looked: 4 in. */
const WITHIN_MM = 101.6;
const MOST_SHOWN = 40;
/** On a phone held upright a view begins with a part of the coach, this large at least. */
const LEAST_PX_PER_MM = 0.06;
/** Half a finger on the screen. */
const FINGER_PX = 22;
const MOST_UNDER = 8;
const SVG = 'http://www.w3.org/2000/svg';

export interface Coach {
  /** Shows a view, with a ring at a spot of it. */
  show(key: string, spot?: readonly [number, number]): void;
}

/** Layers, fingers and taps on the drawings of the coach. */
export function coach(data: PocketData, nearData: () => NearData, { words, units }: Spoken): Coach {
  const place = ifThere<HTMLDivElement>('here');
  if (!place) return { show: () => {} };
  const records = lazy(nearData);
  const asked = lazy(() => nearHere(records()));
  const cards = new Map(searchEntries(data).map(({ id, title }) => [id, title] as const));
  const tell = (at: Vec3, onSheet = true, drawn: readonly string[] = []): void => {
    place.replaceChildren(...answer(asked(), at, { words, units, cards }));
    if (!onSheet) place.prepend(make('p', { class: 'quiet' }, words('tap.plane')));
    if (drawn.length > 0) place.prepend(make('h3', {}, words('tap.under')), linksTo(drawn, cards));
    place.focus({ preventScroll: true });
    place.scrollIntoView({ block: 'nearest' });
  };
  const seen = new Set<string>();
  const drawn = new Map<string, { readonly svg: SVGSVGElement; readonly pan: PanZoom }>();
  for (const view of data.views) {
    const section = element<HTMLElement>(`v-${view.key}`);
    const svg = section.querySelector<SVGSVGElement>('svg.plan');
    if (!svg) continue;
    const pan = panZoom(svg, (spot, pxPerMm) => {
      ring(svg, spot, 12 / pxPerMm);
      const { at, onSheet } = asked().under(view, spot);
      const isOn = (medium: string): boolean => svg.querySelector(`.ly-${medium}:not(.off)`) !== null;
      tell(at, onSheet, underFinger(records(), view, spot, { reachMm: FINGER_PX / pxPerMm, isOn }).slice(0, MOST_UNDER));
    });
    drawn.set(view.key, { svg, pan });
    for (const button of section.querySelectorAll<HTMLButtonElement>('button[data-zoom]'))
      button.addEventListener('click', () => {
        const times = Number(button.dataset.zoom);
        if (times === 0) pan.show();
        else pan.zoom(times);
      });
    for (const link of svg.querySelectorAll('a'))
      link.addEventListener('keydown', (event) => {
        if (event.key === 'Enter') window.location.hash = link.getAttribute('href') ?? '';
      });
  }
  element<HTMLElement>('layers').addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    for (const layer of document.querySelectorAll(`.plan .ly[data-medium="${CSS.escape(target.value)}"]`))
      layer.classList.toggle('off', !target.checked);
  });
  askByNumbers({ words, units }, tell);
  return {
    show(key, spot) {
      const view = data.views.find((one) => one.key === key) ?? data.views[0];
      if (!view) return;
      showOnly(view);
      const found = drawn.get(view.key);
      if (!found) return;
      if (spot) {
        ring(found.svg, spot, 90);
        found.pan.show(spot, 3000);
      } else if (!seen.has(key)) found.pan.begin(LEAST_PX_PER_MM);
      seen.add(key);
    },
  };
}

function showOnly({ key }: TapView): void {
  for (const one of document.querySelectorAll('.view')) one.classList.toggle('here', one.id === `v-${key}`);
  for (const link of document.querySelectorAll('#views a')) {
    if (link.getAttribute('href') === `#v-${key}`) link.setAttribute('aria-current', 'true');
    else link.removeAttribute('aria-current');
  }
}

function ring(svg: SVGSVGElement, [x, y]: readonly [number, number], radius: number): void {
  const circle = document.createElementNS(SVG, 'circle');
  for (const [name, value] of Object.entries({ cx: x, cy: y, r: radius })) circle.setAttribute(name, String(value));
  svg.querySelector('.ring')?.replaceChildren(circle);
}

/** Things that have a card, each with what it is called. */
const linksTo = (ids: readonly string[], cards: Told['cards']): HTMLElement =>
  make('ul', { class: 'links' }, ...ids.map((id) => make('li', {}, named(id, cards), cards.get(id) ?? '')));

const named = (id: string, cards: Told['cards']): Node =>
  cards.has(id) ? make('a', { href: `#${anchor(id)}` }, id) : make('span', { class: 'id' }, id);

interface Told extends Spoken {
  /** Titles of the cards by id. */
  readonly cards: ReadonlyMap<string, string>;
}

function answer(here: NearHere, at: Vec3, { words, units, cards }: Told): readonly Node[] {
  const hits = here.near(at, WITHIN_MM);
  const within = units.told(length(WITHIN_MM, 'both'));
  return [
    make('h3', {}, words('tap.here', { place: units.told(positionWords(at, 'both')) })),
    ...screwWords(here.screw(at), { words, units }).map((text) => make('p', {}, text)),
    make('p', {}, words(hits.length > 0 ? 'tap.within' : 'tap.nothing', { distance: within })),
    make(
      'ul',
      { class: 'links' },
      ...hits.slice(0, MOST_SHOWN).map(({ id, kind, distanceMm }) => {
        const away =
          distanceMm === 0 ? words('tap.inside') : words('tap.away', { distance: units.told(length(distanceMm, 'both')) });
        return make('li', {}, named(id, cards), [cards.get(id) || words(`kind.${kind}`), away].join(', '));
      }),
    ),
  ];
}

function screwWords(screw: ScrewAt | undefined, { words, units }: Spoken): readonly string[] {
  if (!screw) return [words('tap.noface')];
  const { panel, depthMm, meets, metal } = screw;
  const met = meets ? `${meets.id} (${words(`kind.${meets.kind}`)})` : '';
  const depth = units.told(lengthDown(depthMm, 'both'));
  return [
    depthMm < 1 ? words('tap.screw.zero', { panel, met }) : words('tap.screw', { panel, depth }),
    meets ? words('tap.screw.met', { met }) : words('tap.screw.free', { depth: units.told(lengthDown(SCREW_LOOK_MM, 'both')) }),
    ...(metal.length > 0
      ? [
          words('tap.screw.metal', {
            ids: metal
              .map(({ id, fromMm, toMm }) => `${id} ${units.told(length(fromMm, 'both'))} – ${units.told(length(toMm, 'both'))}`)
              .join(', '),
          }),
        ]
      : []),
    words('tap.screw.caution'),
  ];
}

/** A place typed as three numbers: for a keyboard, and for a tape. */
function askByNumbers({ words, units }: Spoken, tell: (at: Vec3) => void): void {
  const nameUnit = (): void => {
    element<HTMLElement>('point-unit').textContent = words(units.now() === 'metric' ? 'tap.mm' : 'tap.inches');
  };
  nameUnit();
  units.onChange(nameUnit);
  element<HTMLFormElement>('point').addEventListener('submit', (event) => {
    event.preventDefault();
    const typed = ['x', 'y', 'z'].map((axis) =>
      element<HTMLInputElement>(`point-${axis}`).value.trim().replace('−', '-').replace(',', '.'),
    );
    if (!typed.every((one) => /^[-+]?\d+(?:\.\d+)?$/u.test(one))) {
      element<HTMLDivElement>('here').replaceChildren(make('p', { class: 'caution' }, words('tap.badplace')));
      return;
    }
    const mmPerUnit = units.now() === 'metric' ? 1 : MM_PER_IN;
    tell(typed.map((one) => Number(one) * mmPerUnit) as unknown as Vec3);
  });
}
