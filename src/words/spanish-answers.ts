/** Spanish of what a whole coach is asked for: fuses, tests, lifting, repairs. Signs as in the other patterns. */
export const ANSWER_PATTERNS: readonly (readonly [string, string])[] = [
  ['accepted %', 'aceptado %1'],
  ['% is still live', '%1 sigue con tensión'],
  [
    'Lift: % points together are declared for % and lift %, the shell. No point alone carries that.',
    'Izado: %1 puntos juntos están declarados para %2 e izan %3, la carrocería. Ningún punto la soporta solo.',
  ],
  [
    'Lift: % points together are declared for % and lift %, the whole vehicle. No point alone carries that.',
    'Izado: %1 puntos juntos están declarados para %2 e izan %3, el vehículo completo. Ningún punto lo soporta solo.',
  ],
  [
    'Lift: % points together are declared for % and lift %, of what is not recorded. No point alone carries that.',
    'Izado: %1 puntos juntos están declarados para %2 e izan %3; no está registrado qué. Ningún punto lo soporta solo.',
  ],
  ['weld repaired % times', 'soldadura reparada %1 veces'],
  ['pressure drop of %', 'caída de presión de %1'],
  ['drop of %', 'caída de presión de %1'],
  ['pressure hold of %', 'mantenimiento de presión de %1'],
  ['continuity of %', 'continuidad de %1'],
  ['insulation of %', 'aislamiento de %1'],
  ['function of %', 'funcionamiento de %1'],
  ['gas appliances of %', 'aparatos de gas de %1'],
  ['torque of %', 'par de apriete de %1'],
  ['coupon pull of %', 'tracción de probeta de %1'],
  ['rain of %', 'lluvia sobre %1'],
  ['leak of %', 'estanqueidad de %1'],
  ['% and % more', '%1 y %2 más'],
  ['% psi to % psi', 'de %1 psi a %2 psi'],
  ['%,% psi to %,% psi', 'de %1,%2 psi a %3,%4 psi'],
  ['% kPa to % kPa', 'de %1 kPa a %2 kPa'],
  ['% in to % in', 'de %1 in a %2 in'],
  ['spare breaker space: row %, number %', 'espacio libre de disyuntor: fila %1, número %2'],
  ['spare breaker space: number %', 'espacio libre de disyuntor: número %1'],
  ['% use as is', '%1 usar como está'],
  ['% rework', '%1 retrabajo'],
  ['% repair', '%1 reparación'],
  ['% scrap', '%1 desechado'],
  ['% joints are exposed: a leak shows at the joint itself.', '%1 uniones están a la vista: la fuga se ve en la propia unión.'],
  [
    '% joints have no recorded place, so it is not known where they leak.',
    'De %1 uniones no está registrado el lugar: no se sabe por dónde fugan.',
  ],
  ['Without any on record: %.', 'Sin ninguno registrado: %1.'],
  ['% tank: do not cut here', 'depósito de ~1: no corte aquí'],
  [
    'no node is recorded `of: %`: record its connections, in every service; where it has none, look and say so in its `note`',
    'ninguna conexión está registrada como de %1: regístrelas en cada servicio; si no tiene, mírelo y anótelo',
  ],
];

export const ANSWER_TERMS: Readonly<Record<string, string>> = {
  'changed after delivery': 'cambiado después de la entrega',
  'welded again': 'soldado de nuevo',
  'no later accept recorded: not proved': 'sin aceptación posterior registrada: no probado',
  'support it before the last fastener': 'sujételo antes de soltar el último tornillo',
  bonded: 'pegado',
  rivets: 'remaches',
  screws: 'tornillos',
  welded: 'soldado',
  'specified, at least': 'especificado, al menos',
  tolerance: 'tolerancia',
  'weld repaired once': 'soldadura reparada una vez',
  'all of this makes it dead': 'todo esto lo deja sin tensión',
  'not proved dead by all of this': 'con todo esto no se prueba que quede sin tensión',
  'with only this off': 'con solo esto apagado',
  'with this off': 'con esto apagado',
  'no recorded source': 'ninguna fuente registrada',
  abandoned: 'abandonado',
  spare: 'de reserva',
  'none declared': 'nada declarado',
  'nobody named': 'no consta quién',
  'Battery and solar terminals stay live on their own side. Measure at the place of work.':
    'Los bornes de la batería y de los paneles solares siguen con tensión en su lado. Mida donde va a trabajar.',
  'After all this no recorded low place holds water.': 'Después de todo esto ningún punto bajo registrado retiene agua.',
  'From the records only: traps, toilets and appliances also hold water; see their makers’ papers.':
    'Solo según los registros: sifones, inodoros y aparatos retienen su propia agua; vea los papeles de sus fabricantes.',
  'Water runs along the lowest wire or pipe: look upstream of the wet place too.':
    'El agua corre por el cable o tubo más bajo: mire también aguas arriba del lugar mojado.',
  '“Filled” counts what lies side by side at the fullest place. Unrecorded things are in there too.':
    'Lo ocupado cuenta lo que va lado a lado en el lugar más lleno. Lo que nadie anotó también está ahí.',
  'Leave a ground connected while anything it protects is live.':
    'Una tierra sigue conectada mientras tenga tensión algo de lo que protege.',
  'No ground bond is recorded (`bonding: yes` on a circuit): not verified.':
    'No hay ninguna unión a tierra registrada: sin verificar.',
  'For what is not listed see its maker’s papers, the chassis maker’s first.':
    'Lo que no está en la lista está en los papeles de su fabricante, primero los del fabricante del chasis.',
  'Repeat a test at the values it was passed at.': 'Repita una prueba con los valores con que se aprobó.',
  'No test is recorded.': 'No hay ninguna prueba registrada.',
  'No repair is recorded.': 'No hay ninguna reparación registrada.',
  'No change after close-out is recorded.': 'No hay ningún cambio registrado después de la entrega.',
  'No spare or abandoned wire or pipe is recorded.': 'No hay registrado ningún cable ni tubo de reserva ni abandonado.',
  'No valve or drain is recorded.': 'No hay registrada ninguna válvula ni ningún desagüe.',
  'lift: not declared: lift nowhere; a licensed engineer declares a point first':
    'izar: nada declarado: no ice en ningún punto; antes lo declara un ingeniero con licencia',
  'jack: not declared: jack only at the chassis maker’s places, by its manual':
    'gato: nada declarado: solo en los puntos del fabricante del chasis, según su manual',
  'tow: not declared: tow only by the chassis maker’s places and manual':
    'remolque: nada declarado: solo por los puntos del fabricante del chasis y según su manual',
  'tie down: not declared: tie down only at the chassis maker’s places, by its manual':
    'amarre: nada declarado: solo en los puntos del fabricante del chasis, según su manual',
  'asked to carry': 'carga que recibe',
  'unbolt first': 'soltar primero',
  'not proved: what to unbolt first is not recorded': 'no probado: no está registrado qué se suelta primero',
  'Use stands and slings at declared points only, on firm level ground.':
    'Soportes y eslingas solo en puntos declarados, sobre piso firme y nivelado.',
  'Not declared: hang nothing there until a licensed engineer declares a rating.':
    'Nada declarado: no cuelgue nada ahí hasta que un ingeniero con licencia declare una carga.',
  'Not declared: keep off the roof, and mount nothing there.': 'Nada declarado: no suba al techo ni monte nada en él.',
  'no source is recorded on its line: record where it is fed from, or measure':
    'no hay ninguna fuente registrada en su línea: registre de dónde se alimenta, o mida',
  'tank: what it is for is not recorded (`use`); take it as fuel':
    'depósito: no está registrado para qué es; trátelo como combustible',
};
