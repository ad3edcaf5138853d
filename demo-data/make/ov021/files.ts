import { memberText, panelText, weldText } from './structure.js';

export const filesOf021 = (): ReadonlyMap<string, string | Buffer> => new Map([...memberText(), ...weldText(), ...panelText()]);
