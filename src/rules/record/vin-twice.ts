import type { Rule } from '../rule.js';

export const vinTwice: Rule = {
  name: 'record.vin-twice',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A vehicle identification number that another shell, begun earlier, has as well.',
  why: 'A number belongs to one vehicle for life: the second was left over from the file that was copied.',
  source: '49 CFR 565 (no two vehicles have the same number within 60 years), from memory',
  check({ model: { shell, elsewhere } }) {
    if (shell.vin === undefined || !elsewhere) return [];
    const [other] = elsewhere.withVin(shell.vin).filter((one) => !elsewhere.beganBefore(one));
    if (other === undefined) return [];
    return [
      {
        message: `VIN ${shell.vin} is that of ${other} too, expected one of its own: read it off this chassis and correct \`vin\``,
        ids: [shell.id],
        place: shell.source.place('vin'),
      },
    ];
  },
};
