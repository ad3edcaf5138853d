import { zoneMap } from '../compute/access/zones.js';
import { boundsOf } from '../geometry/box.js';
import type { Vec3 } from '../geometry/vector.js';
import type { ServiceNode, Zone } from '../model/services.js';
import type { Component, Model } from '../model/shell.js';

/** One sheet of the hand-over set. */
export interface CobieSheet {
  readonly name: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface CobieOptions {
  /** ISO 8601, of the record’s last commit; null where it has none. */
  readonly createdOn: string | null;
  readonly revision: string | null;
  /** The customer is named only where asked. */
  readonly customer: boolean;
}

/** What the sheets say where nothing is known. */
const NONE = 'n/a';
const SYSTEM = 'shellbook';

/**
 * The record as sheets in the COBie manner, so that a fleet’s system can read it: the coach is the facility, its cavities and bays are
 * spaces, what stands in them components, its services systems. Lengths in millimetres, in the shell’s datum.
 * Column names: COBie 2.4 (NBIMS-US V3), from memory.
 */
export function cobieSheets(model: Model, options: CobieOptions): readonly CobieSheet[] {
  const makers = [contacts, facility, floors, spaces, types, components, systems, documents, coordinates];
  const data = new Handover(model, options);
  return makers.map((make) => make(data));
}

interface Thing {
  readonly name: string;
  readonly type: string;
  readonly description: string;
  readonly at: Vec3;
  readonly serial?: string | undefined;
  readonly date?: string | undefined;
  readonly tag?: string | undefined;
}

class Handover {
  readonly by: string;
  readonly on: string;
  readonly things: readonly Thing[];
  private readonly zones: ReturnType<typeof zoneMap>;

  constructor(
    readonly model: Model,
    readonly options: CobieOptions,
  ) {
    this.by = model.shop.contact ?? model.shop.name;
    this.on = options.createdOn ?? NONE;
    this.things = [...model.shell.components.map(ofComponent), ...model.shell.nodes.map(ofNode)];
    this.zones = zoneMap(model.shell.zones);
  }

  spaceAt(at: Vec3): string {
    return this.zones.holding(at)[0]?.id ?? this.model.shell.id;
  }

  /** The three columns that say where a row comes from. */
  origin(object: string, id: string): readonly string[] {
    return [SYSTEM, object, id];
  }
}

const ofComponent = (one: Component): Thing => ({
  name: one.id,
  type: one.part ?? one.name,
  description: one.name,
  at: one.at,
  serial: one.serial,
  date: one.date,
});

const ofNode = (one: ServiceNode): Thing => ({
  name: one.id,
  type: `${one.medium} ${one.nodeKind}`,
  description: one.name ?? `${one.medium} ${one.nodeKind}`,
  at: one.at,
  date: one.date,
  tag: one.marking,
});

const STAMP = ['CreatedBy', 'CreatedOn'];
const ORIGIN = ['ExternalSystem', 'ExternalObject', 'ExternalIdentifier'];

const sheet = (name: string, heads: readonly string[], rows: readonly (readonly (string | undefined)[])[]): CobieSheet => ({
  name,
  heads,
  rows: rows.map((row) => row.map((cell) => (cell === undefined || cell === '' ? NONE : cell))),
});

function contacts({ model, by, on, options, origin }: Handover): CobieSheet {
  const { shop, shell } = model;
  const rows = [[by, by, on, 'Builder', shop.name, NONE, ...origin('shop', shop.name)]];
  const { customer } = shell;
  if (options.customer && customer)
    rows.push([customer.contact ?? NONE, by, on, 'Owner', customer.name ?? NONE, NONE, ...origin('customer', shell.id)]);
  return sheet('Contact', ['Email', ...STAMP, 'Category', 'Company', 'Phone', ...ORIGIN], rows);
}

function facility({ model, by, on, options }: Handover): CobieSheet {
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
  const last = shell.signoffs.at(-1)?.stage;
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
      last,
    ],
  ]);
}

/** A coach has one floor; the sheets that follow ask for its name. */
function floors({ model, by, on, origin }: Handover): CobieSheet {
  const { shell } = model;
  const height = shell.envelope ? mm(shell.envelope.heightMm) : NONE;
  return sheet(
    'Floor',
    ['Name', ...STAMP, 'Category', ...ORIGIN, 'Description', 'Elevation', 'Height'],
    [[shell.id, by, on, 'Floor', ...origin('shell', shell.id), 'the whole coach', '0', height]],
  );
}

function spaces({ model, by, on, origin }: Handover): CobieSheet {
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

function types({ things, by, on, origin }: Handover): CobieSheet {
  const names = [...new Map(things.map((thing) => [thing.type, thing])).values()];
  return sheet(
    'Type',
    ['Name', ...STAMP, 'Category', 'Description', 'AssetType', ...ORIGIN],
    names.map((thing) => [thing.type, by, on, 'Equipment', thing.type, 'Fixed', ...origin('type', thing.type)]),
  );
}

function components(data: Handover): CobieSheet {
  const { things, by, on, origin } = data;
  const heads = [
    'Name',
    ...STAMP,
    'TypeName',
    'Space',
    'Description',
    ...ORIGIN,
    'SerialNumber',
    'InstallationDate',
    'TagNumber',
  ];
  return sheet(
    'Component',
    heads,
    things.map((thing) => [
      thing.name,
      by,
      on,
      thing.type,
      data.spaceAt(thing.at),
      thing.description,
      ...origin('component', thing.name),
      thing.serial,
      thing.date,
      thing.tag,
    ]),
  );
}

function systems({ model, by, on, origin }: Handover): CobieSheet {
  const rows = model.shell.services.map((service) => [
    service.name,
    by,
    on,
    service.medium,
    service.nodes.map(({ id }) => id).join(','),
    ...origin('service', service.id),
    service.name,
  ]);
  return sheet('System', ['Name', ...STAMP, 'Category', 'ComponentNames', ...ORIGIN, 'Description'], rows);
}

function documents({ model, by, on, origin }: Handover): CobieSheet {
  const { shell } = model;
  const heads = [
    'Name',
    ...STAMP,
    'Category',
    'Stage',
    'SheetName',
    'RowName',
    'Directory',
    'File',
    ...ORIGIN,
    'Description',
    'Reference',
  ];
  const photos = shell.photos.map((photo) => [
    photo.id,
    by,
    photo.taken ?? on,
    'Photograph',
    photo.stage,
    'Facility',
    shell.id,
    'photos',
    photo.file,
    ...origin('photo', photo.id),
    photo.caption,
    photo.sha256,
  ]);
  const tests = shell.tests.map((test) => [
    test.id,
    test.by ?? by,
    test.date ?? on,
    'Test record',
    test.stage,
    'Facility',
    shell.id,
    NONE,
    NONE,
    ...origin('test', test.id),
    `${test.testKind} of ${test.of.join(', ')}`,
    test.instrument,
  ]);
  return sheet('Document', heads, [...photos, ...tests]);
}

function coordinates({ things, model, by, on, origin }: Handover): CobieSheet {
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
    ...at.map(mm),
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
    ...things.map((thing) => row(thing.name, 'point', 'Component', thing.name, thing.at)),
  ]);
}

const mm = (value: number): string => String(Number(value.toFixed(1)));
