/** Labels for Spanish readers: how they are printed, what they say and what a marker adds; ids and figures as they are. */
import { describe, expect, it } from 'vitest';
import { readMarkup } from '../../security/markup.js';
import { labelPage } from '../../security/pages.js';
import { smallAssessment } from '../small-store.js';

const inLanguage = (language: 'en' | 'es') => {
  const { model, ...rest } = smallAssessment();
  const runs = model.shell.runs.map((run, i) =>
    i === 0 ? { ...run, spare: true } : i === 1 ? { ...run, abandoned: true } : run,
  );
  return { ...rest, model: { ...model, shop: { ...model.shop, language }, shell: { ...model.shell, runs } } };
};
/** Without the sheet of the weight label, which is for whoever certifies the vehicle. */
const words = (language: 'en' | 'es'): string =>
  readMarkup(
    labelPage(inLanguage(language)).html.replace(/<div class="sheet how break" lang="en"><h1>Figures for.*?<\/footer>/su, ''),
  ).words;

describe('label sheets in Spanish', () => {
  it('say in Spanish how they are printed, and mark what serves nothing', () => {
    const spanish = words('es');
    for (const one of ['Imprima a tamaño real', 'Las franjas marcan', '(de reserva)', '(fuera de uso)', 'a lo ancho'])
      expect(spanish).toContain(one);
    for (const one of [/Print at actual/u, /\bspare\b/u, /\babandoned\b/u, /\bacross and\b/u, / to /u, /\bsheet\b/u])
      expect(spanish).not.toMatch(one);
    expect(words('en')).toContain('(spare)');
  });

  it('keep every figure', () => {
    const figures = (text: string): readonly string[] => (text.match(/\d+(?:[.,]\d+)?/gu) ?? []).sort();
    expect(figures(words('es'))).toEqual(figures(words('en')));
  });
});
