import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Vec3 } from '../../src/geometry/vector.js';
import { anchor } from '../../src/model/anchor.js';
import type { NearHere } from '../../src/page/pocket/near-here.js';
import { spoken } from '../../src/page/pocket/screen-store.js';
import { underFinger } from '../../src/page/pocket/under-finger.js';
import { type NearData, type PocketData, searchEntries, type TapView } from '../../src/page/pocket-data.js';
import { near } from '../../src/query/lookup/near.js';
import { screwAt, screwFinder } from '../../src/query/lookup/screw.js';
import type { NearHit } from '../../src/query/lookup/types.js';
import { type Finder, searchIn } from '../../src/query/lookup/word-search.js';
import { WORDS } from '../../src/words/index.js';
import { dataIn, smallPage } from '../pocket/small-page.js';
import { DEMO, judged } from './store.js';

const { assessment } = judged('OV-021');
const { shell } = assessment.model;
const files = new Map(shell.photos.map(({ id, file }) => [id, path.join(DEMO, 'shells/OV-021/photos', file)] as const));

let html: string;
let data: PocketData;
let here: NearHere;
let find: Finder['find'];

/** The page's own module, bundled as for the page: what is tried is what a phone runs. */
async function bundled(nearData: NearData): Promise<NearHere> {
  const input = fileURLToPath(new URL('../../src/page/pocket/near-here.ts', import.meta.url));
  const made = await rolldown({ input, platform: 'browser', logLevel: 'silent' });
  const { output } = await made.generate({ format: 'esm', minify: true });
  const module = (await import(`data:text/javascript;base64,${Buffer.from(output[0].code).toString('base64')}`)) as {
    readonly nearHere: (data: NearData) => NearHere;
  };
  return module.nearHere(nearData);
}

beforeAll(async () => {
  html = await smallPage('service', { assessment, photoFile: async (id) => readFileSync(files.get(id) as string) });
  data = dataIn(html) as unknown as PocketData;
  here = await bundled(dataIn(html, 'near') as unknown as NearData);
  const texts = cardTexts();
  find = searchIn(searchEntries(data), (id) => texts.get(anchor(id)) ?? '').find;
});

/** Everywhere in and about the coach, and at the faces of its sheets; the same places in every run. */
function places(count: number): readonly Vec3[] {
  let seed = 20_260_412;
  const random = (): number => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed / 2_147_483_648;
  };
  const corners = shell.panels.flatMap(({ outline }) => outline);
  const span = ([0, 1, 2] as const).map(
    (k) => [Math.min(...corners.map((at) => at[k])), Math.max(...corners.map((at) => at[k]))] as const,
  );
  return Array.from({ length: count }, (_, i): Vec3 => {
    if (i % 2 === 0) return span.map(([low, high]) => low + random() * (high - low)) as unknown as Vec3;
    const { outline } = shell.panels[Math.floor(random() * shell.panels.length)] as (typeof shell.panels)[number];
    const [a, b, c] = outline as readonly [Vec3, Vec3, Vec3];
    const [u, v] = [random(), random()];
    return a.map(
      (value, k) => value + u * ((b[k] as number) - value) + v * ((c[k] as number) - (b[k] as number)),
    ) as unknown as Vec3;
  });
}

const middleOf = (outline: readonly Vec3[]): Vec3 =>
  outline.reduce<Vec3>(
    (sum, at) => sum.map((value, k) => value + (at[k] as number) / outline.length) as unknown as Vec3,
    [0, 0, 0],
  );

/** The first list of each card, as the page's script reads it. */
const cardTexts = (): ReadonlyMap<string, string> =>
  new Map(
    [...html.matchAll(/<article class="screen card" id="([^"]+)">.*?(<dl>.*?<\/dl>)/gsu)].map(
      ([, to = '', list = '']) => [to, list.replace(/<[^>]+>/gu, ' ')] as const,
    ),
  );

const words = ({ id, kind, distanceMm }: NearHit): string => `${id} ${kind} ${distanceMm.toFixed(1)}`;

describe('the demo’s page for a phone', () => {
  it('answers 500 places as the command does, with the code that it carries', () => {
    let hits = 0;
    let screws = 0;
    const screwOf = screwFinder(assessment);
    for (const at of places(500)) {
      const told = near(assessment, at, 101.6);
      hits += told.length;
      expect(here.near(at, 101.6).map(words).sort()).toEqual(told.map(words).sort());
      const [mine, its] = [here.screw(at), screwOf(at)];
      // The command makes its map for one place alone: that is tried where a sheet is, now and then.
      if (its && screws % 40 === 0) expect(its).toEqual(screwAt(assessment, at));
      expect(mine?.panel).toBe(its?.panel);
      if (!mine || !its) continue;
      screws++;
      expect(mine.depthMm).toBe(its.depthMm);
      expect(mine.meets?.id).toBe(its.meets?.id);
      expect(mine.metal.map(({ id }) => id)).toEqual(its.metal.map(({ id }) => id));
    }
    expect(hits).toBeGreaterThan(1000);
    expect(screws).toBeGreaterThan(100);
  });

  it('takes a tap on a view to the sheet that is seen there', () => {
    for (const view of data.views) {
      const seen = new Set<string>();
      for (const { outline } of shell.panels) {
        const middle = middleOf(outline);
        const along = (axis: Vec3): number => axis.reduce((sum, value, k) => sum + value * (middle[k] as number), 0);
        const { at, onSheet } = here.under(view, [along(view.right) - view.left, view.top - along(view.up)]);
        const panel = onSheet ? here.screw(at)?.panel : undefined;
        if (panel !== undefined) seen.add(panel);
      }
      // The demo's floor is no sheet: a tap on the plan is taken at its height.
      if (view.key !== 'plan') expect(seen.size, view.key).toBeGreaterThan(0);
    }
  });

  it('names each panel, node and run that is drawn under a finger, however deep it lies', () => {
    const nearHere = dataIn(html, 'near') as unknown as NearData;
    const tapped = (view: TapView, at: Vec3): readonly string[] => {
      const along = (axis: Vec3): number => axis.reduce((sum, value, k) => sum + value * (at[k] as number), 0);
      const spot = [along(view.right) - view.left, view.top - along(view.up)] as const;
      return underFinger(nearHere, view, spot, { reachMm: 30, isOn: () => true });
    };
    const plan = data.views.find(({ key }) => key === 'plan') as TapView;
    const placed = shell.nodes.flatMap(({ id, at }) => (at ? [{ id, at }] : []));
    expect(placed.length).toBeGreaterThan(200);
    expect(placed.filter(({ id, at }) => !tapped(plan, at).includes(id))).toEqual([]);
    const ends = shell.runs.flatMap(({ id, path: [first] }) => (first ? [{ id, at: first }] : []));
    expect(ends.filter(({ id, at }) => !tapped(plan, at).includes(id))).toEqual([]);
    const seen = new Set(data.views.flatMap((view) => view.access));
    expect(shell.panels.filter(({ id, panelKind }) => (panelKind === 'access') !== seen.has(id))).toEqual([]);
    for (const view of data.views)
      for (const { id, outline } of shell.panels.filter((panel) => view.access.includes(panel.id)))
        expect(tapped(view, middleOf(outline))[0], `${view.key} ${id}`).toBe(id);
    const left = data.views.find(({ key }) => key === 'left-in') as TapView;
    const ofRight = placed.filter(({ at }) => at[1] > 500);
    expect(ofRight.filter(({ id, at }) => tapped(left, at).includes(id))).toEqual([]);
  });

  it('is below 6 MB with its pictures and below 3 MB without, drawings over them left out too', () => {
    expect(Buffer.byteLength(html)).toBeLessThan(6e6);
    const bare = html.replace(/data:image\/jpeg;base64,[^"]*/gu, '').replace(/<div class="paper over">.*?<\/div>/gsu, '');
    expect(Buffer.byteLength(bare)).toBeLessThan(3e6);
    expect(html.match(/<symbol id="ph-/gu)).toHaveLength(shell.photos.length);
  });

  it('names neither the customer nor any welder', () => {
    const { library } = assessment.model;
    const welders = [...library.people.values()].filter(({ qualified }) =>
      qualified.some(({ process }) => process !== undefined),
    );
    const names = [shell.customer?.name, shell.customer?.contact, ...welders.map(({ name }) => name)].flatMap((one) => one ?? []);
    expect(names.length).toBeGreaterThan(3);
    expect(names.filter((name) => html.includes(name))).toEqual([]);
  });

  it.each([
    ['AC-02/B', 'AC-02/B'],
    ['ac02b', 'AC-02/B'],
    ['tail light', /tail|stop|rear/iu],
    ['pump fuse', /pump/iu],
    ['agua', /water/iu],
    ['water shut-off', 'WV-'],
    ['llave de paso agua', 'WV-'],
    ['fuse 10', /./u],
    ['bateria', /BAT|batter/iu],
    ['propne tank', /propane/iu],
    ['generater', /generator/iu],
    ['ap-1', 'AP-1'],
    ['enchufe', /outlet/iu],
    ['bomba de agua', /pump/iu],
    ['calentador', /heater/iu],
    ['disyuntor', /breaker/iu],
    ['tierra', /earth|ground|bond/iu],
    ['roof unit', /roof unit/iu],
    ['compres', /compressor/iu],
    ['watre hetaer', /water heater/iu],
    ['furnce splise', /furnace/iu],
    ['shore power', /shore/iu],
  ])('finds “%s”', (asked, wanted) => {
    const { hits } = find(asked);
    expect(hits.length, asked).toBeGreaterThan(0);
    const best = hits.slice(0, 5).map(({ id, title }) => `${id} ${title}`);
    expect(
      best.some((one) => (typeof wanted === 'string' ? one.startsWith(wanted) : wanted.test(one))),
      best.join('; '),
    ).toBe(true);
  });

  it.each(['grey/black, ceiling bay 11', 'black grey 11 ceiling', 'gris/negro, techo, bay 11', 'negro gris techo 11'])(
    'finds a wire by its colors and place: “%s”',
    (asked) => {
      const { hits, close } = find(asked);
      const texts = cardTexts();
      const wires = shell.runs.filter(({ id }) => hits.some((hit) => hit.id === id));
      expect([close, wires.length > 2]).toEqual([false, true]);
      for (const { id, title } of hits.slice(0, 8)) {
        const told = `${title} ${texts.get(anchor(id)) ?? ''}`;
        expect([id, /grey\/black/u.test(told), /\b11\b/u.test(told)]).toEqual([id, true, true]);
      }
    },
  );

  it('shows what has most of the words where nothing has all', () => {
    expect(find('water pump quetzal')).toMatchObject({ close: true });
    expect(find('water pump quetzal').hits[0]?.title).toContain('pump');
    expect(find('quetzal').hits).toEqual([]);
  });

  it('has on each card what the shop typed: ends, fuse and color of wires; tool, torque and order of panels', () => {
    const texts = new Map(
      [...html.matchAll(/<article class="screen card" id="([^"]+)">(.*?)<\/article>/gsu)].map(
        ([, to = '', card = '']) => [to, spoken(card).replaceAll(/\s+/gu, ' ')] as const,
      ),
    );
    const services = readdirSync(path.join(SHELL, 'services')).map((file) => typedIn(`services/${file}`));
    const lists = { circuits: 0, runs: 0, nodes: 0, panels: 0 };
    const lacking: string[] = [];
    const holds = (id: string, wanted: readonly (string | undefined)[]): void => {
      const card = texts.get(anchor(id)) ?? '';
      for (const one of wanted) if (one !== undefined && !card.includes(one)) lacking.push(`${id} lacks ${one}`);
    };
    for (const { circuits = [], runs = [], nodes = [] } of services) {
      for (const { id, colour, protection } of circuits) {
        lists.circuits++;
        holds(id, [colour, protection?.at, protection?.rating?.replace(/ A$/u, ' A')]);
      }
      for (const { id, from, to, circuit } of runs) {
        lists.runs++;
        holds(id, [from, to, circuit]);
      }
      for (const { id, torque, name } of nodes) {
        lists.nodes++;
        holds(id, [torque && `(${torque.replace(' N.m', ' N·m')})`, name]);
      }
    }
    for (const { id, fixing, of } of typedIn('panels-access.yaml') as unknown as readonly Typed[]) {
      lists.panels++;
      holds(id, [of, fixing?.driver, fixing?.order, fixing?.sealant, fixing && `${fixing.count} ${fixing.method}`]);
      holds(id, [fixing?.torque && `(${fixing.torque.replace(' N.m', ' N·m')})`]);
    }
    expect(lists).toEqual({ circuits: shell.circuits.length, runs: shell.runs.length, nodes: shell.nodes.length, panels: 37 });
    expect(lacking).toEqual([]);
  });

  it('says nothing in English on the Spanish page but what the shop typed', async () => {
    const spanish = await smallPage('service', { assessment, language: 'es' });
    const typed = new Set(textsIn([shell, assessment.model.shop, ...assessment.model.library.conductors.values()]));
    const english = new Set(piecesOf(html));
    const left = [...new Set(piecesOf(spanish))].filter(
      (piece) => english.has(piece) && ENGLISH.test(piece) && ![...typed].some((one) => one.length > 5 && piece.includes(one)),
    );
    expect(left).toEqual([]);
    const all = piecesOf(spanish).join('\n');
    const sentences = Object.values(WORDS).filter(({ us, es }) => us !== es && /^[^{}]{20,}$/u.test(us));
    expect(sentences.length).toBeGreaterThan(100);
    expect(sentences.map(({ us }) => us).filter((us) => all.includes(us))).toEqual([]);
  });
});

/** A record as it stands in the file, read by the YAML library alone. */
interface Typed {
  readonly id: string;
  readonly name?: string;
  readonly of?: string;
  readonly colour?: string;
  readonly circuit?: string;
  readonly from?: string;
  readonly to?: string;
  readonly torque?: string;
  readonly protection?: { readonly at?: string; readonly rating?: string };
  readonly fixing?: Readonly<Record<'driver' | 'order' | 'sealant' | 'count' | 'method' | 'torque', string | undefined>>;
}
const SHELL = path.join(DEMO, 'shells/OV-021');
const typedIn = (file: string): Readonly<Record<string, readonly Typed[] | undefined>> =>
  parse(readFileSync(path.join(SHELL, file), 'utf8'));

/** Words that no Spanish sentence has. */
const ENGLISH = /\b(?:the|and|of|is|not|with|from|before|after|this|that|what|where|on|at|by|to|it|are|nothing|every)\b/u;

/** What a page says, piece by piece. */
const piecesOf = (page: string): readonly string[] =>
  [
    ...page
      .slice(page.indexOf('<body>'), page.indexOf('<script type="application/json"'))
      // What only keeps an id or a quantity on one line.
      .replace(/<\/?i>/gu, '')
      .replaceAll('\u00a0', ' ')
      .matchAll(/aria-label="([^"]*)"|>([^<]+)</gu),
  ].map(([, label, text]) => spoken((label ?? text ?? '').trim()));

/** Every text within records. */
function textsIn(value: unknown, seen = new Set<unknown>()): readonly string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  return Object.entries(value).flatMap(([key, one]) => (key === 'source' ? [] : textsIn(one, seen)));
}
