import type { Assessment } from '../../assess.js';
import { PHOTOS_OF_A_JOINT } from '../../compute/access/photos.js';
import type { JointCoverage } from '../../compute/structure/types.js';
import type { StoreText } from '../../model/load-types.js';
import { length, mass, percent, type UnitSystem } from '../../quantity/format.js';
import { frame } from '../../source/frame.js';
import type { CheckedFindings, CheckedShell } from './checked.js';
import { countsText, findingsText, type ShowFrame } from './findings.js';
import type { TerminalPaint } from './paint.js';
import { paragraph } from './wrap.js';

/** A frame stands four columns in. */
const FRAME_WIDTH = 74;

export function checkText(
  library: CheckedFindings,
  shells: readonly CheckedShell[],
  text: StoreText,
  paint: TerminalPaint,
  all: boolean,
): string {
  const show: ShowFrame = (place) => {
    const file = text.files.get(place.file);
    return file === undefined ? '' : frame(file, place, FRAME_WIDTH);
  };
  const parts: string[] = [];
  if (library.findings.length > 0) {
    parts.push(
      paint.strong('Shop file and library'),
      findingsText(library.findings, show, paint, all),
      summary('', library, paint),
    );
  }
  for (const shell of shells) {
    const { id, title } = shell.assessment.model.shell;
    parts.push(paint.strong(`${id}  ${title}`));
    if (shell.findings.length > 0) parts.push(findingsText(shell.findings, show, paint, all));
    parts.push([coverageText(shell.assessment), summary(`${id}: `, shell, paint)].filter((text) => text !== '').join('\n'));
  }
  if (shells.length === 0) parts.push('No shells in this store yet. Start one: shellbook new-shell ID');
  return parts.join('\n\n');
}

function summary(head: string, checked: CheckedFindings, paint: TerminalPaint): string {
  const said = `${head}${countsText(checked.counts)}`;
  return checked.blocks ? paint.error(said) : paint.good(said);
}

/** The headline figures of a build: what can be got at, and what is on record. */
function coverageText({ model, figures }: Assessment): string {
  const { coverage } = figures.access;
  const { found, recorded, byStage = {} } = figures.joints;
  const lines: string[] = [];
  if (coverage.nodes > 0) {
    const runs =
      coverage.runLengthMm > 0 ? `, ${runShare(coverage.runLengthInReachMm, coverage.runLengthMm, model.shop.units)}` : '';
    lines.push(`In reach: ${coverage.nodesInReach} of ${coverage.nodes} service nodes${runs}.`);
  }
  const { runLengthMm, shownMm, joints } = figures.photos;
  if (runLengthMm > 0 || joints.length > 0) {
    const twice = joints.filter(({ photos }) => photos.length >= PHOTOS_OF_A_JOINT).length;
    const runs = runLengthMm > 0 ? `, ${runShare(shownMm, runLengthMm, model.shop.units)}` : '';
    lines.push(`In pictures from before close-in: ${twice} of ${joints.length} concealed joints in two${runs}.`);
  }
  const { share, primaryKg } = figures.materials;
  if (share !== undefined && share > 0) {
    lines.push(`Metal: ${percent(share, 0)} of ${mass(primaryKg, model.shop.units)} of primary structure is traced to its heat.`);
  }
  if (found > 0) lines.push(`Joints: ${recorded} of ${found} found in the geometry have a weld record${shortStages(byStage)}.`);
  return lines.map((line) => paragraph(line)).join('\n');
}

const runShare = (inReachMm: number, allMm: number, units: UnitSystem): string =>
  `${length(inReachMm, units)} of ${length(allMm, units)} of run (${percent(inReachMm / allMm, 0)})`;

/** The stages that have joints without a record: ` (floor 82 of 84)`. */
function shortStages(byStage: Readonly<Record<string, JointCoverage>>): string {
  const short = Object.entries(byStage).filter(([stage, { found, recorded }]) => stage !== '' && recorded < found);
  return short.length === 0
    ? ''
    : ` (${short.map(([stage, { found, recorded }]) => `${stage} ${recorded} of ${found}`).join(', ')})`;
}
