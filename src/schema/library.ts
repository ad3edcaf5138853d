import { z } from 'zod';
import type { Fields } from './fields.js';
import { record } from './record.js';

/** library/materials.yaml */
export const material = (f: Fields) =>
  record(f, {
    kind: f.text('aluminium, steel, stainless, plywood …'),
    density: f.quantity('density', 'Mass of a volume', 'above zero'),
    modulus: f.quantity('pressure', 'Modulus of elasticity', 'above zero').optional(),
    yield: f.quantity('pressure', 'Yield strength', 'above zero').optional(),
    tensile: f.quantity('pressure', 'Tensile strength', 'above zero').optional(),
    group: f.text('Weldability group of ISO/TR 15608, as 23').optional(),
  });

const CERTIFICATE_TYPES = ['2.1', '2.2', '3.1', '3.2'] as const;

/** library/certificates.yaml */
export const certificate = (f: Fields) =>
  record(f, {
    heats: f.texts('Heats or lots that it is of'),
    alloy: f.id('Alloy and temper that it certifies, as in library/materials.yaml'),
    type: f.oneOf(CERTIFICATE_TYPES, 'Type of document, EN 10204'),
    document: f.text('Its number, and where the paper is').optional(),
  });

/** library/conductors.yaml */
export const conductor = (f: Fields) =>
  record(f, {
    area: f.quantity('conductorArea', 'Conductor’s cross section', 'above zero').optional(),
    outside_diameter: f.quantity('length', 'Over the insulation or the pipe', 'above zero').optional(),
    inside_diameter: f.quantity('length', 'Bore of a pipe', 'above zero').optional(),
    mass: f.quantity('lineMass', 'Mass of a length', 'above zero').optional(),
    ampacity: f.quantity('current', 'Most current that its maker or a code allows', 'above zero').optional(),
    material: f.text('copper, PEX, aluminium …').optional(),
  });

/** library/procedures.yaml */
export const procedure = (f: Fields) =>
  record(f, {
    process: f.text('GMAW, GTAW or the ISO 4063 number'),
    types: f.texts('Weld types that it covers'),
    base: f.texts('Alloys that it covers'),
    thickness: f.range('length', 'Least and most thickness that it covers').optional(),
    filler: f.texts('Fillers that it allows'),
    positions: f.texts('Positions that it covers, as 1F'),
    edition: f.text('Code and edition that it was qualified to').optional(),
  });

const qualification = (f: Fields) =>
  z.strictObject({
    process: f.text('Welding process').optional(),
    method: f.text('Inspection method, as VT').optional(),
    positions: f.texts('Positions covered').optional(),
    thickness: f.range('length', 'Least and most thickness covered').optional(),
    groups: f.texts('Material groups covered, ISO/TR 15608').optional(),
    from: f.date('First day'),
    until: f.date('Last day').optional(),
  });

/** library/people.yaml */
export const person = (f: Fields) =>
  record(f, {
    name: f.text('Full name'),
    role: f.text('welder, inspector …'),
    qualified: z.array(qualification(f)).meta({ description: 'What they are qualified for, with dates' }).optional(),
    signs: f.ids('Stages that they may sign off, and close').optional(),
    git: f.texts('Addresses that they commit under').optional(),
    key: f.text('Their public key').optional(),
  });

/** library/instruments.yaml */
export const instrument = (f: Fields) =>
  record(f, {
    kind: f.text('axle scale, pressure gauge, multimeter …'),
    name: f.text('Maker’s name and number').optional(),
    resolution: f.anyQuantity('Smallest step that it shows').optional(),
    tolerance: f.anyQuantity('How far it may be off, as 0.2 % or 20 lb').optional(),
    calibrated: f.date('Last calibration').optional(),
    due: f.date('Next calibration').optional(),
  });

/** library/stages.yaml, in build order */
export const stage = (f: Fields) =>
  record(f, {
    name: f.text('As printed in the book'),
    hold_points: f.texts('What must be shown before the stage can be signed off').optional(),
  });

/** library/rules/*.yaml */
export const packedRule = (f: Fields) =>
  record(f, {
    id: f.id('Only where two entries of a pack are for the same rule').optional(),
    rule: f.text('Name of the rule, as weight.relabel'),
    limit: f.text('The figure, in words').optional(),
    citation: f.text('Where it is written').optional(),
    edition: f.text('Edition or year that was read').optional(),
    verified: f.date('When somebody last compared it with the text').optional(),
  });
