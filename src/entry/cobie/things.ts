import { type CobieSheet, emailIn, type Handover, NONE, ORIGIN, STAMP, sheet } from './handover.js';

export function cobieContacts({ model, by, on, options, origin }: Handover): CobieSheet {
  const { shop, shell } = model;
  const rows = [[by, by, on, 'Builder', shop.name, NONE, ...origin('shop', shop.name)]];
  const { customer } = shell;
  if (options.customer && customer)
    rows.push([emailIn(customer.contact) ?? NONE, by, on, 'Owner', customer.name ?? NONE, NONE, ...origin('customer', shell.id)]);
  return sheet('Contact', ['Email', ...STAMP, 'Category', 'Company', 'Phone', ...ORIGIN], rows);
}

export function types({ things, by, on, origin }: Handover): CobieSheet {
  const names = [...new Map(things.map((thing) => [thing.type, thing])).values()];
  return sheet(
    'Type',
    ['Name', ...STAMP, 'Category', 'Description', 'AssetType', ...ORIGIN],
    names.map((thing) => [thing.type, by, on, 'Equipment', thing.type, 'Fixed', ...origin('type', thing.type)]),
  );
}

export function components(data: Handover): CobieSheet {
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

export function systems({ model, by, on, origin }: Handover): CobieSheet {
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

export function documents({ model, by, on, origin }: Handover): CobieSheet {
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
