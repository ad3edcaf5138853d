import type { Sentence } from './sentence.js';

/** What a named person declared that a point holds, and what it is asked to carry. */
export const DECLARED = {
  'declared.to': { us: 'To', es: 'Para' },
  'declared.at': { us: 'At', es: 'En' },
  'declared.rating': { us: 'Rating', es: 'Capacidad' },
  'declared.asked': { us: 'Asked to carry', es: 'Lo que llevaría' },
  'declared.by': { us: 'Declared by', es: 'Declarado por' },
  'declared.lift': { us: 'Lift the shell', es: 'Izar la carrocería' },
  'declared.jack': { us: 'Jack', es: 'Levantar con gato' },
  'declared.tow': { us: 'Tow, recover', es: 'Remolcar, rescatar' },
  'declared.tie': { us: 'Tie down', es: 'Amarrar' },
  'declared.hang': { us: 'Hang or mount on wall, roof or floor', es: 'Colgar o montar en pared, techo o piso' },
  'declared.roof': { us: 'Walk on the roof, or load it', es: 'Caminar por el techo, o cargarlo' },
  'declared.none': { us: 'not declared: do not do it here', es: 'no declarado: no lo haga aquí' },
  'declared.lift.none': {
    us: 'not declared: do not do it here; a licensed engineer declares it first',
    es: 'no declarado: no lo haga aquí; antes lo declara un ingeniero autorizado',
  },
  'declared.jack.none': {
    us: 'not declared: do not do it here: jack only at the chassis maker’s places, by its manual',
    es: 'no declarado: no lo haga aquí: ponga el gato solo donde dice el manual del fabricante del chasis',
  },
  'declared.tow.none': {
    us: 'not declared: do not do it here: only at the chassis maker’s places, by its manual',
    es: 'no declarado: no lo haga aquí: solo donde dice el manual del fabricante del chasis',
  },
  'declared.roof.none': { us: 'not declared: keep off the roof', es: 'no declarado: no suba al techo' },
  'declared.rating.none': { us: 'no rating declared', es: 'sin capacidad declarada' },
  'declared.each': { us: '{load} each', es: '{load} cada uno' },
  'declared.unknown': {
    us: 'not known: nothing recorded hangs on it',
    es: 'no se sabe: no hay nada registrado que cuelgue de él',
  },
  'declared.most': { us: 'up to {load} each', es: 'hasta {load} cada uno' },
  'declared.recorded': { us: '{load} as recorded', es: '{load} según el registro' },
  'declared.first': { us: 'First unbolt or take off', es: 'Antes, desatornille o quite' },
  'declared.first.none': {
    us: 'not recorded: not proved, ask who declared it',
    es: 'no registrado: no probado, pregunte a quien lo declaró',
  },
  'declared.rated': { us: 'Rated', es: 'Capacidad declarada' },
  'declared.together': { us: '{count} points together {load}', es: '{count} puntos juntos {load}' },
  'declared.weight': { us: 'Weight on them', es: 'Peso sobre ellos' },
  'declared.weight.none': { us: 'not known: no weight is recorded', es: 'no se sabe: no hay ningún peso registrado' },
  'declared.weight.shell': { us: '{whole}, the shell off its chassis', es: '{whole}, la carrocería sin el chasis' },
  'declared.weight.vehicle': { us: '{whole}, the whole vehicle', es: '{whole}, todo el vehículo' },
  'declared.weight.point': { us: 'up to {load} at one point', es: 'hasta {load} en un punto' },
} as const satisfies Readonly<Record<string, Sentence>>;
