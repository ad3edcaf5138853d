import type { Condition, Tank, TankUse } from '../../records/index.js';
import { useOfContents } from '../../records/tank-contents.js';
import { type Load, loadAt } from './load.js';

/** What a tank's contents are to the vehicle. */
export type TankRole = 'fuel' | 'operating fluid' | 'fresh water' | 'waste' | 'other';

/** Role by the recorded use; liquid petroleum gas is an operating fluid. */
const ROLE_OF_USE: Readonly<Record<TankUse, TankRole>> = {
  fresh: 'fresh water',
  waste: 'waste',
  fuel: 'fuel',
  gas: 'operating fluid',
  fluid: 'operating fluid',
};

/** What a tank is for, as recorded; where not, what its contents are for, and the figures say so. Its id decides nothing. */
const useOf = ({ contents, use }: Pick<Tank, 'contents' | 'use'>): TankUse | undefined => use ?? useOfContents(contents);

/**
 * Fuel and operating fluids (liquid petroleum gas among them) are full in an unloaded vehicle; water is cargo
 * (49 CFR 571.3, 571.120 S10.3.2).
 */
export function tankRole(tank: Pick<Tank, 'contents' | 'use'>): TankRole {
  const use = useOf(tank);
  return use === undefined ? 'other' : ROLE_OF_USE[use];
}

/** Liquid petroleum gas is filled to 80 % of the tank, the rest is room for it to expand (NFPA 58, unverified citation). */
const GAS_FILL = 0.8;

export const holdsGas = (tank: Tank): boolean => useOf(tank) === 'gas';

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
