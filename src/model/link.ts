import type { Finding } from '../finding.js';
import { didYouMean } from '../source/nearest.js';
import type { Path } from '../source/source.js';
import { linkServices } from './link-services.js';
import type { From, Links } from './links.js';
import type { Condition, RecordKind, Shell } from './shell.js';

/** What linking needs beside the records. */
export interface LinkOutside {
  /** Path in the store of every photo file. */
  readonly photos: ReadonlySet<string>;
  readonly say: (finding: Finding) => void;
}

/** Checks every reference of a shell's records. */
export function linkShell(shell: Shell, links: Links, outside: LinkOutside): void {
  linkVehicle(shell, links);
  linkStructure(shell, links);
  linkServices(shell, links);
  linkRecords(shell, links);
  for (const records of withShared(shell)) {
    for (const record of records) {
      links.toLibrary(record, 'stage', record.stage, 'stage');
      links.all(record, ['photo'], record.photos, 'photos');
    }
  }
  for (const photo of shell.photos) {
    const path = `shells/${shell.id}/photos/${photo.file}`;
    if (!outside.photos.has(path)) tellNoFile(photo, path, outside);
  }
}

const withShared = (shell: Shell) => [
  shell.zones,
  shell.members,
  shell.welds,
  shell.panels,
  shell.openings,
  shell.circuits,
  shell.nodes,
  shell.runs,
  shell.components,
  shell.tickets,
  shell.tests,
  shell.findings,
  shell.signoffs,
  shell.amendments,
  shell.photos,
  shell.declared,
  shell.clamps,
];

function linkVehicle(shell: Shell, links: Links): void {
  const { chassis } = shell;
  for (const axle of chassis.axles) {
    if (axle.share && axle.source) links.to({ id: axle.id, source: axle.source }, ['axle'], axle.share.with, 'share', 'with');
  }
  if (chassis.bare) {
    linkKeys(shell, links, ['axle'], chassis.bare.readings, ['chassis', 'bare', 'readings']);
    linkCondition(shell, links, chassis.bare.condition, ['chassis', 'bare', 'condition']);
  }
  for (const [i, { condition }] of shell.conditions.entries())
    linkCondition(shell, links, condition, ['conditions', i, 'condition']);
  for (const ticket of shell.tickets) {
    links.toLibrary(ticket, 'instrument', ticket.scale, 'scale');
    linkKeys(ticket, links, ['axle'], ticket.readings, ['readings']);
    if (ticket.condition) linkCondition(ticket, links, ticket.condition, ['condition']);
  }
}

function linkCondition(from: From, links: Links, condition: Condition, path: Path): void {
  condition.occupants.forEach((one, i) => void links.to(from, ['seat'], one.seat, ...path, 'occupants', i));
  links.all(from, ['component'], condition.missing, ...path, 'missing');
  linkKeys(from, links, ['bay'], condition.bays, [...path, 'bays']);
}

function linkKeys(
  from: From,
  links: Links,
  kinds: readonly RecordKind[],
  named: Readonly<Record<string, unknown>>,
  path: Path,
): void {
  for (const key of Object.keys(named)) links.to(from, kinds, key, ...path, key);
}

function linkStructure(shell: Shell, links: Links): void {
  for (const member of shell.members) {
    links.toLibrary(member, 'material', member.alloy, 'alloy');
    if (member.shape.kind === 'line') links.toLibrary(member, 'section', member.shape.section, 'section');
  }
  for (const weld of shell.welds) {
    const single = !Array.isArray((weld.typed.joins as readonly unknown[] | undefined)?.[0]);
    weld.joins.forEach((pair, i) => void links.all(weld, ['member', 'panel'], pair, 'joins', ...(single ? [] : [i])));
    links.toLibrary(weld, 'procedure', weld.procedure, 'procedure');
    links.toLibrary(weld, 'person', weld.welder, 'welder');
    weld.inspections.forEach((one, i) => void links.toLibrary(weld, 'person', one.by, 'inspections', i, 'by'));
  }
  for (const panel of shell.panels) {
    links.toLibrary(panel, 'material', panel.alloy, 'alloy');
    links.to(panel, ['panel'], panel.of, 'of');
    links.to(panel, ['test'], panel.bond?.coupon, 'bond', 'coupon');
  }
  for (const opening of shell.openings) {
    links.to(opening, ['member'], opening.header, 'header');
    links.all(opening, ['member'], opening.gussets, 'gussets');
  }
  for (const clamp of shell.clamps) clamp.joins.forEach((id, i) => void links.toAny(clamp, id, 'joins', i));
}

function linkRecords(shell: Shell, links: Links): void {
  for (const test of shell.tests) {
    test.of.forEach((id, i) => void links.toAny(test, id, 'of', i));
    links.toLibrary(test, 'instrument', test.instrument, 'instrument');
  }
  for (const record of [...shell.findings, ...shell.photos]) record.of.forEach((id, i) => void links.toAny(record, id, 'of', i));
  for (const signoff of shell.signoffs) links.toLibrary(signoff, 'person', signoff.by, 'by');
  for (const amendment of shell.amendments) amendment.changes.forEach((id, i) => void links.toAny(amendment, id, 'changes', i));
}

function tellNoFile(photo: From & { readonly file: string }, path: string, { photos, say }: LinkOutside): void {
  const folder = path.slice(0, path.length - photo.file.length);
  const names = [...photos].filter((one) => one.startsWith(folder)).map((one) => one.slice(folder.length));
  say({
    rule: 'format.missing-file',
    severity: 'warning',
    message: `There is no file ${photo.file} in ${folder}, expected the picture there${didYouMean(photo.file, names)}`,
    ids: [photo.id],
    place: photo.source.place('file'),
  });
}
