/**
 * Outside diameter and wall by nominal size, inches as printed. Sizes are the trade's own: `1/2 in` PEX or copper is 5/8 in
 * outside, `1/2 in` pipe is 0.840 in outside, a hose is named by its bore, nylon and refrigeration tube by the outside.
 */

export interface PipeRow {
  readonly nominalIn: number;
  readonly outsideIn: number;
  readonly wallIn: number;
}

const rows = (...table: readonly (readonly [number, number, number])[]): readonly PipeRow[] =>
  table.map(([nominalIn, outsideIn, wallIn]) => ({ nominalIn, outsideIn, wallIn }));

/** ASTM F876, copper tube size, SDR 9, least wall. From memory. */
export const PEX = rows(
  [0.25, 0.375, 0.062],
  [0.375, 0.5, 0.07],
  [0.5, 0.625, 0.07],
  [0.625, 0.75, 0.083],
  [0.75, 0.875, 0.097],
  [1, 1.125, 0.125],
  [1.25, 1.375, 0.153],
  [1.5, 1.625, 0.181],
  [2, 2.125, 0.236],
);

/** ASTM B88 type L. From memory; checked against the standard's printed mass per foot. */
export const COPPER_L = rows(
  [0.25, 0.375, 0.03],
  [0.375, 0.5, 0.035],
  [0.5, 0.625, 0.04],
  [0.625, 0.75, 0.042],
  [0.75, 0.875, 0.045],
  [1, 1.125, 0.05],
  [1.25, 1.375, 0.055],
  [1.5, 1.625, 0.06],
  [2, 2.125, 0.07],
);

/** ASTM B280, tube for refrigeration, coils: named by its outside diameter. From memory. */
export const COPPER_REFRIGERATION = rows(
  [0.25, 0.25, 0.03],
  [0.3125, 0.3125, 0.032],
  [0.375, 0.375, 0.032],
  [0.5, 0.5, 0.032],
  [0.625, 0.625, 0.035],
  [0.75, 0.75, 0.042],
  [0.875, 0.875, 0.045],
  [1.125, 1.125, 0.05],
);

/** ASME B36.10 schedule 40: steel and aluminium pipe; plastic pipe and conduit of that schedule alike. Sizes from 2-1/2 and below 3/4 (unverified citation). */
export const SCHEDULE_40 = rows(
  [0.125, 0.405, 0.068],
  [0.25, 0.54, 0.088],
  [0.375, 0.675, 0.091],
  [0.5, 0.84, 0.109],
  [0.75, 1.05, 0.113],
  [1, 1.315, 0.133],
  [1.25, 1.66, 0.14],
  [1.5, 1.9, 0.145],
  [2, 2.375, 0.154],
  [2.5, 2.875, 0.203],
  [3, 3.5, 0.216],
  [4, 4.5, 0.237],
);

/** ASME B36.10 schedule 80. From memory but for 2 in. */
export const SCHEDULE_80 = rows(
  [0.25, 0.54, 0.119],
  [0.375, 0.675, 0.126],
  [0.5, 0.84, 0.147],
  [0.75, 1.05, 0.154],
  [1, 1.315, 0.179],
  [1.25, 1.66, 0.191],
  [1.5, 1.9, 0.2],
  [2, 2.375, 0.218],
);

/** ASTM D2846, CPVC, copper tube size, SDR 11. From memory. */
export const CPVC = rows([0.375, 0.5, 0.068], [0.5, 0.625, 0.068], [0.75, 0.875, 0.08], [1, 1.125, 0.102], [1.25, 1.375, 0.125]);

/** SAE J844, nylon air brake tube: named by its outside diameter. From memory. */
export const NYLON = rows(
  [0.125, 0.125, 0.02],
  [0.25, 0.25, 0.04],
  [0.375, 0.375, 0.062],
  [0.5, 0.5, 0.062],
  [0.625, 0.625, 0.092],
  [0.75, 0.75, 0.092],
);

/** ANSI C80.3, electrical metallic tubing. From memory; its inside areas are those of NEC Chapter 9 Table 4. */
export const EMT = rows(
  [0.5, 0.706, 0.042],
  [0.75, 0.922, 0.049],
  [1, 1.163, 0.057],
  [1.25, 1.51, 0.065],
  [1.5, 1.74, 0.065],
  [2, 2.197, 0.065],
);
