import type { Assessment } from '../assess.js';
import { type Language, readerOf } from '../words/index.js';

/** The same record for a reader of that language; as it is where none is named or it is so already. */
export function inLanguage(assessment: Assessment, language: Language | undefined): Assessment {
  const { model } = assessment;
  if (language === undefined || readerOf(model.shop).language === language) return assessment;
  return { ...assessment, model: { ...model, shop: { ...model.shop, language } } };
}
