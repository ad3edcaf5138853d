/** Everyday words, English and Spanish, and the words of a record that they may stand for. Common practice, no source. */
const SAME: readonly (readonly string[])[] = [
  ['light', 'lamp', 'luz', 'luces', 'faro', 'lampara', 'lights', 'lamps'],
  ['tail', 'rear', 'stop', 'brake', 'trasera', 'trasero', 'piloto', 'cola'],
  ['front', 'delantera', 'delantero', 'frente'],
  ['fuse', 'fusible', 'fuses', 'fusibles'],
  ['breaker', 'disyuntor', 'interruptor', 'automatico', 'trip'],
  ['switch', 'interruptor', 'disconnect', 'llave'],
  ['pump', 'bomba'],
  ['water', 'agua', 'fresh', 'plumbing'],
  ['waste', 'grey', 'gray', 'drain', 'sewage', 'desague', 'residuales', 'black', 'dump'],
  ['hot', 'caliente', 'heater', 'calentador', 'boiler'],
  ['heater', 'furnace', 'calefaccion', 'calefactor', 'heating', 'heat'],
  ['shut-off', 'shutoff', 'valve', 'stopcock', 'valvula', 'llave', 'cock', 'isolator', 'paso', 'tap'],
  ['tap', 'faucet', 'grifo', 'basin', 'sink'],
  ['gas', 'propane', 'lpg', 'propano', 'butano'],
  ['battery', 'bateria', 'batteries', 'baterias'],
  ['charger', 'cargador'],
  ['inverter', 'inversor'],
  ['generator', 'generador', 'genset', 'gen'],
  ['shore', 'mains', 'ac', 'hookup', 'pedestal', 'corriente', 'red', '120v', 'power'],
  ['outlet', 'socket', 'receptacle', 'plug', 'enchufe', 'toma'],
  ['dc', '12v', 'low', 'continua'],
  ['earth', 'ground', 'bond', 'tierra', 'earths', 'grounds'],
  ['solar', 'panel', 'placa', 'placas'],
  ['air', 'aire', 'compressor', 'compresor', 'pneumatic'],
  ['conditioner', 'roof', 'hvac', 'acondicionado'],
  ['slide', 'slide-out', 'slideout', 'modulo', 'deslizante'],
  ['hydraulic', 'hidraulica', 'hidraulico', 'jack', 'leveling'],
  ['fuel', 'diesel', 'combustible', 'gasoil', 'gasoleo'],
  ['tank', 'deposito', 'tanque'],
  ['panel', 'cover', 'hatch', 'door', 'tapa', 'trampilla'],
  ['wire', 'cable', 'run', 'lead', 'hilo'],
  ['pipe', 'hose', 'line', 'tubo', 'tuberia', 'manguera', 'run'],
  ['ceiling', 'techo', 'overhead', 'headliner', 'roof'],
  ['floor', 'suelo', 'piso', 'belly', 'underside'],
  ['wall', 'pared'],
  ['left', 'izquierda', 'izquierdo', 'street', 'driver'],
  ['right', 'derecha', 'derecho', 'kerb', 'curb'],
  ['rear', 'back', 'atras', 'trasera', 'trasero'],
  ['splice', 'joint', 'empalme', 'connector', 'conector', 'butt'],
  ['grey', 'gray', 'gris'],
  ['black', 'negro', 'negra'],
  ['red', 'rojo', 'roja'],
  ['white', 'blanco', 'blanca'],
  ['blue', 'azul'],
  ['green', 'verde'],
  ['yellow', 'amarillo', 'amarilla'],
  ['brown', 'marron', 'cafe'],
  ['orange', 'naranja'],
  ['bay', 'compartimento', 'locker', 'tramo', 'cavity', 'hueco'],
  ['door', 'puerta'],
  ['fan', 'vent', 'ventilador', 'blower'],
  ['duct', 'conducto', 'vent'],
  ['thermostat', 'termostato'],
  ['sensor', 'detector', 'alarm', 'alarma'],
  ['camera', 'camara', 'reversing'],
  ['fridge', 'refrigerator', 'nevera', 'frigorifico'],
  ['wheel', 'tire', 'tyre', 'rueda', 'neumatico'],
];

const BY_WORD = new Map<string, Set<string>>();
for (const group of SAME)
  for (const word of group) {
    const all = BY_WORD.get(word) ?? new Set([word]);
    for (const other of group) all.add(other);
    BY_WORD.set(word, all);
  }

/** A word, and those that mean the same; the word itself first. */
export const meaning = (word: string): readonly string[] => [...(BY_WORD.get(word) ?? [word])];

export const KNOWN_WORDS: ReadonlySet<string> = new Set(BY_WORD.keys());
