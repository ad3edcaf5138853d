import type { Finding } from '../finding.js';
import { number } from '../quantity/format.js';
import { MM_PER_IN } from '../quantity/units.js';
import type { Section, SectionShape } from '../records/index.js';

/** One dimension that does not fit into another of the same section. */
interface Slip {
  readonly key: string;
  readonly mm: number;
  readonly mostMm: number;
  /** What the most comes from: `half its width`. */
  readonly of: string;
}

/** Tells a section whose walls, webs or radii do not fit into its outside: at its line, with the slip that it probably is. */
export function reportRoughSection(section: Section, say: (finding: Finding) => void): void {
  const { id, dimensions, source } = section;
  if (dimensions.shape === 'custom') reportRoughCustom(section, dimensions, say);
  const slip = slipsOf(dimensions).find(({ mm, mostMm }) => mm > mostMm * (1 + 1e-9));
  if (!slip) return;
  say({
    rule: 'format.wrong-value',
    severity: 'error',
    message: `Unexpected \`${slip.key}\` of ${size(slip.mm)} in section ${id}, expected at most ${size(slip.mostMm)} (${slip.of}): ${likely(slip)}`,
    ids: [id],
    place: source.place(slip.key),
  });
}

/** Both systems: the library has no units of its own. */
const size = (mm: number): string => `${Number((mm / MM_PER_IN).toFixed(3))} in (${Number(mm.toFixed(1))} mm)`;

/**
 * Typed figures that no section can have: more area than its outside, or a second moment beyond A (size / 2)², which is all of its
 * area at the far edges.
 */
function reportRoughCustom(
  { id, source }: Section,
  { areaMm2, ixMm4, iyMm4, depthMm, widthMm }: Extract<SectionShape, { shape: 'custom' }>,
  say: (finding: Finding) => void,
): void {
  const figures = [
    { key: 'area', is: areaMm2, most: depthMm * widthMm, unit: 'mm2', of: 'depth × width' },
    { key: 'ix', is: ixMm4, most: (areaMm2 * depthMm ** 2) / 4, unit: 'mm4', of: 'all of its area at the edges of its depth' },
    { key: 'iy', is: iyMm4, most: (areaMm2 * widthMm ** 2) / 4, unit: 'mm4', of: 'all of its area at the edges of its width' },
  ];
  const slip = figures.find(({ is, most }) => is > most * (1 + 1e-9));
  if (!slip) return;
  say({
    rule: 'format.wrong-value',
    severity: 'error',
    message: `Unexpected \`${slip.key}\` of ${number(slip.is)} ${slip.unit} in section ${id}, expected at most ${number(slip.most)} ${slip.unit} (${slip.of}): compare its unit, \`depth\` and \`width\` with the maker's sheet`,
    ids: [id],
    place: source.place(slip.key),
  });
}

/** What was probably meant: millimetres typed as inches, a point left out, else two dimensions exchanged. */
function likely({ key, mm, mostMm }: Slip): string {
  const [inMm, tenth] = [mm / MM_PER_IN, mm / 10];
  const meant = [
    inMm >= 1 && inMm <= mostMm ? `\`${Number(inMm.toFixed(3))} mm\`` : '',
    tenth <= mostMm ? `\`${Number((tenth / MM_PER_IN).toFixed(4))} in\`` : '',
  ].filter((one) => one !== '');
  if (meant.length > 0) return `was it ${meant.join(' or ')}?`;
  return `compare \`${key}\` with \`depth\` and \`width\` on the drawing, two may be exchanged`;
}

function slipsOf(shape: SectionShape): readonly Slip[] {
  switch (shape.shape) {
    case 'rectangular tube':
    case 'double hollow': {
      const half = Math.min(shape.depthMm, shape.widthMm) / 2;
      const of = shape.depthMm < shape.widthMm ? 'half its depth' : 'half its width';
      const webs = shape.shape === 'double hollow' ? [within('web', shape.webMm, half * 2, of.replace('half ', ''))] : [];
      return [within('wall', shape.wallMm, half, of), ...webs, within('corner_radius', shape.cornerRadiusMm, half, of)];
    }
    case 'I-beam':
    case 'channel':
      return [
        within('flange', shape.flangeMm, shape.depthMm / 2, 'half its depth'),
        within('web', shape.webMm, shape.widthMm, 'its width'),
        fillet(shape.filletMm, shape.depthMm / 2 - shape.flangeMm),
      ];
    case 'tee':
      return [
        within('flange', shape.flangeMm, shape.depthMm, 'its depth'),
        within('web', shape.webMm, shape.widthMm, 'its width'),
        fillet(shape.filletMm, shape.depthMm - shape.flangeMm),
      ];
    case 'angle': {
      const leg = Math.min(shape.depthMm, shape.widthMm);
      const of = 'its shorter leg';
      return [
        within('wall', shape.wallMm, leg, of),
        fillet(shape.filletMm, leg - shape.wallMm),
        within('toe_radius', shape.toeRadiusMm, shape.wallMm, 'its wall'),
      ];
    }
    case 'round tube':
      return [within('wall', shape.wallMm, shape.diameterMm / 2, 'half its diameter')];
    case 'corner radius':
      return [within('wall', shape.wallMm, shape.outerRadiusMm, 'its outer radius')];
    default:
      return [];
  }
}

const within = (key: string, mm: number, mostMm: number, of: string): Slip => ({ key, mm, mostMm, of });
const fillet = (mm: number, mostMm: number): Slip => within('fillet', mm, mostMm, 'what the flange leaves free');
