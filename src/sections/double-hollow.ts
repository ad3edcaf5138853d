import { combineParts, rectanglePart } from './parts.js';
import { rectangularTube, tubeFits, tubeWalls } from './rectangular-tube.js';
import { rounded } from './ring.js';
import { across, fitWithin, radiusOf, type SectionKind, type ShapeProperties, type SizesOf } from './shape.js';

/**
 * A rectangular tube with one web across its width at half depth. The web is sharp where it meets the walls. In torsion the two
 * cells are alike, so the shear flow in the web is nil and the constant is that of the tube without it (Bredt).
 */
function doubleHollow({ webMm, ...tube }: SizesOf<'double hollow'>): ShapeProperties {
  const outer = rectangularTube({ ...tube, shape: 'rectangular tube' });
  const web = rectanglePart(Math.min(webMm, tube.depthMm - 2 * tube.wallMm), tube.widthMm - 2 * tube.wallMm);
  return { ...combineParts([outer, web]), jMm4: outer.jMm4 };
}

export const DOUBLE_HOLLOW: SectionKind<'double hollow'> = {
  properties: doubleHollow,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, wallMm: t, webMm, cornerRadiusMm }) => {
    const [h, b, web] = [depthMm / 2, widthMm / 2, webMm / 2];
    // The web lies across the depth and makes two equal hollows of it.
    return [
      rounded(-b, -h, b, h, cornerRadiusMm),
      rounded(-b + t, web, b - t, h - t, 0),
      rounded(-b + t, -h + t, b - t, -web, 0),
    ];
  },
  walls: (sizes) => [...tubeWalls(sizes), across(sizes.widthMm, 0, sizes.webMm)],
  thinnestMm: ({ wallMm }) => wallMm,
  dimensions: ({ wallMm, webMm, cornerRadiusMm }) => [
    ['wall', wallMm],
    ['web', webMm],
    ...radiusOf('corner radius', cornerRadiusMm),
  ],
  fits: (sizes) => {
    const { depthMm, widthMm, webMm } = sizes;
    const of = depthMm < widthMm ? 'its depth' : 'its width';
    return tubeFits(sizes, [fitWithin('web', webMm, Math.min(depthMm, widthMm), of)]);
  },
};
