import type { SectionShape } from '../../../model/library.js';
import { angle } from './angle.js';
import { channel } from './channel.js';
import { cornerRadius } from './corner-radius.js';
import { iBeam } from './i-beam.js';
import { doubleHollow, rectangularTube } from './rectangular-tube.js';
import type { ShapeProperties } from './shape.js';
import { flatBar, roundBar, roundTube } from './solid-and-round.js';
import { tee } from './tee.js';

/**
 * Area (mm²), centroid (mm from the middle of the bounding rectangle, towards +depth and +width), second moments about it and
 * torsion constant (mm⁴) of a section, from its dimensions.
 *
 * How the unsymmetrical ones lie: a channel's back is on the −width side, an angle's heel at (−depth, −width), a tee's flange
 * on the +depth side, a corner radius has its centre at (−depth, −width).
 */
export function shapeProperties(shape: SectionShape): ShapeProperties {
  switch (shape.shape) {
    case 'rectangular tube':
      return rectangularTube(shape);
    case 'double hollow':
      return doubleHollow(shape);
    case 'I-beam':
      return iBeam(shape);
    case 'channel':
      return channel(shape);
    case 'angle':
      return angle(shape);
    case 'tee':
      return tee(shape);
    case 'flat bar':
      return flatBar(shape);
    case 'round bar':
      return roundBar(shape);
    case 'round tube':
      return roundTube(shape);
    case 'corner radius':
      return cornerRadius(shape);
    case 'custom':
      return {
        areaMm2: shape.areaMm2,
        depthMm: 0,
        widthMm: 0,
        ixMm4: shape.ixMm4,
        iyMm4: shape.iyMm4,
        ixyMm4: 0,
        jMm4: shape.jMm4 ?? 0,
      };
  }
}
