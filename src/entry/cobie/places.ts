import { progressOf } from '../../closeout/state.js';
import { boundsOf } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Zone } from '../../records/index.js';
import { type CobieSheet, cobieMm, type Handover, NONE, ORIGIN, STAMP, SYSTEM, sheet } from './handover.js';

export function facility({ model, by, on, options }: Handover): CobieSheet {
  const { shell } = model;
  const heads = [
    'Name',
    ...STAMP,
    'Category',
    'ProjectName',
    'SiteName',
    'LinearUnits',
    'AreaUnits',
    'VolumeUnits',
    'ExternalSystem',
    'ExternalFacilityObject',
    'ExternalFacilityIdentifier',
    'Description',
    'Phase',
  ];
  const revision = options.revision === null ? 'not committed' : `revision ${options.revision.slice(0, 12)}`;
  const { stage } = progressOf(model);
  return sheet('Facility', heads, [
    [
      shell.id,
      by,
      on,
      'Coach',
      shell.title,
      NONE,
      'millimeters',
      'square meters',
      'cubic meters',
      SYSTEM,
      'shell',
      shell.vin ?? shell.id,
      `${shell.title}, ${revision}`,
      stage === null ? 'every stage signed off' : `in build, to sign off next: ${stage}`,
    ],
  ]);
}

/** A coach has one floor; the sheets that follow ask for its name. */
export function floors({ model, by, on, origin }: Handover): CobieSheet {
  const { shell } = model;
  const height = shell.envelope ? cobieMm(shell.envelope.heightMm) : NONE;
  return sheet(
    'Floor',
    ['Name', ...STAMP, 'Category', ...ORIGIN, 'Description', 'Elevation', 'Height'],
    [[shell.id, by, on, 'Floor', ...origin('shell', shell.id), 'the whole coach', '0', height]],
  );
}

export function spaces({ model, by, on, origin }: Handover): CobieSheet {
  const { shell } = model;
  const row = (id: string, category: string, object: string, description: string): readonly string[] => [
    id,
    by,
    on,
    category,
    shell.id,
    description,
    ...origin(object, id),
  ];
  return sheet(
    'Space',
    ['Name', ...STAMP, 'Category', 'FloorName', 'Description', ...ORIGIN],
    [
      row(shell.id, 'Interior', 'shell', 'inside the coach'),
      ...shell.zones.map((zone) => row(zone.id, zone.concealed ? 'Concealed cavity' : 'Cavity', 'zone', zone.name)),
      ...shell.bays.map((bay) => row(bay.id, 'Bay', 'bay', bay.name ?? bay.id)),
    ],
  );
}

export function coordinates({ things, model, by, on, origin }: Handover): CobieSheet {
  const heads = [
    'Name',
    ...STAMP,
    'Category',
    'SheetName',
    'RowName',
    'CoordinateXAxis',
    'CoordinateYAxis',
    'CoordinateZAxis',
    ...ORIGIN,
  ];
  const row = (name: string, category: string, table: string, of: string, at: Vec3): readonly string[] => [
    name,
    by,
    on,
    category,
    table,
    of,
    ...at.map(cobieMm),
    ...origin('place', name),
  ];
  const corners = model.shell.zones.flatMap((zone: Zone) => {
    if (!zone.box) return [];
    const { min, max } = boundsOf(zone.box);
    return [
      row(`${zone.id} lower`, 'box-lowerleft', 'Space', zone.id, min),
      row(`${zone.id} upper`, 'box-upperright', 'Space', zone.id, max),
    ];
  });
  return sheet('Coordinate', heads, [
    ...corners,
    ...things.flatMap(({ name, at }) => (at ? [row(name, 'point', 'Component', name, at)] : [])),
  ]);
}
