import type { Sentence } from './sentence.js';

/** What can hurt a hand behind a panel, and what to do first. */
export const HAZARDS = {
  'hazard.gas': { us: 'Gas', es: 'Gas' },
  'hazard.gas.act': { us: 'No flame. Shut the source first.', es: 'Sin llama. Cierre primero el suministro.' },
  'hazard.ac': { us: 'AC power', es: 'Corriente alterna' },
  'hazard.ac.volts': { us: '{volts} V AC', es: '{volts} V CA' },
  'hazard.ac.act': {
    us: 'Disconnect all sources, prove dead.',
    es: 'Desconecte todas las fuentes y compruebe que no hay tensión.',
  },
  'hazard.fuel': { us: 'Fuel', es: 'Combustible' },
  'hazard.fuel.act': { us: 'No flame. Shut the source first.', es: 'Sin llama. Cierre primero el suministro.' },
  'hazard.battery': { us: 'DC cable ahead of its fuse', es: 'Cable de CC antes de su fusible' },
  'hazard.battery.act': {
    us: 'No loose metal: a short burns. Take its source off first.',
    es: 'Sin metal suelto: un cortocircuito quema. Desconecte primero la fuente.',
  },
  'hazard.hydraulic': { us: 'Hydraulic pressure', es: 'Presión hidráulica' },
  'hazard.hydraulic.act': { us: 'Let the pressure off first.', es: 'Descargue primero la presión.' },
  'hazard.refrigerant': { us: 'Refrigerant', es: 'Refrigerante' },
  'hazard.refrigerant.act': { us: 'Under pressure: licensed work.', es: 'A presión: solo personal autorizado.' },
  'hazard.air': { us: 'Compressed air', es: 'Aire comprimido' },
  'hazard.air.act': { us: 'Let the pressure off first.', es: 'Descargue primero la presión.' },
  'hazard.hot': { us: 'Hot parts', es: 'Partes calientes' },
  'hazard.hot.act': { us: 'Switch off and let it cool.', es: 'Apague y deje enfriar.' },
} as const satisfies Readonly<Record<string, Sentence>>;
