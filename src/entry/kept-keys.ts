/** The block of import.yaml that remembers which records each sheet held. */
export const SHEETS_KEY = 'sheets';
/** The block of import.yaml that says what the layers of drawings become. */
export const LAYERS_KEY = 'layers';

/** How import.yaml begins where the shop has none yet. */
export const COLUMNS_HEAD = '# What the columns of this shop’s sheets are read as, by kind of record. skip: not read.\n';
