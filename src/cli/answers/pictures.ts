import {
  type AnswerForms,
  flag,
  type JsonShape,
  jsonList,
  jsonNumber,
  jsonPlace,
  jsonText,
  jsonTexts,
  orNull,
  pair,
  shape,
} from './shape.js';

/** Column and row in the picture. */
const pixel: JsonShape = pair(jsonNumber.describe('pixels, from the left upper corner'));

/** What a picture measures. */
export const PICTURE_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  overlay: shape({
    photo: jsonText,
    method: jsonText,
    points: jsonList(
      shape({
        px: pixel,
        at_mm: orNull(jsonPlace),
        residual_px: orNull(jsonNumber),
        residual_mm: orNull(jsonNumber),
        left_out: flag,
      }),
    ),
    residual_mm: orNull(jsonNumber),
    left_out_mm: orNull(jsonNumber),
    usable: flag,
    notes: jsonTexts,
    drawn: jsonList(
      shape({
        id: jsonText,
        kind: jsonText,
        px: jsonList(pixel),
        stretches: jsonList(shape({ hidden: flag, px: jsonList(pixel) })),
      }),
    ),
  }),
  locate: shape({ photo: jsonText, px: pixel, on: jsonText, at_mm: orNull(jsonPlace), uncertainty_mm: orNull(jsonNumber) }),
};
