/** An object as it stands in a file: `<<…>>`, or `<<…>>stream…endstream`. */
export interface RawObject {
  readonly number: number;
  readonly body: Uint8Array;
  /** What follows the body, where it is large and is not to be copied. */
  readonly more?: readonly Uint8Array[];
  readonly isStream: boolean;
}
