import type { Medium, ServiceNode } from '../../model/services.js';
import type { IsolationAction } from '../lookup/types.js';

/** How a source is taken off the lines that it feeds. It goes on being a source: only these lines are parted from it. */
export interface Parting extends Pick<IsolationAction, 'kind' | 'action'> {
  /** What a hand does there. */
  readonly how: string;
}

type Row = readonly [media: readonly Medium[], words: RegExp, kind: string, how: string, action?: Parting['action']];

const ELECTRIC: readonly Medium[] = ['dc', 'ac'];
const LEADS = 'switch it off, then take its leads off and insulate their ends';

/** First row that fits. Sealed refrigerant is none of these: only a licensed technician may open it. */
const PARTINGS: readonly Row[] = [
  [ELECTRIC, /\bshore\b/iu, 'shore cord', 'switch the pedestal off and unplug the shore cord'],
  [ELECTRIC, /\bbatter(?:y|ies)\b/iu, 'battery lead', 'take the negative lead off first, then the positive, and insulate both'],
  [ELECTRIC, /\bsolar\b/iu, 'solar leads', 'cover the solar panels, then unplug or take off the leads'],
  [ELECTRIC, /\b(?:generator|genset)\b/iu, 'generator leads', 'stop it and lock its starting, then take its output leads off'],
  [ELECTRIC, /\balternator\b/iu, 'alternator lead', 'engine off and key out, then take the lead off'],
  [ELECTRIC, /./u, 'leads', LEADS],
  [['data'], /./u, 'plug', 'unplug the cable there'],
  [['gas'], /./u, 'cylinder valve', 'shut the valve on the cylinder or tank, then take the hose or regulator off it and cap it'],
  [['water'], /\b(?:city|inlet|hose)\b/iu, 'supply hose', 'shut the tap outside and take the hose off'],
  [['water'], /./u, 'tank connection', 'empty the tank, then take the line off it'],
  [['drain'], /\btank\b/iu, 'tank connection', 'empty the tank, then take the line off it'],
  [['drain'], /./u, 'fixture', 'keep its taps shut and plug its waste', 'shut'],
  [['air', 'hydraulic'], /./u, 'hose', 'stop the pump, let the pressure off to zero, then take the line off'],
  [['duct'], /./u, 'duct joint', 'switch the blower off, then take the duct off'],
];

/** How a source can be parted from its lines; undefined where it cannot. */
export function partingOf({ medium, name = '' }: ServiceNode): Parting | undefined {
  const row = PARTINGS.find(([media, words]) => media.includes(medium) && words.test(name || medium));
  return row && { kind: row[2], how: row[3], action: row[4] ?? 'disconnect' };
}

/** Never dead: nothing on record switches a battery or the light off. */
export const staysLive = ({ medium, name = '' }: ServiceNode): boolean =>
  ELECTRIC.includes(medium) &&
  /\b(?:batter(?:y|ies)|solar)\b/iu.test(name) &&
  !/\b(?:regulator|controller|charger|converter)\b/iu.test(name);
