/**
 * Area properties of simple parts and of what is made of them (parallel-axis theorem).
 *
 * Coordinates: depth and width, mm, from the middle of the section's bounding rectangle. A part that is cut away has a
 * negative area.
 */
export interface SectionPart {
  readonly areaMm2: number;
  readonly depthMm: number;
  readonly widthMm: number;
  /** About the part's own centroid: integral of depth². */
  readonly ixMm4: number;
  /** Integral of width². */
  readonly iyMm4: number;
  /** Integral of depth × width. */
  readonly ixyMm4: number;
}

/** A full rectangle about a place. */
export function rectanglePart(depth: number, width: number, atDepth = 0, atWidth = 0): SectionPart {
  const d = Math.max(0, depth);
  const w = Math.max(0, width);
  return {
    areaMm2: d * w,
    depthMm: atDepth,
    widthMm: atWidth,
    ixMm4: (w * d ** 3) / 12,
    iyMm4: (d * w ** 3) / 12,
    ixyMm4: 0,
  };
}

const SPANDREL_AREA = 1 - Math.PI / 4;
/** Centroid from the corner along either side, as a share of the radius: (10 − 3π)/(12 − 3π). */
const SPANDREL_CENTROID = (10 - 3 * Math.PI) / (12 - 3 * Math.PI);
/** Square less quarter circle about the corner's side, then moved to the spandrel's own centroid. */
const SPANDREL_I = 1 / 3 - (Math.PI / 4 - 2 / 3 + Math.PI / 16) - SPANDREL_AREA * SPANDREL_CENTROID ** 2;
const SPANDREL_IXY = 1 / 4 - (Math.PI / 4 - 2 / 3 + 1 / 8) - SPANDREL_AREA * SPANDREL_CENTROID ** 2;

/**
 * The exact fillet between two faces at right angles: a square of side `radius` less its quarter circle.
 * The corner lies at a place; the fillet goes from there towards (±depth, ±width). Also what a rounded corner cuts away.
 */
export function fillet(
  radius: number,
  cornerDepth: number,
  cornerWidth: number,
  towardDepth: 1 | -1,
  towardWidth: 1 | -1,
): SectionPart {
  return {
    areaMm2: SPANDREL_AREA * radius ** 2,
    depthMm: cornerDepth + towardDepth * SPANDREL_CENTROID * radius,
    widthMm: cornerWidth + towardWidth * SPANDREL_CENTROID * radius,
    ixMm4: SPANDREL_I * radius ** 4,
    iyMm4: SPANDREL_I * radius ** 4,
    ixyMm4: SPANDREL_IXY * radius ** 4 * towardDepth * towardWidth,
  };
}

/** Rounds away the four corners of a rectangle about the middle. */
export function roundedRectangle(depth: number, width: number, radius: number): SectionPart {
  if (depth <= 0 || width <= 0) return rectanglePart(0, 0);
  const r = Math.min(Math.max(0, radius), depth / 2, width / 2);
  const corners = [1, -1].flatMap((d) =>
    [1, -1].map((w) => cut(fillet(r, (d * depth) / 2, (w * width) / 2, -d as 1 | -1, -w as 1 | -1))),
  );
  return combineParts([rectanglePart(depth, width), ...corners]);
}

/** The same part, taken away. */
export function cut(part: SectionPart): SectionPart {
  return { ...part, areaMm2: -part.areaMm2, ixMm4: -part.ixMm4, iyMm4: -part.iyMm4, ixyMm4: -part.ixyMm4 };
}

/** All parts together, about their common centroid. */
export function combineParts(parts: readonly SectionPart[]): SectionPart {
  let area = 0;
  let depthMoment = 0;
  let widthMoment = 0;
  for (const part of parts) {
    area += part.areaMm2;
    depthMoment += part.areaMm2 * part.depthMm;
    widthMoment += part.areaMm2 * part.widthMm;
  }
  const depthMm = area === 0 ? 0 : depthMoment / area;
  const widthMm = area === 0 ? 0 : widthMoment / area;
  let ix = 0;
  let iy = 0;
  let ixy = 0;
  for (const part of parts) {
    const d = part.depthMm - depthMm;
    const w = part.widthMm - widthMm;
    ix += part.ixMm4 + part.areaMm2 * d * d;
    iy += part.iyMm4 + part.areaMm2 * w * w;
    ixy += part.ixyMm4 + part.areaMm2 * d * w;
  }
  return { areaMm2: area, depthMm, widthMm, ixMm4: ix, iyMm4: iy, ixyMm4: ixy };
}
