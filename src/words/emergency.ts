import type { Sentence } from './sentence.js';

/** The page that is read in seconds. */
export const EMERGENCY = {
  'emergency.title': { us: 'In an emergency', es: 'En caso de emergencia' },
  'emergency.first': { us: 'First', es: 'Primero' },
  'emergency.out': {
    us: 'Everyone out and away; call the emergency services. Shut and switch off only if that is safe. Do not cut where the plan shows gas, AC power or batteries.',
    uk: 'Everyone out and away; call the emergency services. Shut and switch off only if that is safe. Do not cut where the plan shows gas, mains or batteries.',
    es: 'Todos fuera y lejos; llame a emergencias. Cierre y apague solo si es seguro. No corte donde el plano muestra gas, corriente alterna o baterías.',
  },
  'emergency.off': { us: '{media} (not on the plan)', es: '{media} (no en el plano)' },
  'emergency.rest.list': { us: 'in the list of shut-offs', es: 'en la lista de llaves de corte' },
  'emergency.rest.chapter': { us: 'in the chapter of its service', es: 'en el capítulo de su instalación' },
  'emergency.more': { us: 'Also, {where}:', es: 'Además, {where}:' },
  'emergency.panel': { us: 'panel', es: 'panel' },
  'place.by': { us: 'by {door} {id}', es: 'junto a la {door} {id}' },
  'rough.none': { us: 'place not recorded', es: 'lugar no registrado' },
  'rough.front': { us: 'front', es: 'delante' },
  'rough.middle': { us: 'middle', es: 'centro' },
  'rough.rear': { us: 'rear', es: 'detrás' },
  'rough.center': { us: 'near the center line', uk: 'near the centre line', es: 'en el eje' },
  'rough.left': { us: 'left', es: 'izquierda' },
  'rough.right': { us: 'right', es: 'derecha' },
  'rough.under': { us: 'under the floor', es: 'bajo el piso' },
  'rough.low': { us: 'low', es: 'abajo' },
  'rough.hand': { us: 'at hand height', es: 'a mano' },
  'rough.high': { us: 'high', es: 'arriba' },
  'rough.roof': { us: 'on the roof', es: 'en el techo' },
  'emergency.none': {
    us: 'No gas, fuel, AC power or batteries are recorded.',
    uk: 'No gas, fuel, mains or batteries are recorded.',
    es: 'No hay gas, combustible, corriente alterna ni baterías registrados.',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
