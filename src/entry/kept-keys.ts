/** The block of import.yaml that remembers which records each sheet held. */
export const SHEETS_KEY = 'sheets';
/** The block of import.yaml that says what the layers of drawings become. */
export const LAYERS_KEY = 'layers';
