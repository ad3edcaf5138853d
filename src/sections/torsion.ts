/**
 * St Venant torsion constants, mm⁴.
 *
 * Sources: rolled shapes with fillets by El Darwish and Johnston, "Torsion of structural shapes", ASCE Journal of the
 * Structural Division 91 (1965), in the form printed with European section tables (unverified citation; the I-beam form gives the
 * Aluminum Association's printed J). Closed tubes by Bredt. A solid rectangle by St Venant's series (Timoshenko and Goodier,
 * Theory of Elasticity, article 109). Thin open strips: length × thickness³ / 3.
 */

/** Flange and web joined by two fillets (I-beam, tee): diameter of the circle that fits into the junction, and its factor. */
function teeJunction(flange: number, web: number, radius: number): number {
  const alpha =
    -0.042 +
    0.2204 * (web / flange) +
    0.1355 * (radius / flange) -
    0.0865 * ((radius * web) / flange ** 2) -
    0.0725 * (web / flange) ** 2;
  const diameter = ((flange + radius) ** 2 + (radius + web / 4) * web) / (2 * radius + flange);
  return alpha * diameter ** 4;
}

/** Two parts joined at an end by one fillet (channel). */
function cornerJunction(flange: number, web: number, radius: number): number {
  const alpha =
    -0.0908 +
    0.2621 * (web / flange) +
    0.1231 * (radius / flange) -
    0.0752 * ((web * radius) / flange ** 2) -
    0.0945 * (web / flange) ** 2;
  const diameter = 2 * (3 * radius + web + flange - Math.sqrt(2 * (2 * radius + web) * (2 * radius + flange)));
  return alpha * diameter ** 4;
}

/** Valid for web ≤ 2 × flange thickness or so; the loss at a free end of thickness t is 0.105 t⁴ a flange half. */
export function iBeamTorsion(depth: number, width: number, web: number, flange: number, radius: number): number {
  const strips = (2 / 3) * width * flange ** 3 + ((depth - 2 * flange) * web ** 3) / 3;
  return strips + 2 * teeJunction(flange, web, radius) - 0.42 * flange ** 4;
}

export function channelTorsion(depth: number, width: number, web: number, flange: number, radius: number): number {
  const strips = (2 / 3) * width * flange ** 3 + ((depth - 2 * flange) * web ** 3) / 3;
  return strips + 2 * cornerJunction(flange, web, radius) - 0.42 * flange ** 4;
}

export function teeTorsion(depth: number, width: number, web: number, flange: number, radius: number): number {
  const strips = (width * flange ** 3) / 3 + ((depth - flange) * web ** 3) / 3;
  return strips + teeJunction(flange, web, radius) - 0.21 * flange ** 4 - 0.105 * web ** 4;
}

/** Both legs of one thickness. */
export function angleTorsion(depth: number, width: number, wall: number, radius: number): number {
  const alpha = 0.0768 + 0.0479 * (radius / wall);
  const diameter = 2 * (3 * radius + 2 * wall - Math.SQRT2 * (2 * radius + wall));
  return (width * wall ** 3) / 3 + ((depth - wall) * wall ** 3) / 3 + alpha * diameter ** 4 - 0.21 * wall ** 4;
}

/** One closed cell of even wall, by Bredt: 4 A² t / s along the wall's middle line. Leaves out the wall's own s t³/3: a little low. */
export function tubeTorsion(depth: number, width: number, wall: number, outerRadius: number): number {
  const d = depth - wall;
  const w = width - wall;
  const r = Math.max(0, outerRadius - wall / 2);
  if (d <= 0 || w <= 0) return barTorsion(depth, width);
  const enclosed = d * w - (4 - Math.PI) * r ** 2;
  const around = 2 * (d + w) - (8 - 2 * Math.PI) * r;
  return (4 * enclosed ** 2 * wall) / around;
}

/** A solid rectangle: a b³/3 × (1 − 192/π⁵ × b/a × Σ tanh(nπa/2b)/n⁵, n odd), a the longer side. */
export function barTorsion(sideA: number, sideB: number): number {
  const a = Math.max(sideA, sideB);
  const b = Math.min(sideA, sideB);
  if (b <= 0) return 0;
  let sum = 0;
  for (let n = 1; n <= 19; n += 2) sum += Math.tanh((n * Math.PI * a) / (2 * b)) / n ** 5;
  return ((a * b ** 3) / 3) * (1 - (192 / Math.PI ** 5) * (b / a) * sum);
}
