import type { Model } from '../../model/shell.js';
import { unknownAlloys } from './density.js';
import { withoutMass } from './panels.js';
import type { RunFigure } from './types.js';

/** What the take-off stands on, in sentences: the fixed ones first, then those that this shell calls for. */
export function takeOffAssumptions(model: Model, runs: readonly RunFigure[]): readonly string[] {
  const { shell, library } = model;
  const alloys = [...shell.members, ...shell.panels].flatMap(({ alloy }) => (alloy === undefined ? [] : [alloy]));
  return [
    ...(shell.members.length > 0 ? MEMBERS : []),
    ...(shell.panels.length > 0 ? PANELS : []),
    ...(shell.runs.length > 0 ? RUNS : []),
    ...(shell.components.length > 0 ? COMPONENTS : []),
    ...SUMS,
    ...unknownAlloys(alloys, library),
    ...listed('Not counted for want of thickness, alloy or a weighed mass: panels', shell.panels.filter(withoutMass)),
    ...listed(
      'Not counted, as no table or library has their conductor or size: runs',
      runs.filter((run) => run.massKg === 0 && (run.lengthMm ?? 0) > 0),
    ),
    ...listed(
      'Not counted, as neither their length nor the places of both ends are recorded: runs',
      runs.filter((run) => run.lengthMm === undefined),
    ),
    ...listed(
      'Counted at the middle of the other runs, give or take a third of the coach, as the places of their ends are not recorded: runs',
      runs.filter((run) => run.centroid === undefined && run.massKg > 0),
    ),
    ...listed('Custom sections without a torsion constant show 0:', customWithoutJ(model)),
  ];
}

const MEMBERS = [
  'Members weigh section area × density × cut length, or the length of their middle line, round its bends, where no cut length is recorded; copes, mitres and drilled holes are not taken off.',
  'Section properties follow from the typed dimensions with exact fillets and corner radii; flange tips are square.',
];
const PANELS = [
  'Panels weigh net area × thickness × density: holes, the clear openings of the access panels set in them and the wall openings that they cover are taken off. A weighed mass goes before.',
  'Adhesive, sealant, paint and fasteners are not counted unless recorded as components.',
];
const RUNS = [
  'Wires weigh their metal (copper 8890, aluminium 2703 kg/m³) plus PVC insulation of THHN thickness at 1400 kg/m³; cable jackets, ties and clips are not counted.',
  'Pipes weigh their wall by nominal size and material; hose, duct and thin tube have house walls. Coolant (1070 kg/m³) and hydraulic oil (870 kg/m³) stay in; water, drain, gas and air lines count as empty.',
];
const COMPONENTS = ['Components weigh what is recorded for them, by the basis stated.'];
const SUMS = [
  'Standard uncertainties by basis: weighed 0.5 %, catalogue 3 %, calculated 2 %, estimated 10 % of the mass; 25, 50, 10 and 100 mm of position (project defaults).',
  'Weld metal is not in the sum. The chassis as it came, tanks’ contents, occupants and cargo are not either: they come with the weights.',
  'An item counts to the side on which its center of gravity lies; one on the center line counts half to each.',
];

function listed(words: string, records: readonly { readonly id: string }[]): readonly string[] {
  if (records.length === 0) return [];
  const shown = records.slice(0, 10).map(({ id }) => id);
  const more = records.length > shown.length ? ` and ${records.length - shown.length} more` : '';
  return [`${words} ${shown.join(', ')}${more}.`];
}

function customWithoutJ({ shell, library }: Model): readonly { readonly id: string }[] {
  const used = new Set(shell.members.map(({ shape }) => (shape.kind === 'line' ? shape.section : undefined)));
  return [...library.sections.values()].filter(
    ({ id, dimensions }) => used.has(id) && dimensions.shape === 'custom' && dimensions.jMm4 === undefined,
  );
}
