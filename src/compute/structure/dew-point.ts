/**
 * Dew point of air, K: the temperature of a surface on which its water begins to settle.
 *
 * Source: Magnus formula with the constants of Sonntag (1990) over water, WMO Guide to Instruments (WMO-No. 8), unverified citation:
 * γ = ln(RH) + 17.62 t / (243.12 + t), dew point = 243.12 γ / (17.62 − γ), in °C. Good from −45 to +60 °C.
 * Worked value: air of 20 °C at 50 % has its dew point at 9.3 °C.
 *
 * Air in K, humidity as a fraction above 0.
 */
export function dewPointK(airK: number, humidity: number): number {
  const t = airK - ZERO_C_K;
  const gamma = Math.log(humidity) + (A * t) / (B + t);
  return (B * gamma) / (A - gamma) + ZERO_C_K;
}

const ZERO_C_K = 273.15;
const A = 17.62;
const B = 243.12;
