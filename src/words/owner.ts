import type { Sentence } from './sentence.js';

/** Pages for whoever lives with the coach: care, and who to ask. */
export const OWNER = {
  'care.papers': {
    us: 'Follow the chassis maker’s and each appliance maker’s papers for their own parts.',
    es: 'Siga los documentos del fabricante del chasis y de cada aparato para sus propias piezas.',
  },
  'care.sealant': {
    us: 'Sealant round openings, roof panels and access panels: no gap, no crack.',
    es: 'Sellador alrededor de aberturas, paneles de techo y paneles de acceso: sin huecos ni grietas.',
  },
  'care.drains': {
    us: 'Drain holes of the belly: open, and nothing wet that should be dry.',
    es: 'Orificios de desagüe del piso inferior: abiertos, y nada mojado que deba estar seco.',
  },
  'care.lines': {
    us: 'Gas lines and wires where you can see them: no rubbing, no loose support.',
    es: 'Tuberías de gas y cables a la vista: sin roces ni soportes sueltos.',
  },
  'care.corrosion': {
    us: 'White powder or bubbles under paint where another metal touches aluminum: ask the shop.',
    uk: 'White powder or bubbles under paint where another metal touches aluminium: ask the shop.',
    es: 'Polvo blanco o burbujas bajo la pintura donde otro metal toca el aluminio: pregunte al taller.',
  },
  'care.tires': {
    us: 'Tire pressure, cold, at the figure in the table of ratings:',
    uk: 'Tyre pressure, cold, at the figure in the table of ratings:',
    es: 'Presión de los neumáticos, en frío, según la tabla de capacidades:',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
