/**
 * Pressure lost from a closed, gas-filled line, with the change that its temperature alone makes taken out.
 *
 * Source: ideal gas at constant volume, p₂/p₁ = T₂/T₁ with absolute pressures and temperatures (Gay-Lussac's law).
 * Assumes: gauge pressures; standard atmosphere (ISO 2533) at both readings; no change of volume.
 * Worked value: 20,000 Pa gauge at 293.15 K has 20,000 + 414 Pa at 294.15 K, so a reading of 20,000 Pa there lost 414 Pa.
 *
 * Pressures in Pa (gauge), temperatures in K; gives Pa, positive where pressure was lost.
 */
export function gasDrop(startPa: number, endPa: number, startK: number, endK: number): number {
  const expectedPa = ((startPa + ATMOSPHERE_PA) * endK) / startK - ATMOSPHERE_PA;
  return expectedPa - endPa;
}

const ATMOSPHERE_PA = 101_325;
