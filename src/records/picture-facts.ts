/** What a picture's file says of itself, as it is shown upright. */
export interface PictureFacts {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Focal length equivalent on 35 mm film, mm. */
  readonly equivalentMm?: number;
}
