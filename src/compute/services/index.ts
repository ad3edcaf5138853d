import type { Model } from '../../model/shell.js';
import type { Run } from '../../records/index.js';
import { contentsOf } from '../takeoff/services/contents.js';
import { pipeOf } from '../takeoff/services/pipes.js';
import type { TakeOff } from '../takeoff/types.js';
import { bundledConductors } from './bundles.js';
import { sharedZones, zoneFills } from './cavities.js';
import { circuitFigure } from './circuits.js';
import { crossings } from './crossings.js';
import { keepApartOf } from './keep-apart.js';
import { tooClose } from './separation.js';
import { drainedLitres, trappedWater } from './trapped-water.js';
import type { ServicesFigures } from './types.js';
import { wireOf } from './wire.js';
import { zonesOfRuns } from './zones-of-runs.js';

/** Figures of every circuit, cavity and pair of media that must keep apart. Lengths and outside diameters come from the take-off. */
export function services(model: Model, takeOff: TakeOff): ServicesFigures {
  const { shell, library, shop } = model;
  const figures = new Map(takeOff.runs.map((run) => [run.id, run] as const));
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const owners = new Map(shell.services.map((service) => [service.id, service] as const));
  const circuitOf = (run: Run) => (run.circuit === undefined ? undefined : circuits.get(run.circuit));
  const outsideMm = (run: Run): number => figures.get(run.id)?.outsideDiameterMm ?? 0;
  const carrying = (run: Run): number => wireOf(run.conductor ?? circuitOf(run)?.conductor, library)?.carrying ?? 2;

  const live = shell.runs.filter((run) => !run.abandoned && !run.spare);
  const zonesOf = zonesOfRuns(model);
  const keepApart = keepApartOf(shop.limits.keepApart);
  const around = {
    library,
    ...(shop.limits.ambientC === undefined ? {} : { ambientC: shop.limits.ambientC }),
    nodes,
    lengthMm: (run: Run): number => figures.get(run.id)?.lengthMm ?? run.installedLengthMm ?? 0,
    hasLength: (run: Run): boolean => figures.get(run.id)?.lengthMm !== undefined,
    bundled: bundledConductors(live, carrying),
    all: { circuits, runs: live },
  };
  const byCircuit = groupByCircuit(shell.runs);
  const wet = shell.runs.filter(
    (run) => (run.medium === 'water' || run.medium === 'drain') && !contentsOf(run, owners.get(run.service)),
  );
  const boreMm = (run: Run): number => insideMm(run, circuitOf(run)?.size);
  return {
    circuits: shell.circuits.map((circuit) => circuitFigure(circuit, byCircuit.get(circuit.id) ?? [], around)),
    zones: zoneFills(model, zonesOf, outsideMm),
    tooClose: tooClose(shell.runs, keepApart, outsideMm),
    sharedZones: sharedZones(model, zonesOf, keepApart),
    trapped: trappedWater(wet, nodes, boreMm),
    drained: [...drainedLitres(wet, nodes, boreMm)].map(([node, litres]) => ({ node, litres })),
    crossings: crossings(model),
    assumptions: ASSUMPTIONS,
  };
}

const ASSUMPTIONS: readonly string[] = [
  'Resistance from the conductor’s area at 50 °C (DC) or 75 °C (AC), copper 17.241 and aluminium 28.26 mΩ·mm²/m at 20 °C (IEC 60287-1-1); inductance is not counted.',
  'Ampacity from NEC Table 310.16, corrected for air hotter or cooler than 30 °C where the shop or the circuit says so (NEC 310.15(B)), reduced for conductors that lie within 50 mm of each other over more than 24 in. A licensed electrician’s reading of the code goes first.',
  'Cavity fill counts the outside circles of the runs that lie side by side at the fullest place of the cavity against its clear area.',
  'Distances between runs are between their outsides, less the tolerance of both places where it is recorded.',
  'Trapped water: every drain, tap, appliance and valve open, and the line open at its tank.',
];

function groupByCircuit(runs: readonly Run[]): ReadonlyMap<string, readonly Run[]> {
  const groups = new Map<string, Run[]>();
  for (const run of runs) {
    if (run.circuit === undefined || run.abandoned) continue;
    const list = groups.get(run.circuit);
    if (list) list.push(run);
    else groups.set(run.circuit, [run]);
  }
  return groups;
}

/** Bore of a pipe, mm: by the table of its kind, else its nominal size. */
function insideMm(run: Run, circuitSize: Run['size']): number {
  const size = run.size ?? circuitSize;
  return size ? (pipeOf(size)?.insideMm ?? size.nominalMm) : 0;
}
