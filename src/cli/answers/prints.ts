import { type AnswerForms, flag, jsonList, jsonOneOf, jsonText, jsonTexts, orNull, shape, whole } from './shape.js';

/** Books, labels and pages, and what proves them. */
export const PRINT_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  verify: shape({
    edition: orNull(jsonText),
    tag: orNull(shape({ name: jsonText, signature: jsonText })),
    matches_revision: orNull(flag),
    pages_not_compared_because: orNull(jsonText),
    withheld: jsonTexts,
    sealed: flag,
    matches_itself: flag,
    signed_by: orNull(shape({ name: jsonText, fingerprint: jsonText, day: orNull(jsonText), known: flag, said: jsonText })),
    proved: flag,
    matches_store: orNull(flag),
    pages_compared: flag,
    not_covered: jsonTexts,
    fingerprint: orNull(jsonText),
    differences: jsonList(shape({ with: jsonOneOf('itself', 'store'), part: jsonText, name: jsonText, message: jsonText })),
  }),
  recover: shape(
    {
      edition: orNull(jsonText),
      fingerprint: orNull(jsonText),
      folder: jsonText,
      files: whole,
      withheld: jsonTexts,
      damaged: jsonTexts,
    },
    { shells: jsonList(shape({ shell: jsonText, fingerprint: jsonText })) },
  ),
  book: shape(
    {
      books: jsonList(
        shape({
          edition: jsonOneOf('owner', 'service', 'shop'),
          file: orNull(jsonText),
          pages: orNull(whole),
          warnings: jsonTexts,
        }),
      ),
    },
    { since: jsonText },
  ),
  labels: shape({
    file: jsonText,
    pages: whole,
    edition: jsonText,
    labels: jsonList(
      shape({ panel: jsonText, name: orNull(jsonText), page: orNull(whole), code: orNull(jsonText), hazards: jsonTexts }),
    ),
    markers: whole,
    warnings: jsonTexts,
  }),
  pocket: shape({
    file: jsonText,
    edition: jsonOneOf('owner', 'service'),
    size_bytes: whole,
    cards: whole,
    pictures: whole,
    pictures_left: whole,
  }),
  floor: shape({ file: jsonText, sheet: flag, size_bytes: whole, language: jsonOneOf('en', 'es') }),
  demo: shape({
    store: jsonText,
    shells: jsonTexts,
    books: jsonList(shape({ edition: jsonText, file: jsonText, pages: whole })),
  }),
};
