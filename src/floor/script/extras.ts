import { distance, type Vec3 } from '../../geometry/vector.js';
import { placeAt } from '../../model/place-at.js';
import { make } from '../../page/dom.js';
import type { FloorEntry } from '../hand-over.js';
import type { TaskName } from '../tasks.js';
import type { drawingScreen } from './drawing.js';
import { nearestToTap, type TapCandidate, tapCandidates } from './near-tap.js';
import type { PhotoPlace } from './photo-place.js';
import { placeTapped } from './pick-place.js';
import type { FloorSession } from './session.js';

const MOST_OFFERED = 12;
const MOST_NEAR = 6;

/** What helps with each task: what is near, the drawing to tap, a clock. */
export class Extras {
  constructor(
    private readonly session: FloorSession,
    private readonly drawing: ReturnType<typeof drawingScreen>,
    private readonly photo: PhotoPlace,
    private readonly last: (name: TaskName) => Readonly<Record<string, string>> | undefined,
  ) {}

  /** Below the record of a look, a bond or a closing. */
  readonly forTask = (name: TaskName): readonly HTMLElement[] => {
    const { words } = this.session;
    const tapIt = (after: () => void): HTMLElement => this.button('floor.tap.drawing', after);
    switch (name) {
      case 'weld':
        return [
          this.chips('floor.tap.joints', this.nearJoints(), 'joins'),
          this.memberFilter(),
          tapIt(() =>
            this.drawing.open(words('floor.tap.whichjoint'), (tap) =>
              this.buttons(nearestToTap(tap, this.joints(true), MOST_OFFERED), 'joins'),
            ),
          ),
        ];
      case 'look':
        return [
          this.chips('floor.tap.welds', this.nearWelds(), 'record'),
          tapIt(() =>
            this.drawing.open(words('floor.tap.whichweld'), (tap) =>
              this.buttons(nearestToTap(tap, this.weldSpots(), MOST_OFFERED), 'record'),
            ),
          ),
        ];
      case 'node':
        return [
          tapIt(() => this.drawing.open(words('floor.tap.whichplace'), (tap) => placeTapped(tap, this.session))),
          this.button('floor.tap.onphoto', () => this.photo.open()),
        ];
      case 'bond':
        return [tapIt(() => this.ofKinds('record', ['panel'])), this.clock('bond.open_time')];
      case 'closed':
        return [tapIt(() => this.ofKinds('record', ['panel']))];
      case 'test':
        return [this.clock('duration')];
      case 'finding':
        return [tapIt(() => this.ofKinds('of', ['member', 'panel', 'node', 'run']))];
      case 'photo':
        return [
          this.chips('floor.tap.recent', this.recent(), 'of'),
          this.chips('floor.tap.near', this.nearLast(), 'of'),
          tapIt(() => this.ofKinds('of', ['member', 'panel', 'node', 'run'])),
        ];
      default:
        return [];
    }
  };

  private button(key: string, act: () => void): HTMLElement {
    const button = make('button', { type: 'button', 'data-extra': key.split('.').at(-1) ?? '' }, this.session.words(key));
    button.addEventListener('click', act);
    return make('p', { class: 'pick' }, button);
  }

  private ofKinds(key: string, kinds: Parameters<typeof tapCandidates>[1]): void {
    const { model, words } = this.session;
    this.drawing.open(words('floor.tap.whichthing'), (tap) =>
      this.buttons(nearestToTap(tap, tapCandidates(model, kinds), MOST_OFFERED), key),
    );
  }

  /** Taps that fill a field. */
  private chips(title: string, values: readonly string[], key: string): HTMLElement {
    return make(
      'div',
      {},
      make('p', { class: 'quiet' }, values.length > 0 ? this.session.words(title) : ''),
      make('div', { class: 'pick', id: `chips-${key}` }, ...this.buttons(values, key)),
    );
  }

  private buttons(values: readonly string[], key: string): readonly HTMLElement[] {
    return values.map((value) => {
      const button = make('button', { type: 'button' }, value);
      button.addEventListener('click', () => {
        this.session.fill(key, value);
        this.session.show('form');
      });
      return button;
    });
  }

  private recent(): readonly string[] {
    return this.session.entries.all
      .slice(-6)
      .map(({ id }) => id)
      .reverse();
  }

  /** Panels, members and cavities near to what was entered last. */
  private nearLast(): readonly string[] {
    const { data, entries } = this.session;
    const from = entries.all.reduceRight<Vec3 | undefined>((found, one) => found ?? this.placeOf(one), undefined);
    if (from === undefined) return [];
    const { panel = [], member = [], zone = [] } = data.refs;
    const all = [...panel, ...member, ...zone].map(([id, , at]) => ({ what: id, points: at ? [at] : [] }));
    return byDistance(all, from).slice(0, MOST_NEAR);
  }

  /** Where something that was entered here is, as far as that can be told. */
  private placeOf({ kind, does, id, data }: FloorEntry): Vec3 | undefined {
    if (kind === 'weld') return this.session.data.coach.weldsAt[id] ?? this.middle(String([data.joins].flat(2)[0] ?? ''));
    if (kind === 'panel') return this.middle(id);
    if (kind !== 'node' || does !== 'add' || data.at === undefined) return undefined;
    const found = placeAt([data.at].flat().join(', '), this.session.model);
    return typeof found === 'string' ? undefined : found.at;
  }

  /** Joints without a weld, on record or on this phone; with `all`, those that have one too. */
  private joints(all: boolean): readonly TapCandidate<string>[] {
    const { data, entries } = this.session;
    const done = new Set(entries.all.filter(({ kind }) => kind === 'weld').map(({ data: one }) => [one.joins].flat().join(' ')));
    return data.joints
      .filter(([a, b, open]) => all || (open && !done.has(`${a} ${b}`)))
      .map(([a, b, , at]) => ({ what: `${a}, ${b}`, points: at ? [at] : [] }));
  }

  /** Those nearest to what was welded last first. */
  private nearJoints(member = ''): readonly string[] {
    const open = this.joints(member !== '').filter(({ what }) => member === '' || what.split(', ').includes(member));
    const before = this.last('weld')?.joins ?? '';
    const from = this.middle(before.split(',')[0]?.trim() ?? '');
    return byDistance(open, from);
  }

  private middle(id: string): Vec3 | undefined {
    const { refs } = this.session.data;
    return [...(refs.member ?? []), ...(refs.panel ?? [])].find(([one]) => one === id)?.[2];
  }

  /** The joints of one member. */
  private memberFilter(): HTMLElement {
    const { words, data } = this.session;
    const input = make('input', { id: 'f-near', list: 'f-near-list', autocomplete: 'off', autocapitalize: 'off' });
    input.addEventListener('input', () => {
      const found = this.nearJoints(input.value.trim());
      document.getElementById('chips-joins')?.replaceChildren(...this.buttons(found, 'joins'));
    });
    return make(
      'div',
      { class: 'wide' },
      make('label', { for: 'f-near' }, words('floor.tap.nearmember')),
      input,
      make(
        'datalist',
        { id: 'f-near-list' },
        ...(data.refs.member ?? []).map(([value, text]) => make('option', { value }, text)),
      ),
    );
  }

  /** Welds that nobody has accepted yet. */
  private weldSpots(): readonly TapCandidate<string>[] {
    const { model, data, entries } = this.session;
    const looked = new Set(entries.all.filter(({ kind, does }) => kind === 'weld' && does === 'append').map(({ id }) => id));
    const onRecord = model.shell.welds
      .filter(({ id, inspections }) => !looked.has(id) && inspections.at(-1)?.result !== 'accept')
      .map(({ id }) => ({ what: id, points: data.coach.weldsAt[id] ? [data.coach.weldsAt[id] as Vec3] : [] }));
    const here = entries.all
      .filter(({ kind, does, id }) => kind === 'weld' && does === 'add' && !looked.has(id))
      .map(({ id, data: one }) => {
        const at = this.middle(String([one.joins].flat()[0] ?? ''));
        return { what: id, points: at ? [at] : [] };
      });
    return [...here, ...onRecord];
  }

  /** Those near to the weld that was looked at last; else what was entered here first. */
  private nearWelds(): readonly string[] {
    const { data, entries } = this.session;
    const last = entries.all.findLast(({ kind, does }) => kind === 'weld' && does === 'append')?.id ?? '';
    return byDistance(this.weldSpots(), data.coach.weldsAt[last]);
  }

  /** Counts from a tap on and fills a duration in seconds. */
  private clock(key: string): HTMLElement {
    const { words } = this.session;
    const button = make('button', { type: 'button', 'data-extra': 'clock' }, words('floor.tap.start'));
    const running = make('span', { role: 'timer' }, '');
    let from: number | undefined;
    const tick = (): void => {
      if (from === undefined || !button.isConnected) return;
      const seconds = Math.round((Date.now() - from) / 1000);
      running.textContent = ` ${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
      this.session.fill(key, `${seconds} s`);
      window.setTimeout(tick, 1000);
    };
    button.addEventListener('click', () => {
      from = from === undefined ? Date.now() : undefined;
      button.textContent = words(from === undefined ? 'floor.tap.start' : 'floor.tap.stop');
      tick();
    });
    return make('p', { class: 'pick' }, button, running);
  }
}

function byDistance(all: readonly TapCandidate<string>[], from: Vec3 | undefined): readonly string[] {
  const away = ({ points }: TapCandidate<string>): number => {
    const [at] = points;
    return from === undefined ? 0 : at === undefined ? Number.MAX_VALUE : distance(at, from);
  };
  return [...all]
    .sort((a, b) => away(a) - away(b))
    .slice(0, MOST_OFFERED)
    .map(({ what }) => what);
}
