/**
 * What a wire is made of: gauge to size, resistivity, density. Shared by take-off (mass), services (voltage drop) and access
 * (outside diameters).
 */

/** Resistivity at 20 °C, ohm·mm²/m. Copper 100 % IACS and hard-drawn aluminium: IEC 60287-1-1 Table 1. */
export const RESISTIVITY_OHM_MM2_M = { copper: 0.017241, aluminium: 0.02826 } as const;

/** Change of resistance per kelvin, referred to 20 °C: IEC 60287-1-1 Table 1. */
export const TEMPERATURE_COEFFICIENT = { copper: 0.00393, aluminium: 0.00403 } as const;

/** kg/m³. Annealed copper: IEC 60028, unverified citation. Hard-drawn aluminium: IEC 60889, unverified citation. */
export const CONDUCTOR_DENSITY_KG_M3 = { copper: 8890, aluminium: 2703 } as const;

/**
 * The number of a gauge as typed: `14` is 14, `1/0` is 0, `4/0` is −3. Undefined for what is no gauge from 4/0 to 40.
 */
export function awgNumber(awg: string): number | undefined {
  const text = awg.trim();
  const aught = /^([1-4])\/0$/u.exec(text);
  if (aught) return 1 - Number(aught[1]);
  if (!/^\d{1,2}$/u.test(text) || Number(text) > 40) return undefined;
  return Number(text);
}

/**
 * Diameter of a solid conductor of an American Wire Gauge, mm: 0.005 in × 92^((36 − n)/39).
 * ASTM B258 (unverified citation; agrees with the printed wire table to 0.06 %). Undefined for an unknown gauge.
 */
export function awgDiameterMm(awg: string): number | undefined {
  const n = awgNumber(awg);
  return n === undefined ? undefined : 0.127 * 92 ** ((36 - n) / 39);
}

/** Area of metal of an American Wire Gauge, mm²; stranded wire of a gauge has the same. Undefined for an unknown gauge. */
export function awgAreaMm2(awg: string): number | undefined {
  const diameter = awgDiameterMm(awg);
  return diameter === undefined ? undefined : (Math.PI / 4) * diameter ** 2;
}
