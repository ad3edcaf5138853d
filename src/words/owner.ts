import type { Sentence } from './sentence.js';

/** Pages for whoever lives with the coach: care, and who to ask. */
export const OWNER = {
  'care.title': { us: 'Looking after it', es: 'Cuidado y mantenimiento' },
  'care.partial': { us: 'Not all is here', es: 'Aquí no está todo' },
  'care.papers': {
    us: 'Follow the chassis maker’s and each appliance maker’s papers for their own parts.',
    es: 'Siga los documentos del fabricante del chasis y de cada aparato para sus propias piezas.',
  },
  'care.frost': { us: 'Draining against frost', es: 'Vaciado contra las heladas' },
  'care.frost.order': {
    us: 'In this order, from the records of this coach. Leave every tap and drain open until no more comes, and all winter.',
    es: 'En este orden, según los registros de este vehículo. Deje abiertos todos los grifos y desagües hasta que no salga más, y todo el invierno.',
  },
  'care.trapped': { us: 'Low places that keep water', es: 'Puntos bajos que retienen agua' },
  'care.bolts': { us: 'Bolts to check again', es: 'Pernos que hay que volver a comprobar' },
  'care.bolts.how': {
    us: 'Have these checked with a torque wrench at the intervals given. A bolt that turned tells of a fault: ask the shop.',
    es: 'Haga comprobar estos pernos con una llave dinamométrica en los plazos indicados. Un perno que ha girado indica una avería: pregunte al taller.',
  },
  'care.twice': { us: 'Look at these twice a year', es: 'Revise esto dos veces al año' },
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
  'contacts.title': { us: 'Who to ask', es: 'A quién preguntar' },
  'contacts.shell': {
    us: 'The shell: frame, skin, and the services in this book',
    es: 'La carrocería: estructura, revestimiento y las instalaciones de este libro',
  },
  'contacts.number': { us: 'Give the shell’s number,', es: 'Indique el número de la carrocería,' },
  'contacts.chassis': {
    us: 'The chassis: engine, axles, brakes, steering, frame rails',
    es: 'El chasis: motor, ejes, frenos, dirección, largueros',
  },
  'contacts.dealer': {
    us: 'The chassis maker’s dealer. Give the vehicle identification number',
    es: 'El concesionario del fabricante del chasis. Indique el número de identificación del vehículo',
  },
  'contacts.chassis.recorded': { us: 'Chassis on record: {chassis}.', es: 'Chasis registrado: {chassis}.' },
  'contacts.rest': { us: 'Appliances and equipment', es: 'Aparatos y equipo' },
  'contacts.maker': {
    us: 'The maker of each, by the part and serial number in the list of equipment:',
    es: 'El fabricante de cada uno, por el número de pieza y de serie de la lista de equipo:',
  },
  'contacts.warranty': { us: 'Warranty', es: 'Garantía' },
  'contacts.warranty.papers': {
    us: 'Its terms stand in the papers that came with the vehicle and with each appliance, not in this record.',
    es: 'Sus condiciones están en los documentos entregados con el vehículo y con cada aparato, no en este registro.',
  },
  'contacts.signed': {
    us: 'The last stage of the shell was signed off {day}.',
    es: 'La última etapa de la carrocería se firmó el {day}.',
  },
  'contacts.keep': { us: 'Keep those papers with this book.', es: 'Guarde esos documentos con este libro.' },
  'contacts.technician': { us: 'A technician who works on it', es: 'Un técnico que trabaja en el vehículo' },
  'contacts.service': {
    us: 'Ask the shop for the service edition of this book, and hand it over with the vehicle.',
    es: 'Pida al taller la edición de servicio de este libro y entréguela con el vehículo.',
  },
} as const satisfies Readonly<Record<string, Sentence>>;
