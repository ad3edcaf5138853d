/** Kinds of the library. */
export type LibraryKind =
  | 'material'
  | 'certificate'
  | 'section'
  | 'conductor'
  | 'procedure'
  | 'person'
  | 'instrument'
  | 'stage'
  | 'rule';

/** Kinds whose records stand in a list of a shell or of one of its services. */
export type ListedKind =
  | 'zone'
  | 'member'
  | 'weld'
  | 'panel'
  | 'opening'
  | 'circuit'
  | 'node'
  | 'run'
  | 'component'
  | 'ticket'
  | 'test'
  | 'finding'
  | 'signoff'
  | 'amendment'
  | 'photo'
  | 'declared'
  | 'clamp';

/** Kinds whose records are part of shell.yaml and have an id. */
export type HeadKind = 'axle' | 'tank' | 'seat' | 'bay';

/** What is the whole of a file, or a part of its head without an id. */
export type PartKind = 'shop' | 'shell' | 'chassis' | 'datum' | 'bare' | 'loading condition' | 'service';

export type KindName = LibraryKind | ListedKind | HeadKind | PartKind;

/** Kinds of record that have an id of a shell. */
export type RecordKind = 'shell' | HeadKind | ListedKind;

export const MEDIA = ['dc', 'ac', 'data', 'water', 'drain', 'gas', 'air', 'hydraulic', 'duct', 'refrigerant', 'fuel'] as const;
/** What runs in a service. */
export type Medium = (typeof MEDIA)[number];
