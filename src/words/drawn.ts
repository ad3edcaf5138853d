import type { Sentence } from './sentence.js';

/** Words on drawings, and what those who cannot see them are read. */
export const DRAWING = {
  'drawn.front': { us: 'FRONT', es: 'DELANTE' },
  'drawn.scale.none': { us: 'not to scale', es: 'sin escala' },
  'drawn.planned': {
    us: 'Wide dashes: planned, not in the coach yet.',
    es: 'Trazos largos: previsto, todavía no está en el vehículo.',
  },
  'drawn.left.one': { us: '1 more label {where}.', es: '1 rótulo más {where}.' },
  'drawn.left': { us: '{count} more labels {where}.', es: '{count} rótulos más {where}.' },
  'drawn.rest.list': { us: 'in the list', es: 'en la lista' },
  'drawn.rest.components': { us: 'in the component list', es: 'en la lista de equipo' },
  'drawn.rest.panels': { us: 'in the panel schedule', es: 'en la tabla de paneles' },
  'drawn.and': { us: '{one} and {other}', es: '{one} y {other}' },
  'drawn.axle': { us: '{id} axle', es: 'eje {id}' },
  'drawn.seat': { us: 'seat {id}', es: 'asiento {id}' },
  'drawn.cover': { us: 'Shell {shell}, left side', es: 'Carrocería {shell}, lado izquierdo' },
  'drawn.cover.alt': {
    us: 'Left side of shell {shell}, {title}, as built.',
    es: 'Lado izquierdo de la carrocería {shell}, {title}, tal como se construyó.',
  },
  'drawn.ga.alt': { us: 'Shell {shell}: {what}.', es: 'Carrocería {shell}: {what}.' },
  'drawn.ga.plan': { us: 'Plan at floor', es: 'Planta a nivel del piso' },
  'drawn.ga.plan.where': {
    us: 'plan seen from above, cut at half height, front to the left and the right (curb) side up',
    uk: 'plan seen from above, cut at half height, front to the left and the right (kerb) side up',
    es: 'planta vista desde arriba, cortada a media altura, con el frente a la izquierda y el lado derecho (acera) arriba',
  },
  'drawn.ga.up': { us: 'Roof plan', es: 'Planta del techo' },
  'drawn.ga.left': { us: 'Left side', es: 'Lado izquierdo' },
  'drawn.ga.right': { us: 'Right side', es: 'Lado derecho' },
  'drawn.ga.front': { us: 'Front', es: 'Frente' },
  'drawn.ga.rear': { us: 'Rear', es: 'Parte trasera' },
  'drawn.ga.down': { us: 'Underside', es: 'Parte inferior' },
  'drawn.ga.where.up': { us: 'seen from above', es: 'visto desde arriba' },
  'drawn.ga.where.down': {
    us: 'seen from below, the left side up',
    es: 'visto desde abajo, con el lado izquierdo arriba',
  },
  'drawn.ga.where.left': { us: 'left seen from outside', es: 'izquierda vista desde fuera' },
  'drawn.ga.where.right': { us: 'right seen from outside', es: 'derecha vista desde fuera' },
  'drawn.ga.where.front': { us: 'front seen from outside', es: 'frente visto desde fuera' },
  'drawn.ga.where.rear': { us: 'rear seen from outside', es: 'parte trasera vista desde fuera' },
  'drawn.ga.count': {
    us: '{where}, with {count} panels and the main dimensions',
    es: '{where}, con {count} paneles y las medidas principales',
  },
  'drawn.ga.lining': {
    us: '{where}, with {count} sheets and access panels',
    es: '{where}, con {count} chapas y paneles de acceso',
  },
  'drawn.ga.skin': { us: 'Dashed: members behind the skin.', es: 'A trazos: perfiles detrás de la chapa.' },
  'drawn.ga.bare': {
    us: 'No panel of this face is on record: members shown.',
    es: 'No hay paneles registrados en esta cara: se muestran los perfiles.',
  },
  'drawn.ga.before': { us: 'Dashed: what stands before it.', es: 'A trazos: lo que está delante.' },
  'drawn.kerb.up': { us: 'Right (curb) side up.', uk: 'Right (kerb) side up.', es: 'Lado derecho (acera) arriba.' },
  'drawn.kerb.plan': {
    us: 'Above: plan, right (curb) side up. Below: from the left.',
    uk: 'Above: plan, right (kerb) side up. Below: from the left.',
    es: 'Arriba: planta, lado derecho (acera) arriba. Abajo: desde la izquierda.',
  },
  'drawn.kerb.front': {
    us: 'Seen from the front: the right (curb) side is at the left.',
    uk: 'Seen from the front: the right (kerb) side is at the left.',
    es: 'Visto desde delante: el lado derecho (acera) está a la izquierda.',
  },
  'drawn.chassis.tyres': {
    us: 'Tires: position only, not to size.',
    uk: 'Tyres: position only, not to size.',
    es: 'Neumáticos: solo la posición, no el tamaño.',
  },
  'drawn.chassis.all': {
    us: 'Tires and chassis rails: position only, not to size.',
    uk: 'Tyres and chassis rails: position only, not to size.',
    es: 'Neumáticos y largueros del chasis: solo la posición, no el tamaño.',
  },
  'drawn.seen.below': { us: 'Seen from below: left side up.', es: 'Visto desde abajo: lado izquierdo arriba.' },
  'drawn.seen.ceiling': {
    us: 'Ceiling as in a mirror on the floor: it lies as the floor plan does, right (curb) side up.',
    uk: 'Ceiling as in a mirror on the floor: it lies as the floor plan does, right (kerb) side up.',
    es: 'Techo interior como en un espejo en el piso: en la misma posición que la planta, lado derecho (acera) arriba.',
  },
  'drawn.seen.above': {
    us: 'Seen from above: right (curb) side up.',
    uk: 'Seen from above: right (kerb) side up.',
    es: 'Visto desde arriba: lado derecho (acera) arriba.',
  },
  'drawn.seen.inside': { us: 'Seen from inside.', es: 'Visto desde dentro.' },
  'drawn.seen.outside': { us: 'Seen from outside.', es: 'Visto desde fuera.' },
  'drawn.panels': { us: 'Panels: {where}', es: 'Paneles: {where}' },
  'drawn.panels.alt': {
    us: 'Panels of the {where}, {seen}: {count}, of which {access} access panels (heavy outline), each with its ID.',
    es: 'Paneles, {where}, {seen}: {count}, de los cuales {access} de acceso (contorno grueso), cada uno con su ID.',
  },
  'drawn.panels.inside': { us: 'seen from inside', es: 'vistos desde dentro' },
  'drawn.panels.outside': { us: 'seen from outside', es: 'vistos desde fuera' },
  'drawn.panels.heavy': { us: 'Heavy outline: access panel.', es: 'Contorno grueso: panel de acceso.' },
  'drawn.drill': { us: 'Longest safe screw: {where}', es: 'Tornillo más largo sin peligro: {where}' },
  'drawn.drill.alt.us': {
    us: '{where}, divided into areas of about 6 in, each with the longest screw that meets nothing recorded there.',
    es: '{where}, dividido en zonas de unas 6 in, cada una con el tornillo más largo que no toca nada registrado ahí.',
  },
  'drawn.drill.alt.metric': {
    us: '{where}, divided into areas of about 150 mm, each with the longest screw that meets nothing recorded there.',
    es: '{where}, dividido en zonas de unos 150 mm, cada una con el tornillo más largo que no toca nada registrado ahí.',
  },
  'drawn.drill.metric': {
    us: 'Figures in the areas: the longest safe screw here, mm under its head. X or dark: no screw.',
    es: 'Cifras en las zonas: el tornillo más largo sin peligro aquí, mm bajo la cabeza. X u oscuro: ningún tornillo.',
  },
  'drawn.drill.edges.metric': {
    us: 'Figures along the edges: mm from the front end and from the bottom edge.',
    es: 'Cifras en los bordes: mm desde el extremo delantero y desde el borde inferior.',
  },
  'drawn.drill.edges.left.metric': {
    us: 'Figures along the edges: mm from the left end and from the bottom edge.',
    es: 'Cifras en los bordes: mm desde el extremo izquierdo y desde el borde inferior.',
  },
  'drawn.drill.us': {
    us: 'Figures in the areas: the longest safe screw here, inches under its head. X or dark: no screw.',
    es: 'Cifras en las zonas: el tornillo más largo sin peligro aquí, pulgadas bajo la cabeza. X u oscuro: ningún tornillo.',
  },
  'drawn.drill.edges.us': {
    us: 'Figures along the edges: inches from the front end and from the bottom edge.',
    es: 'Cifras en los bordes: pulgadas desde el extremo delantero y desde el borde inferior.',
  },
  'drawn.drill.edges.left.us': {
    us: 'Figures along the edges: inches from the left end and from the bottom edge.',
    es: 'Cifras en los bordes: pulgadas desde el extremo izquierdo y desde el borde inferior.',
  },
  'drawn.face': { us: '{id}: {name}, as you stand before it', es: '{id}: {name}, tal como lo ve de frente' },
  'drawn.face.plain': { us: '{id}, as you stand before it', es: '{id}, tal como lo ve de frente' },
  'drawn.face.alt': {
    us: 'Face of {id} with {count} positions in {rows} rows: {list}.',
    es: 'Frente de {id} con {count} posiciones en {rows} filas: {list}.',
  },
  'drawn.face.spare': { us: 'spare', es: 'libre' },
  'drawn.load': {
    us: 'What each bay may take, and what each axle carries',
    es: 'Lo que admite cada compartimento y lo que lleva cada eje',
  },
  'drawn.load.alt': {
    us: 'Left side of shell {shell} with {bays} bays and what each may take with all of them loaded; beneath, a gauge for each of {axles} axles.',
    es: 'Lado izquierdo de la carrocería {shell} con {bays} compartimentos y lo que admite cada uno con todos cargados; debajo, un indicador por cada uno de {axles} ejes.',
  },
  'drawn.load.boxes': {
    us: 'Full boxes: bays on the left or inside. Dashed boxes: bays on the right. Figures: with every bay loaded together.',
    es: 'Cajas de línea llena: compartimentos a la izquierda o dentro. A trazos: a la derecha. Cifras: con todos cargados a la vez.',
  },
  'drawn.load.gauges': {
    us: 'Gauges: dark, ready to travel (full fuel, no water, nobody aboard); pale, the heaviest that the bays, tanks and seats can make it; heavy line, its limit.',
    es: 'Indicadores: oscuro, listo para viajar (combustible lleno, sin agua, sin nadie); claro, lo más pesado que lo ponen compartimentos, depósitos y asientos; línea gruesa, su límite.',
  },
  'drawn.load.bay': { us: '{id}: not verified', es: '{id}: no verificado' },
  'drawn.load.none': { us: 'not verified: not weighed, or no limit', es: 'no verificado: sin pesar, o sin límite' },
  'drawn.load.of': { us: '{load} of {limit}', es: '{load} de {limit}' },
  'drawn.emergency': { us: 'Where it is', es: 'Dónde está' },
  'drawn.emergency.alt': {
    us: 'Plan and left side with {count} numbered things to shut, to switch off or to keep away from: {list}; and the way of gas and AC lines.',
    uk: 'Plan and left side with {count} numbered things to shut, to switch off or to keep away from: {list}; and the way of gas and mains lines.',
    es: 'Planta y lado izquierdo con {count} cosas numeradas que cerrar, apagar o evitar: {list}; y el recorrido de las líneas de gas y de corriente alterna.',
  },
  'drawn.emergency.note': {
    us: 'Above: plan, right (curb) side up. Below: from the left. Lines: gas and AC power as recorded; other wiring is not shown. No place is proven safe to cut.',
    uk: 'Above: plan, right (kerb) side up. Below: from the left. Lines: gas and mains as recorded; other wiring is not shown. No place is proven safe to cut.',
    es: 'Arriba: planta, lado derecho (acera) arriba. Abajo: desde la izquierda. Líneas: gas y corriente alterna según el registro; no se muestra otro cableado. Ningún lugar está probado como seguro para cortar.',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
