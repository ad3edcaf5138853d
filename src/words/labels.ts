import type { Sentence } from './sentence.js';

/** What stands on the label of a panel, beside its hazards. */
export const LABELS = {
  'label.also': { us: 'Also: {hazards}', es: 'También: {hazards}' },
  'label.name': { us: 'access panel, {side}', es: 'panel de acceso, {side}' },
  'label.none': { us: 'Nothing recorded behind it: look first.', es: 'No hay nada registrado detrás: mire primero.' },
  'label.foot': { us: '{side} · {shop} · shell {shell}', es: '{side} · {shop} · carrocería {shell}' },
  'placard.title': {
    us: 'For the cab: how high, long and wide shell {shell} is',
    es: 'Para la cabina: altura, longitud y anchura de la carrocería {shell}',
  },
  'placard.foot': {
    us: 'Shell {shell} · revision {revision} · fingerprint {fingerprint}',
    es: 'Carrocería {shell} · revisión {revision} · huella {fingerprint}',
  },
  'placard.fit': {
    us: 'Over everything on record, rounded up; tires at the pressure of the record, coach unladen. Put it where the driver sees it.',
    uk: 'Over everything on record, rounded up; tyres at the pressure of the record, coach unladen. Put it where the driver sees it.',
    es: 'Sobre todo lo registrado, redondeado hacia arriba; neumáticos a la presión registrada, vehículo sin carga. Colóquelo a la vista del conductor.',
  },
  'placard.measure': {
    us: 'Measure the coach as it stands before you trust it under a bridge:',
    es: 'Mida el vehículo tal como está antes de confiar en esto bajo un puente:',
  },
  'placard.besides': {
    us: 'cab, mirrors and antennas count only where they are recorded, and a load or a soft tire changes the height.',
    uk: 'cab, mirrors and antennas count only where they are recorded, and a load or a soft tyre changes the height.',
    es: 'cabina, espejos y antenas cuentan solo si están registrados, y la carga o un neumático bajo cambian la altura.',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
