import type { Condition, Tank, TankUse } from '../../records/index.js';
import { type Load, loadAt } from './load.js';

/** What a tank's contents are to the vehicle. */
export type TankRole = 'fuel' | 'operating fluid' | 'fresh water' | 'waste' | 'other';

/** Words for tanks of each role, beside their own id and contents. */
const ROLE_WORDS: readonly (readonly [TankRole, RegExp])[] = [
  [
    'operating fluid',
    /\b(def|diesel exhaust fluid|urea|coolant|antifreeze|glycol|hydraulic|oil|propane|butane|lp|lpg|lp gas)\b/u,
  ],
  ['waste', /\b(gr[ea]y|black|waste|sewage|toilet)\b/u],
  ['fuel', /\b(fuel|diesel|gasoline|petrol|gas)\b/u],
  ['fresh water', /\b(fresh|water|potable|heater)\b/u],
];

/** Role by the recorded use; liquid petroleum gas is an operating fluid. */
const ROLE_OF_USE: Readonly<Record<TankUse, TankRole>> = {
  fresh: 'fresh water',
  waste: 'waste',
  fuel: 'fuel',
  gas: 'operating fluid',
  fluid: 'operating fluid',
};

/**
 * The recorded `use` decides. Where it is not recorded, words of the contents and the id propose one, and the figures say so. Fuel and operating fluids (liquid petroleum gas among them) are full in an unloaded vehicle; water is cargo
 * (49 CFR 571.3, 571.120 S10.3.2).
 */
export function tankRole(tank: Pick<Tank, 'id' | 'contents' | 'use'>): TankRole {
  if (tank.use !== undefined) return ROLE_OF_USE[tank.use];
  for (const text of [tank.contents, tank.id]) {
    const words = text.toLowerCase().replace(/[_./-]/gu, ' ');
    const role = ROLE_WORDS.find(([, pattern]) => pattern.test(words))?.[0];
    // `contents: water` with `id: GREY` is waste: the id may say more, never less.
    if (role === 'fresh water' && /gr[ea]y|black|waste/iu.test(tank.id)) return 'waste';
    if (role) return role;
  }
  return 'other';
}

/** Liquid petroleum gas is filled to 80 % of the tank, the rest is room for it to expand (NFPA 58, unverified citation). */
const GAS_FILL = 0.8;
const GAS = /\b(propane|butane|lpg|lp|lp-gas)\b/iu;

export const holdsGas = (tank: Tank): boolean =>
  tank.use === undefined ? tankRole(tank) === 'operating fluid' && GAS.test(`${tank.contents} ${tank.id}`) : tank.use === 'gas';

const mostLevel = (tank: Tank): number => (holdsGas(tank) ? GAS_FILL : 1);

/**
 * A tank as full as it may be, as a load.
 * Worked: 30 US gal of propane capacity hold 24 US gal, 45.7 kg at 504 kg/m³.
 */
export const fullTank = (tank: Tank): Load => loadAt(tank.capacityM3 * mostLevel(tank) * tank.densityKgM3, tank.at);

/** Level of a tank in the unladen condition. */
export const unladenLevel = (tank: Tank): number => (['fuel', 'operating fluid'].includes(tankRole(tank)) ? 1 : 0);

/** Level that a condition gives a tank, of as full as it may be; nothing where it does not name it. */
export function statedLevel(tank: Tank, { levels }: Condition): number | undefined {
  return Object.hasOwn(levels, tank.id) ? Math.min(1, (levels[tank.id] as number) / mostLevel(tank)) : undefined;
}
