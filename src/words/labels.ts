import type { Sentence } from './sentence.js';

/** What stands on the label of a panel, beside its hazards. */
export const LABELS = {
  'label.also': { us: 'Also: {hazards}', es: 'También: {hazards}' },
  'label.name': { us: 'access panel, {side}', es: 'panel de acceso, {side}' },
  'label.none': { us: 'Nothing recorded behind it: look first.', es: 'No hay nada registrado detrás: mire primero.' },
  'label.foot': { us: '{side} · {shop} · shell {shell}', es: '{side} · {shop} · carrocería {shell}' },
  'labels.title': { us: 'Labels of shell {shell}', es: 'Etiquetas de la carrocería {shell}' },
  'labels.revision': { us: 'From revision {revision}', es: 'De la revisión {revision}' },
  'labels.changed': { us: 'with changes that are not committed', es: 'con cambios sin registrar' },
  'labels.uncommitted': { us: 'From records that were never committed.', es: 'De datos que nunca se registraron.' },
  'labels.how': { us: 'How to print and fix them', es: 'Cómo imprimirlas y pegarlas' },
  'labels.actual': {
    us: 'Print at actual size (100 %), never “fit to page”. The line below is 100 mm long on a true print.',
    es: 'Imprima a tamaño real (100 %), nunca «ajustar a la página». La línea de abajo mide 100 mm en una impresión correcta.',
  },
  'labels.panels': {
    us: 'Panels: {stock} on {paper}; the first label begins {left} mm from the left and {top} mm from the top, and the next one {right} mm to the right and {down} mm down.',
    es: 'Paneles: {stock}, en {paper}; la primera etiqueta empieza a {left} mm de la izquierda y a {top} mm de arriba, y la siguiente {right} mm a la derecha y {down} mm más abajo.',
  },
  'labels.markers': {
    us: 'Wires and pipes: {stock}; the first begins {left} mm from the left and {top} mm from the top, the next {right} mm right and {down} mm down. Two for each run.',
    es: 'Cables y tuberías: {stock}; la primera empieza a {left} mm de la izquierda y a {top} mm de arriba, la siguiente {right} mm a la derecha y {down} mm más abajo. Dos por tramo.',
  },
  'labels.markers.fix': {
    us: 'Fix each 75 mm back from the terminal, so that it stays when the end is cut off and made anew; under clear sleeve. On a small pipe as a tag.',
    es: 'Pegue cada una a 75 mm del terminal, para que quede cuando se corte y rehaga el extremo; bajo funda transparente. En un tubo delgado, como banderola.',
  },
  'labels.fix': {
    us: 'Put a panel’s label on the inside of the panel or beside its opening, where it is read before a hand goes in. Use stock that stands heat, oil and water: paper does not.',
    es: 'Pegue la etiqueta de un panel en su cara interior o junto a su abertura, donde se lea antes de meter la mano. Use material que aguante calor, aceite y agua: el papel no aguanta.',
  },
  'labels.code.paged': {
    us: 'The code holds only the words beneath it, as {example}: shell, panel and page of the {edition}.',
    es: 'El código contiene solo las palabras de debajo, como {example}: carrocería, panel y página de la {edition}.',
  },
  'labels.code': {
    us: 'The code holds only the words beneath it, as {example}: shell and panel.',
    es: 'El código contiene solo las palabras de debajo, como {example}: carrocería y panel.',
  },
  'labels.code.reader': { us: 'Any reader shows them without a network.', es: 'Cualquier lector las muestra sin red.' },
  'labels.unpaged': {
    us: 'No page is given: no {edition} was printed from this record here. Print it, then print these again.',
    es: 'No se da la página: aquí no se imprimió la {edition} de este registro. Imprímala y vuelva a imprimir estas.',
  },
  'labels.stripes': {
    us: 'Stripes mark what can hurt badly. What is not recorded can be there all the same.',
    es: 'Las franjas marcan lo que puede herir de gravedad. Lo que no está registrado puede estar ahí de todos modos.',
  },
  'labels.line': { us: 'A line of 100 mm', es: 'Una línea de 100 mm' },
  'labels.to': { us: 'to', es: 'a' },
  'labels.spare': { us: 'spare', es: 'de reserva' },
  'labels.abandoned': { us: 'abandoned', es: 'fuera de uso' },
  'labels.edition.owner': { us: 'owner edition', es: 'edición del propietario' },
  'labels.edition.service': { us: 'service edition', es: 'edición de servicio' },
  'labels.edition.shop': { us: 'shop edition', es: 'edición del taller' },
  'labels.paper.letter': { us: 'letter paper', es: 'papel carta' },
  'labels.paper.a4': { us: 'A4 paper', es: 'papel A4' },
  'labels.sheet': {
    us: '{width} × {height}, {across} across and {down} down',
    es: '{width} × {height}, {across} a lo ancho y {down} a lo largo',
  },
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
