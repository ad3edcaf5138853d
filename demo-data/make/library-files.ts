import { CERTIFICATES, INSTRUMENTS, MATERIALS, PEOPLE, PROCEDURES, RULES, SHOP, STAGES, sectionsYaml } from './library.js';

export const libraryFiles = (): ReadonlyMap<string, string> =>
  new Map([
    ['shop.yaml', SHOP],
    ['library/materials.yaml', MATERIALS],
    ['library/certificates.yaml', CERTIFICATES],
    ['library/sections.yaml', sectionsYaml()],
    ['library/procedures.yaml', PROCEDURES],
    ['library/people.yaml', PEOPLE],
    ['library/instruments.yaml', INSTRUMENTS],
    ['library/stages.yaml', STAGES],
    ['library/rules/us-federal.yaml', RULES],
  ]);
