/** What a record is: every kind, its type, and what is derived from it. */
export type { Amendment } from './amendment.js';
export type { Axle, Tyres } from './axle.js';
export type { Bay } from './bay.js';
export type { Certificate } from './certificate.js';
export type { Chassis, ChassisFrame } from './chassis.js';
export type { Circuit, Protection } from './circuit.js';
export type { Clamp, ClampCheck } from './clamp.js';
export { type Component, MASS_BASES, type MassBasis } from './component.js';
export type { AxleReading, Condition, ConditionRead, Occupant } from './condition.js';
export type { ConductorType } from './conductor.js';
export type { Declared } from './declared.js';
export type { PipeSize, Quantity } from './fields.js';
export type { Instrument } from './instrument.js';
export type { Library } from './library.js';
export type { LoadingCondition } from './loading-condition.js';
export type { Material } from './material.js';
export {
  type LineMember,
  MEMBER_CLASSES,
  type Member,
  type MemberBend,
  type MemberClass,
  type MemberRole,
  type PlateMember,
} from './member.js';
export { type HeadKind, type KindName, type LibraryKind, type ListedKind, MEDIA, type Medium, type RecordKind } from './names.js';
export { NODE_KINDS, NODE_ROLES, type NodeKind, type NodeRole, type ServiceNode, type Slot } from './node.js';
export type { Nonconformance } from './nonconformance.js';
export type { Opening } from './opening.js';
export type { PackedRule } from './packed-rule.js';
export { type Bond, FACINGS, type Facing, type Fixing, OUTWARD, PANEL_KINDS, type Panel, type PanelKind } from './panel.js';
export type { Person, Qualification } from './person.js';
export type { Photo, SeenPoint } from './photo.js';
export type { Procedure } from './procedure.js';
export type { RecordBase } from './record-base.js';
export type { Run } from './run.js';
export type { Seat } from './seat.js';
export type { Section, SectionShape } from './section.js';
export type { Statement } from './shared.js';
export type { Entry, Service, Shell, ShellLists, Taped } from './shell.js';
export type { CareItem, PaintCoat, SparePart, Warranty } from './shell-head.js';
export { HOT_MM, type Inspections, type KeepApart, type Limits, type Shop } from './shop.js';
export type { Signoff } from './signoff.js';
export type { Stage } from './stage.js';
export type { FilledBox, Tank } from './tank.js';
export { TANK_USES, type TankUse } from './tank-contents.js';
export type { Test } from './test.js';
export type { Ticket } from './ticket.js';
export type { Source } from './types.js';
export { type Inspection, WELD_TYPES, type Weld, type WeldType } from './weld.js';
export type { Conductor } from './wire.js';
export type { Zone } from './zone.js';
