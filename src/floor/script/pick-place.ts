import type { Vec3 } from '../../geometry/vector.js';
import { placeAt } from '../../model/place-at.js';
import { make } from '../../page/dom.js';
import { length } from '../../quantity/format.js';
import type { DrawingTap } from './drawing.js';
import type { FloorSession } from './session.js';

/** Which way a tape runs along each axis, towards its end and towards its beginning. */
const TAPE_WORDS = [
  ['aft of', 'forward of'],
  ['right of', 'left of'],
  ['above', 'below'],
] as const;

/** What a tap says of a place: two of its three lengths. The third is asked for, since no drawing shows it: how deep behind the sheet, or from the datum. */
export function placeTapped(tap: DrawingTap, session: FloorSession): readonly HTMLElement[] {
  const { words, model, data } = session;
  const { units, origin } = data.coach;
  const axis = ([0, 1, 2] as const).reduce((a, b) => (Math.abs(tap.view.toViewer[b]) > Math.abs(tap.view.toViewer[a]) ? b : a));
  const panel = tap.sheet?.panel.id;
  const input = make('input', { id: 'pick-depth', autocomplete: 'off', autocapitalize: 'off' });
  const said = make('p', { class: 'fault', role: 'alert' });
  const use = make('button', { type: 'button', class: 'main', id: 'pick-use' }, words('floor.tap.useplace'));
  const tolerance = `${Math.ceil(tap.spreadMm)} mm`;
  use.addEventListener('click', () => {
    const depth = input.value.trim();
    const at = typedPlace(tap.at, origin, units)
      .map((one, i) => (i === axis ? depthTyped(depth, axis, tap) : one))
      .join(', ');
    const read = depth === '' ? words('floor.tap.needdepth') : placeAt(at, model);
    if (typeof read === 'string') {
      said.textContent = data.language === 'en' || depth === '' ? read : words('floor.tap.badlength');
      return;
    }
    session.fill('at', at);
    session.fill('tolerance', tolerance);
    session.show('form');
  });
  return [
    make('p', {}, words('floor.tap.tapped', { spread: length(tap.spreadMm, units) })),
    make(
      'label',
      { for: 'pick-depth' },
      panel === undefined ? words(`floor.tap.depth.${'xyz'[axis]}`) : words('floor.tap.depth', { id: panel }),
    ),
    input,
    said,
    make('p', { class: 'pick' }, use),
  ];
}

/** Behind a sheet as a tape tells it; without one, from the datum. */
function depthTyped(depth: string, axis: 0 | 1 | 2, { sheet }: DrawingTap): string {
  if (!sheet) return depth;
  const [up, down] = TAPE_WORDS[axis];
  return `${depth} ${(sheet.into[axis] ?? 0) > 0 ? up : down} ${sheet.panel.id}`;
}

/** A place as it is typed, each length in the store's units: to a quarter of an inch or a millimetre. */
export const typedPlace = (at: Vec3, origin: Vec3, units: string): readonly string[] =>
  at.map((value, i) => {
    const own = value - (origin[i] as number);
    return units === 'metric' ? `${Math.round(own)} mm` : `${Math.round((own / 25.4) * 4) / 4} in`;
  });
