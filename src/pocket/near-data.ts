import type { Computed } from '../compute/figures.js';
import type { LoadingData, NearData } from '../page/pocket-data.js';

function only<T extends object, K extends keyof T>(record: T, ...keys: readonly K[]): Pick<T, K> {
  return Object.fromEntries(keys.flatMap((key) => (record[key] === undefined ? [] : [[key, record[key]]]))) as Pick<T, K>;
}

/**
 * What `near` and `screwAt` read of a record and its figures, by name: nothing else goes into the page with it. Figures to the last
 * digit, so that no edge falls otherwise than at the prompt.
 */
export function nearData({ model: { shell, library }, figures }: Computed): NearData {
  const used = new Set(shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? [shape.section] : [])));
  return {
    shell: {
      runs: shell.runs.map((one) => only(one, 'id', 'medium', 'path', 'toleranceMm')),
      nodes: shell.nodes.map((one) => only(one, 'id', 'medium', 'at', 'toleranceMm')),
      members: shell.members.map((one) => only(one, 'id', 'shape')),
      panels: shell.panels.map((one) => only(one, 'id', 'panelKind', 'of', 'outline', 'holes', 'thicknessMm', 'facing')),
      components: shell.components.map((one) => only(one, 'id', 'at', 'sizeMm', 'middle', 'outside', 'ridesOn', 'toleranceMm')),
      tanks: shell.tanks.map((one) => only(one, 'id', 'capacityM3', 'at', 'body', 'of')),
      bays: shell.bays.map((one) => only(one, 'id', 'at', 'body')),
      zones: shell.zones.map((one) => only(one, 'id', 'box', 'along', 'clearMm')),
      chassis: {
        frame: shell.chassis.frame,
        axles: shell.chassis.axles.map((one) => only(one, 'id', 'xMm')),
      },
    },
    sections: [...used].flatMap((id) => {
      const section = library.sections.get(id);
      return section ? [[id, only(section, 'id', 'dimensions')]] : [];
    }),
    runs: figures.takeOff.runs.map((one) => only(one, 'id', 'outsideDiameterMm')),
    // Of a welded joint one weld names it; its members only where there is none.
    joints: figures.joints.joints.flatMap((one) =>
      one.bounds
        ? [
            one.welds.length > 0
              ? { bounds: one.bounds, welds: one.welds.slice(0, 1) }
              : only(one, 'members', 'bounds', 'welds', 'clamps'),
          ]
        : [],
    ),
  } as unknown as NearData;
}

/** What the loading what-if reads; undefined where no load can be computed. */
export function loadingData({ model: { shell }, figures: { weights } }: Computed): LoadingData | undefined {
  if (weights.loadLines.length === 0) return undefined;
  const unladen = weights.conditions.find((one) => one.name === 'unladen' && one.kind === 'standard');
  return {
    ...only(shell.chassis, 'gvwrKg'),
    ...only(weights, 'fullWithoutBaysKg'),
    unladenUncertaintyKg: unladen?.uncertaintyKg ?? 0,
    lines: weights.loadLines,
    bays: shell.bays.map((one) => only(one, 'id', 'at', 'limitKg')),
  };
}
