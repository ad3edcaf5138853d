import type { Sentence } from './sentence.js';

/** The page that is read in seconds. */
export const EMERGENCY = {
  'emergency.title': { us: 'In an emergency', es: 'En caso de emergencia' },
  'emergency.first': { us: 'First', es: 'Primero' },
  'emergency.out': {
    us: 'Everyone out and away; call the emergency services. Shut and switch off only if that is safe. Do not cut where the plan shows gas, mains or batteries.',
    es: 'Todos fuera y lejos; llame a los servicios de emergencia. Cierre y apague solo si es seguro. No corte donde el plano muestra gas, corriente de red o baterías.',
  },
  'emergency.none': {
    us: 'No gas, fuel, mains or batteries are recorded.',
    es: 'No hay gas, combustible, corriente de red ni baterías registrados.',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
