import type { Model } from '../../model/shell.js';
import { type CobieOptions, type CobieSheet, Handover } from './handover.js';
import { coordinates, facility, floors, spaces } from './places.js';
import { cobieContacts, components, documents, systems, types } from './things.js';

/**
 * The record as sheets in the COBie manner, so that a fleet’s system can read it: the coach is the facility, its cavities and bays are
 * spaces, what stands in them components, its services systems. Lengths in millimetres, in the shell’s datum.
 * Column names: COBie 2.4 (NBIMS-US V3), unverified citation.
 */
export function cobieSheets(model: Model, options: CobieOptions): readonly CobieSheet[] {
  const makers = [cobieContacts, facility, floors, spaces, types, components, systems, documents, coordinates];
  const data = new Handover(model, options);
  return makers.map((make) => make(data));
}
