import { add, distance, lerp, polylineLength, scale, type Vec3 } from '../../../geometry/vector.js';
import { hasWay } from '../../../model/placed.js';
import type { Model } from '../../../model/shell.js';
import type { Circuit, ConductorType, Library, Run } from '../../../records/index.js';
import { type Metal, metalOfKind } from '../../../records/material.js';
import type { RunFigure } from '../types.js';
import { contentsKgM, contentsOf } from './contents.js';
import { type Pipe, pipe, pipeOf } from './pipes.js';
import { wiresOf } from './wires.js';

/** What a run is made of, per metre. Both absent where neither conductor nor size says anything that is known. */
interface Line {
  readonly outsideMm?: number;
  readonly insideMm?: number;
  readonly massKgM?: number;
}

/**
 * Outside diameter of a run, mm: a bundle of its wires, or its pipe, hose or duct. The run's own conductor or size goes before its
 * circuit's. Undefined where it is not recorded or no table has it.
 */
export function runOutsideDiameterMm(run: Run, circuit: Circuit | undefined, library: Library): number | undefined {
  return lineOf(run, circuit, library).outsideMm;
}

function lineOf(run: Run, circuit: Circuit | undefined, library: Library): Line {
  const conductor = run.conductor ?? circuit?.conductor;
  if (conductor && (run.size === undefined || run.conductor)) return wiresOf(conductor, library.conductors) ?? {};
  const size = run.size ?? circuit?.size;
  if (!size) return {};
  const type = library.conductors.get(size.text) ?? library.conductors.get(size.material);
  return (type ? typedPipe(type, size.nominalMm) : pipeOf(size)) ?? {};
}

/** A pipe of the library: by its diameters; its mass is the typed one, else that of its wall where the material is known. */
function typedPipe(type: ConductorType, nominalMm: number): Line {
  const outsideMm = type.outsideDiameterMm ?? nominalMm;
  const insideMm = type.insideDiameterMm;
  const wall: Pipe | undefined =
    insideMm === undefined ? undefined : pipe(outsideMm, (outsideMm - insideMm) / 2, densityOf(type.materialKind));
  return { outsideMm, insideMm, massKgM: type.massKgM ?? wall?.massKgM };
}

/** kg/m³, as in pipes.ts; what is no metal of the list is taken as a plastic. */
const DENSITY_KG_M3: Readonly<Record<Metal, number>> = { copper: 8940, steel: 7850, stainless: 7850, aluminium: 2700 };
const PLASTIC_KG_M3 = 1400;

function densityOf(kind: string | undefined): number {
  const metal = metalOfKind(kind);
  return metal === undefined ? PLASTIC_KG_M3 : DENSITY_KG_M3[metal];
}

/** Length, mass and centroid of each run along its way; what stays in it is counted. */
export function runFigures({ shell, library }: Model): readonly RunFigure[] {
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit]));
  const services = new Map(shell.services.map((service) => [service.id, service]));
  return shell.runs.map((run) => {
    const circuit = run.circuit === undefined ? undefined : circuits.get(run.circuit);
    const line = lineOf(run, circuit, library);
    const contents = contentsOf(run, services.get(run.service));
    const filling = contents && line.insideMm !== undefined ? contentsKgM(line.insideMm, contents) : 0;
    const pathLengthMm = hasWay(run) ? polylineLength(run.path) : undefined;
    const lengthMm = run.installedLengthMm ?? pathLengthMm;
    return {
      id: run.id,
      lengthMm,
      pathLengthMm,
      massKg: (((line.massKgM ?? 0) + filling) * (lengthMm ?? 0)) / 1000,
      centroid: hasWay(run) ? middleOf(run.path) : undefined,
      outsideDiameterMm: line.outsideMm ?? 0,
      stage: run.stage,
    };
  });
}

/** Centre of length of a polyline. */
function middleOf(path: readonly Vec3[]): Vec3 {
  let length = 0;
  let moment: Vec3 = [0, 0, 0];
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1] as Vec3, path[i] as Vec3];
    const part = distance(from, to);
    length += part;
    moment = add(moment, scale(lerp(from, to, 0.5), part));
  }
  return length === 0 ? (path[0] ?? [0, 0, 0]) : scale(moment, 1 / length);
}
