/**
 * What a pipe, hose or duct is made of: the words that may stand behind its size, by the table that has it. Compared without regard to
 * capitals. A word outside is kept as typed and decides nothing: its pipe has no bore and no mass, and is not proved to be no aluminium.
 */
const WORDS = {
  'hydraulic hose': ['hydraulic hose', '100R1', '100R2', '100R17'],
  hose: ['hose', 'rubber hose', 'heater hose', 'coolant hose', 'gas hose', 'drain hose', 'fuel hose', 'air hose'],
  duct: ['duct', 'flexible duct'],
  'aluminium duct': ['aluminium duct', 'aluminum duct'],
  pex: ['PEX', 'PEX tube', 'PEX pipe', 'PEX-A', 'PEX-B'],
  'refrigeration copper': ['refrigeration copper', 'ACR copper', 'copper ACR', 'OD copper', 'copper OD'],
  copper: ['copper', 'copper tube', 'copper pipe', 'copper type L'],
  cpvc: ['CPVC', 'CPVC pipe'],
  'pvc 80': ['PVC schedule 80'],
  pvc: ['PVC', 'PVC pipe', 'PVC schedule 40'],
  abs: ['ABS', 'ABS pipe'],
  nylon: ['nylon', 'nylon tube', 'nylon air brake tube', 'air brake tube'],
  emt: ['EMT', 'electrical metallic tubing'],
  polyethylene: ['polyethylene', 'polyethylene tube', 'PE', 'PE tube', 'HDPE', 'LLDPE', 'LLDPE tube'],
  'stainless tube': ['stainless tube', 'stainless steel tube', 'stainless tubing', 'stainless steel tubing'],
  'aluminium tube': ['aluminium tube', 'aluminum tube', 'aluminium tubing', 'aluminum tubing'],
  'steel tube': ['steel tube', 'steel tubing'],
  stainless: ['stainless', 'stainless steel', 'stainless pipe', 'stainless steel pipe'],
  aluminium: ['aluminium', 'aluminum', 'aluminium pipe', 'aluminum pipe'],
  'steel 80': ['steel schedule 80', 'steel pipe schedule 80', 'iron pipe schedule 80'],
  steel: [
    ...['steel', 'steel pipe', 'black steel', 'black steel pipe', 'galvanised steel', 'galvanized steel', 'black iron'],
    ...['iron', 'iron pipe', 'black iron pipe', 'steel schedule 40', 'steel pipe schedule 40'],
  ],
} as const;

export type PipeMaterial = keyof typeof WORDS;

/** Every word that a size may name its material by. */
export const PIPE_WORDS: readonly string[] = Object.values(WORDS).flat();

const MATERIALS: ReadonlyMap<string, PipeMaterial> = new Map(
  Object.entries(WORDS).flatMap(([material, words]) => words.map((word) => [word.toLowerCase(), material as PipeMaterial])),
);

/** The material by a listed word; undefined for any other. */
export const pipeMaterialOf = (typed: string): PipeMaterial | undefined =>
  MATERIALS.get(typed.trim().replace(/\s+/gu, ' ').toLowerCase());

const OF_ALUMINIUM: ReadonlySet<PipeMaterial> = new Set(['aluminium', 'aluminium tube', 'aluminium duct']);

export const isOfAluminium = (material: PipeMaterial): boolean => OF_ALUMINIUM.has(material);
