/** What the program's answers say of each id, as text at the prompt and as JSON, in the names of the printed tables. */
import type { Assessment } from '../../../src/assess.js';
import { labelDocument } from '../../../src/book/labels/document.js';
import { showIn } from '../../../src/book/show.js';
import { behindText } from '../../../src/cli/report/nearby-text.js';
import { paint } from '../../../src/cli/report/paint.js';
import { takeoffJson } from '../../../src/cli/report/takeoff-json.js';
import { weightsJson } from '../../../src/cli/report/weights-json.js';
import { weightsText } from '../../../src/cli/report/weights-text.js';
import { whereJson } from '../../../src/cli/report/where-json.js';
import { whereText } from '../../../src/cli/report/where-text.js';
import { lookupOf } from '../../../src/query/lookup/lookup-of.js';
import { reachWords } from '../../../src/query/reach-words.js';
import { figuresOf, type Said } from './facts.js';

type Ways = readonly { readonly write: (value: number) => string }[];
type Put = (of: string, what: string, value: string, where: string) => void;
type Row = Record<string, never> & { readonly id: string };

/** Everything that the commands answer about the records of a shell. */
export function saidByAnswers(assessment: Assessment): readonly Said[] {
  const { shell } = assessment.model;
  const isId = (word: string): boolean => shell.byId.has(word);
  const found: Said[] = [];
  const put: Put = (of, what, said, where) => {
    const value = figuresOf(said, isId) || said;
    if (said !== '') found.push({ of, what, value, where });
  };
  takeoff(assessment, put);
  weights(assessment, put);
  lookups(assessment, put);
  behind(assessment, put);
  return found;
}

/** JSON gives six decimals: half of the last is put back, so that what was a whole number is one again. */
const JSON_DIGIT = 5e-7;

const written = (ways: Ways, value: number | null | undefined): string =>
  typeof value === 'number' ? ways.map(({ write }) => write(value + JSON_DIGIT)).join(' ') : '';

const parsed = (json: string): Record<string, readonly Row[]> => JSON.parse(json) as Record<string, readonly Row[]>;

function takeoff(assessment: Assessment, put: Put): void {
  const { ways } = showIn(assessment.model.shop.units);
  const { members = [], panels = [] } = parsed(takeoffJson(assessment, null));
  const lines = new Set(assessment.model.shell.members.flatMap(({ id, shape }) => (shape.kind === 'line' ? [id] : [])));
  for (const { id, length_mm, mass_kg } of members) {
    if (lines.has(id)) put(id, 'length', written(ways.length, length_mm), 'takeoff --json');
    put(id, 'mass', written(ways.smallMass, mass_kg), 'takeoff --json');
  }
  for (const { id, area_mm2, mass_kg } of panels) {
    put(id, 'area', written(ways.area, area_mm2), 'takeoff --json');
    put(id, 'mass', written(ways.mass, mass_kg), 'takeoff --json');
  }
}

/** The first system of units by itself. */
const ALONE = ', first system';

interface LoadRow {
  readonly axle: string;
  readonly load_kg: number;
  readonly limit_kg: number;
  readonly margin_kg: number;
  readonly uncertainty_kg: number;
  readonly verdict: string;
}

function weights(assessment: Assessment, put: Put): void {
  const { ways } = showIn(assessment.model.shop.units);
  const {
    ratings = [],
    conditions = [],
    bays = [],
  } = JSON.parse(weightsJson(assessment, null)) as {
    ratings: readonly Record<string, number & string>[];
    conditions: readonly { name: string; axles: readonly LoadRow[] }[];
    bays: readonly { id: string; allowance_kg: number }[];
  };
  for (const { axle = '', gawr_kg, tyres_kg, limit_kg } of ratings) {
    put(axle, 'gawr', written(ways.massDown, gawr_kg), 'weights --json');
    put(axle, 'tyres, all', written(ways.massDown, tyres_kg), 'weights --json');
    put(`${axle} × What each axle may carry`, 'limit', written(ways.massDown, limit_kg), 'weights --json');
    put(axle, `gawr${ALONE}`, written(ways.massDown.slice(0, 1), gawr_kg), 'weights --json');
    put(axle, `tyres, all${ALONE}`, written(ways.massDown.slice(0, 1), tyres_kg), 'weights --json');
    put(`${axle} × What each axle may carry`, `limit${ALONE}`, written(ways.massDown.slice(0, 1), limit_kg), 'weights --json');
  }
  for (const { name, axles } of conditions) {
    for (const { axle, load_kg, limit_kg, margin_kg, verdict } of axles) {
      const of = `${axle} × ${name}`;
      put(of, 'load', written(ways.mass, load_kg), 'weights --json');
      put(of, 'limit', written(ways.massDown, limit_kg), 'weights --json');
      put(of, 'margin', written(ways.massDown, margin_kg), 'weights --json');
      put(of, 'verdict', verdict, 'weights --json');
    }
  }
  for (const { id, allowance_kg } of bays) put(id, 'most, others empty', written(ways.massDown, allowance_kg), 'weights --json');
  const text = weightsText(assessment, paint(false), true);
  // `steer  14,600  15,652  -  14,600  14,600  gawr` in each system that is shown.
  const columns = new Map<string, string[][]>();
  for (const block of text.split(/Ratings, /u).slice(1))
    for (const [, axle = '', row = ''] of block.split('\n\n')[0]?.matchAll(/^ {2}(\S+) +((?:[\d,.-]+ +){5})/gmu) ?? [])
      columns.set(axle, [...(columns.get(axle) ?? []), row.trim().split(/ +/u)]);
  for (const [axle, rows] of columns) {
    // Where the prompt shows the first system alone, it is held to the same figure of the JSON answer.
    const alone = rows.length < ways.massDown.length ? ALONE : '';
    const both = (i: number): string => rows.map((row) => row[i]).join(' ');
    if (!assessment.model.shell.byId.has(axle)) continue;
    put(axle, `gawr${alone}`, both(0), 'weights');
    put(axle, `tyres, all${alone}`, both(1), 'weights');
    put(`${axle} × What each axle may carry`, `limit${alone}`, both(4), 'weights');
  }
}

interface MatchJson {
  readonly kind: string;
  readonly length_mm?: number;
  readonly panels: readonly {
    readonly id: string;
    readonly distance_mm: number;
    readonly reach: 'hand' | 'forearm' | 'arm' | 'beyond';
  }[];
  readonly circuit?: { readonly drop_percent?: number; readonly ampacity_a?: number; readonly length_mm?: number };
  readonly protection?: { readonly kind: string; readonly rating_a?: number; readonly at?: string };
  readonly facts: Readonly<Record<string, unknown>>;
}

function lookups(assessment: Assessment, put: Put): void {
  const { shell, shop } = assessment.model;
  const { ways, torque } = showIn(shop.units);
  const lookup = lookupOf(assessment);
  const services = new Map(shell.services.map(({ id, name }) => [id, name] as const));
  for (const { id } of lookup.findables) {
    const match = lookup.match(id);
    if (!match) continue;
    const answer = { topics: [], matches: [match], alsoNamed: 0 };
    const [json] = (JSON.parse(whereJson('', null, answer, () => [])) as { matches: readonly MatchJson[] }).matches;
    if (!json) continue;
    const told = `where ${id} --json`;
    if (json.kind !== 'zone') put(id, 'length', written(ways.length, json.circuit?.length_mm ?? json.length_mm), told);
    for (const one of json.panels) {
      put(`${id} × ${one.id}`, 'distance', written(ways.length, one.distance_mm), told);
      put(`${id} × ${one.id}`, 'how far in', reachWords(one.reach), told);
    }
    if (json.kind === 'circuit') {
      if (typeof json.circuit?.ampacity_a === 'number') put(id, 'ampacity', String(Math.floor(json.circuit.ampacity_a)), told);
      if (typeof json.circuit?.drop_percent === 'number') put(id, 'drop', json.circuit.drop_percent.toFixed(1), told);
    }
    if (typeof json.facts.torque_nm === 'number') put(id, 'torque', torque(json.facts.torque_nm), told);
    atThePrompt(
      id,
      json.kind,
      whereText({ units: shop.units, services }, answer, () => [], paint(false)),
      put,
    );
  }
}

/** A paragraph of `where`: its lines under their heads, wrapped ones joined. */
function atThePrompt(id: string, kind: string, text: string, put: Put): void {
  const where = `where ${id}`;
  const lines = text.replace(/\n {4,}/gu, ' ').split('\n');
  const of = (head: string): readonly string[] =>
    lines.flatMap((line) => (line.startsWith(`  ${head} `) ? [line.slice(head.length + 3).trim()] : []));
  if (kind !== 'zone') for (const said of of('length')) if (/\d/u.test(said)) put(id, 'length', said, where);
  for (const said of of('torque')) put(id, 'torque', said, where);
  for (const said of of('reach')) {
    for (const one of said.split('; ')) {
      const [, panel, how, distance] = /^(\S+) (.*?), ((?:\d|[−-]).*? mm\))/u.exec(one) ?? [];
      if (panel === undefined || how === undefined || distance === undefined) continue;
      put(`${id} × ${panel}`, 'distance', distance, where);
      put(`${id} × ${panel}`, 'how far in', how, where);
    }
  }
  if (kind !== 'circuit') return;
  for (const said of of('circuit')) {
    const [, drop] = /\(([\d.]+) %\)/u.exec(said) ?? [];
    const [, ampacity] = /good for ([\d.,]+) A/u.exec(said) ?? [];
    if (drop !== undefined) put(id, 'drop', drop, where);
    if (ampacity !== undefined) put(id, 'ampacity', ampacity, where);
  }
}

function behind(assessment: Assessment, put: Put): void {
  const { model, figures } = assessment;
  const { ways } = showIn(model.shop.units);
  for (const [panel, contents] of Object.entries(figures.access.behind)) {
    const told = `behind ${panel} --json`;
    for (const { id, distanceMm, reach } of contents) {
      put(`${id} × ${panel}`, 'distance', written(ways.length, distanceMm), told);
      put(`${id} × ${panel}`, 'how far in', reachWords(reach), told);
    }
    const text = behindText(model, panel, contents, { hazards: [], all: true });
    for (const [, id = '', distance = '', how = ''] of text.matchAll(
      /^(\S+) .* {2,}(\S[^(\n]*\([\d,]+ mm\)) {2}(by hand|to the (?:fore)?arm|beyond reach)/gmu,
    )) {
      put(`${id} × ${panel}`, 'distance', distance, `behind ${panel}`);
      put(`${id} × ${panel}`, 'how far in', how, `behind ${panel}`);
    }
  }
}

/** The words of the label sheets. */
export function labelWords(assessment: Assessment): string {
  const { document } = labelDocument({
    assessment,
    edition: 'service',
    pages: new Map(),
    uncommitted: false,
    date: '2026-12-01',
    fingerprint: '0'.repeat(64),
    first: 1,
    withMarkers: true,
  });
  const { html } = document;
  return html
    .slice(html.indexOf('<body>'))
    .replace(/<[^>]+>/gu, ' ')
    .replace(/&[a-z#0-9]+;/gu, ' ')
    .replace(/[\s\u00a0]+/gu, ' ');
}
