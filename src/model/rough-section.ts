import type { Finding } from '../finding.js';
import { number } from '../quantity/format.js';
import { MM_PER_IN } from '../quantity/units.js';
import type { Section, SectionShape } from '../records/index.js';
import { type SizeFit, sectionFits } from '../sections/index.js';

/** Tells a section whose walls, webs or radii do not fit into its outside: at its line, with the slip that it probably is. */
export function reportRoughSection(section: Section, say: (finding: Finding) => void): void {
  const { id, dimensions, source } = section;
  if (dimensions.shape === 'custom') reportRoughCustom(section, dimensions, say);
  const slip = sectionFits(dimensions).find(({ mm, mostMm }) => mm > mostMm * (1 + 1e-9));
  if (!slip) return;
  say({
    rule: 'format.wrong-value',
    severity: 'error',
    message: `Found \`${slip.key}\` of ${size(slip.mm)} in section ${id}, expected at most ${size(slip.mostMm)} (${slip.of}): ${likely(slip)}`,
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
    message: `Found \`${slip.key}\` of ${number(slip.is)} ${slip.unit} in section ${id}, expected at most ${number(slip.most)} ${slip.unit} (${slip.of}): compare its unit, \`depth\` and \`width\` with the maker's sheet`,
    ids: [id],
    place: source.place(slip.key),
  });
}

/** What was probably meant: millimetres typed as inches, a point left out, else two dimensions exchanged. */
function likely({ key, mm, mostMm }: SizeFit): string {
  const [inMm, tenth] = [mm / MM_PER_IN, mm / 10];
  const meant = [
    inMm >= 1 && inMm <= mostMm ? `\`${Number(inMm.toFixed(3))} mm\`` : '',
    tenth <= mostMm ? `\`${Number((tenth / MM_PER_IN).toFixed(4))} in\`` : '',
  ].filter((one) => one !== '');
  if (meant.length > 0) return `was it ${meant.join(' or ')}?`;
  return `compare \`${key}\` with \`depth\` and \`width\` on the drawing, two may be exchanged`;
}
