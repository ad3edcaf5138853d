import { leastPoints, type PictureNote } from '../../compute/camera/solve.js';
import { isPoint, knownPoint } from '../../compute/pictures/known-points.js';
import { locateInPhoto } from '../../compute/pictures/locate.js';
import { namedPoints, type PointName, pointLabel } from '../../compute/pictures/point-names.js';
import { type SolvedPhoto, solvePhoto } from '../../compute/pictures/solve-photo.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { element, make } from '../../page/dom.js';
import { lengthUp } from '../../quantity/format.js';
import type { Photo } from '../../records/index.js';
import { typedPlace } from './pick-place.js';
import type { FloorSession } from './session.js';
import { pictureTaken, type TakenPicture } from './taken-picture.js';

type Pixels = readonly [number, number];

/** The photo that a place was read from: it is kept together with the node. */
export interface PlacingPhoto {
  readonly picture: TakenPicture;
  readonly seen: readonly (PointName & { readonly px: Pixels })[];
}

const MOST_OFFERED = 10;
const MOST_TIMES = 16;

/** The screen on which a place is read from a photo just taken: known points are tapped, then the node. */
export class PhotoPlace {
  private picture: TakenPicture | undefined;
  private size: Pixels = [1, 1];
  private seen: (PointName & { readonly px: Pixels })[] = [];
  private cross: Pixels | undefined;
  private times = 1;
  private readonly named: readonly { readonly named: PointName; readonly at: Vec3 }[];
  private readonly byLabel: ReadonlyMap<string, PointName>;
  /** Set when its place is used. */
  used: PlacingPhoto | undefined;

  constructor(private readonly session: FloorSession) {
    this.named = namedPoints(session.model);
    this.byLabel = new Map(this.named.map(({ named }) => [pointLabel(named), named]));
    const image = element<HTMLImageElement>('mark-photo');
    image.addEventListener('load', () => {
      this.size = [image.naturalWidth, image.naturalHeight];
      this.draw();
    });
    image.addEventListener('click', (event) => {
      const box = image.getBoundingClientRect();
      this.cross = [
        ((event.clientX - box.left) / box.width) * this.size[0],
        ((event.clientY - box.top) / box.height) * this.size[1],
      ];
      this.draw();
    });
    for (const button of document.querySelectorAll<HTMLElement>('#mark [data-enlarge]'))
      button.addEventListener('click', () => this.enlarge(Number(button.dataset.enlarge)));
    element<HTMLInputElement>('mark-picture').addEventListener('change', () => void this.take());
    element('mark-add').addEventListener('click', () => this.addPoint());
    element('mark-use').addEventListener('click', () => this.use());
  }

  open(): void {
    this.picture = undefined;
    this.seen = [];
    this.cross = undefined;
    element<HTMLInputElement>('mark-picture').value = '';
    element<HTMLElement>('mark-work').hidden = true;
    const { data, model } = this.session;
    const surfaces = [...model.shell.panels, ...model.shell.members, ...model.shell.zones].map(({ id }) => id);
    element('mark-on-list').replaceChildren(...surfaces.map((value) => make('option', { value })));
    element('mark-name-list').replaceChildren(...[...this.byLabel.keys()].map((value) => make('option', { value })));
    this.say(data.words['floor.tap.marktake'] ?? '');
    this.session.show('mark');
  }

  /** A point is picked to a pixel only where a fingertip covers few of them. What was in the middle stays there. */
  private enlarge(times: number): void {
    const frame = element<HTMLElement>('mark-frame');
    const window_ = element<HTMLElement>('mark-window');
    const [u, v] = [
      (window_.scrollLeft + window_.clientWidth / 2) / frame.offsetWidth,
      (window_.scrollTop + window_.clientHeight / 2) / frame.offsetHeight,
    ];
    this.times = Math.min(MOST_TIMES, Math.max(1, this.times * times));
    frame.style.width = `${100 * this.times}%`;
    window_.scrollLeft = u * frame.offsetWidth - window_.clientWidth / 2;
    window_.scrollTop = v * frame.offsetHeight - window_.clientHeight / 2;
  }

  private say(text: string): void {
    element('mark-said').textContent = text;
  }

  private async take(): Promise<void> {
    const { words } = this.session;
    const [file] = element<HTMLInputElement>('mark-picture').files ?? [];
    const picture = file && (await pictureTaken(file));
    if (!picture) return void this.say(words('floor.tap.picture'));
    this.picture = picture;
    this.seen = [];
    element<HTMLImageElement>('mark-photo').src = `data:image/jpeg;base64,${picture.jpeg}`;
    element<HTMLElement>('mark-work').hidden = false;
    this.say(words('floor.tap.markpoint'));
  }

  private addPoint(): void {
    const { words } = this.session;
    const name = element<HTMLInputElement>('mark-name');
    const named = this.byLabel.get(name.value.trim());
    if (!this.cross) return void this.say(words('floor.tap.marktap'));
    if (!named) return void this.say(words('floor.tap.markname'));
    this.seen.push({ ...named, px: [Math.round(this.cross[0]), Math.round(this.cross[1])] });
    this.cross = undefined;
    name.value = '';
    this.draw();
    this.say(this.standing(this.solved()));
  }

  private solved(): SolvedPhoto {
    const photo = { id: 'here', of: [], seen: this.seen } as unknown as Photo;
    return solvePhoto(this.session.model, photo, { widthPx: this.size[0], heightPx: this.size[1] });
  }

  /** How sure the picture is tied to the coach, in words. */
  private standing({ usable, leftOutMm, notes }: SolvedPhoto): string {
    const { words, data } = this.session;
    if (usable && leftOutMm !== undefined) return words('floor.tap.marksure', { by: lengthUp(leftOutMm, data.coach.units) });
    return words('floor.tap.markunsure', { why: notes.map((note) => this.why(note)).join(' ') });
  }

  private why(note: PictureNote): string {
    const { words } = this.session;
    switch (note.what) {
      case 'too few':
        return words('floor.tap.few', { have: note.have, need: Math.max(note.need, leastPoints(note.plane, note.focal)) });
      case 'over limit':
        return words('floor.tap.overlimit', { points: note.suspects.map((i) => i + 1).join(', ') });
      case 'outside':
      case 'twice':
        return words('floor.tap.wrongpoint', { points: note.points.map((i) => i + 1).join(', ') });
      default:
        return words('floor.tap.nofit');
    }
  }

  private use(): void {
    const { words, model, data } = this.session;
    const on = element<HTMLInputElement>('mark-on').value.trim();
    if (!this.cross || !this.picture) return void this.say(words('floor.tap.marktap'));
    const solved = this.solved();
    if (!solved.usable) return void this.say(this.standing(solved));
    const found = locateInPhoto(model, solved, this.cross, on);
    if (!('at' in found)) return void this.say(words(NOT_THERE[found.why], { id: on }));
    const { units, origin } = data.coach;
    this.session.fill('at', typedPlace(found.at, origin, 'metric').join(', '));
    this.session.fill('tolerance', `${Math.ceil(found.uncertaintyMm)} mm`);
    this.used = { picture: this.picture, seen: this.seen };
    this.session.show('form');
    this.session.tell(words('floor.tap.marked', { by: lengthUp(found.uncertaintyMm, units) }));
  }

  private draw(): void {
    const frame = element('mark-frame');
    for (const old of frame.querySelectorAll('.mark')) old.remove();
    for (const [i, { px }] of this.seen.entries()) this.mark(frame, px, String(i + 1), 'mark');
    if (this.cross) this.mark(frame, this.cross, '', 'mark cross');
    const solved = this.seen.length > 0 ? this.solved() : undefined;
    element('mark-points').replaceChildren(...this.seen.map((one, i) => this.row(one, i, solved)));
    element('mark-near').replaceChildren(...this.offered().map((label) => this.offer(label)));
  }

  private mark(frame: Element, [u, v]: Pixels, label: string, kind: string): void {
    const mark = make('span', { class: kind }, label);
    mark.style.left = `${(100 * u) / this.size[0]}%`;
    mark.style.top = `${(100 * v) / this.size[1]}%`;
    frame.append(mark);
  }

  private row(one: PointName, i: number, solved: SolvedPhoto | undefined): HTMLLIElement {
    const { words, data } = this.session;
    const checked = solved?.points[i];
    const off = checked?.predictedMm === undefined ? '' : `, ± ${lengthUp(checked.predictedMm, data.coach.units)}`;
    const left = checked?.leftOut ? `, ${words('floor.tap.leftout')}` : '';
    const drop = make('button', { type: 'button' }, words('floor.tap.drop'));
    drop.addEventListener('click', () => {
      this.seen.splice(i, 1);
      this.draw();
    });
    return make('li', {}, make('span', {}, `${i + 1} ${pointLabel(one)}${off}${left}`), drop);
  }

  /** Points near to what was named before, or to the surface that is chosen. */
  private offered(): readonly string[] {
    const on = element<HTMLInputElement>('mark-on').value.trim();
    const last = this.seen.at(-1) ?? ({ is: on, corner: 1, end: 'from' } as PointName);
    const from = knownPoint(this.session.model, { ...last, px: [0, 0] });
    if (!isPoint(from)) return [];
    const taken = new Set(this.seen.map(pointLabel));
    return [...this.named]
      .sort((a, b) => distance(a.at, from.at) - distance(b.at, from.at))
      .map(({ named }) => pointLabel(named))
      .filter((label) => !taken.has(label))
      .slice(0, MOST_OFFERED);
  }

  private offer(label: string): HTMLButtonElement {
    const button = make('button', { type: 'button' }, label);
    button.addEventListener('click', () => {
      element<HTMLInputElement>('mark-name').value = label;
      this.addPoint();
    });
    return button;
  }
}

const NOT_THERE = {
  'not usable': 'floor.tap.nofit',
  'no surface': 'floor.tap.nosurface',
  'other plane': 'floor.tap.otherplane',
  misses: 'floor.tap.misses',
} as const;
